import { clsx } from 'clsx';
import { Link, useLocation } from 'wouter';
import type { MethodView } from '#libs/contract/src/index.js';
import type { SpeedRule } from '#libs/matching/src/index.js';
import { useSearch } from '../../ui/use-search.js';
import { useHasRole } from '../../features/session/session.js';
import { Empty, FetchStates } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormText } from '../../ui/form/form-text.js';
import { refusalsIn } from '../../ui/form/refused-fields.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { useToast } from '../../ui/toasts.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** Test procedures that the lab offers. */
export function MethodsScreen() {
  const methods = useApiQuery('methods', api('GET /methods'));
  const [text, setText, q] = useSearch();
  const shown = (methods.value ?? []).filter(({ designation, title, testType }) =>
    `${designation} ${title} ${testType}`.toLowerCase().includes(q.toLowerCase()),
  );
  return (
    <>
      <TitleBlock title="Methods" cells={[['offered', methods.value?.length ?? '…']]} />
      <div className={ui.filters}>
        <TextField label="Find" type="search" value={text} onChange={setText} placeholder="ISO 527, peel, torsion" />
      </div>
      <FetchStates
        of={methods}
        what="the methods"
        empty={(value) => value.length === 0 && <Empty>No method is offered yet.</Empty>}
      >
        {() => (
          <table>
            <thead>
              <tr>
                <th>Designation</th>
                <th>Title</th>
                <th>Test</th>
                <th className={ui.num}>Version</th>
                <th className={ui.num}>Specimens</th>
                <th>Force class</th>
              </tr>
            </thead>
            <tbody>
              {shown.map(({ id, designation, title, testType, version, data }) => (
                <tr key={id}>
                  <th>
                    <Link href={`/register/methods/${id}`}>{designation}</Link>
                  </th>
                  <td>{title}</td>
                  <td>{testType.replaceAll('-', ' ')}</td>
                  <td className={ui.num}>{version}</td>
                  <td className={ui.num}>{data.minSpecimens}</td>
                  <td>{data.forceClass.className}</td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </FetchStates>
    </>
  );
}

/** One version of a method with all its parameters; a change makes the next version, and requests keep the one they were agreed with. */
export function MethodScreen({ id }: { id: string }) {
  const method = useApiQuery('methods', api('GET /methods/{id}', { id }));
  return (
    <FetchStates of={method} what="the method">
      {(value) => (
        <>
          <TitleBlock
            title={`${value.designation} ${value.title}`}
            back={{ to: '/register/methods', label: 'Methods' }}
            cells={[
              ['version', value.version],
              ['state', value.state],
            ]}
          />
          <div className={ui.splitMainLeft}>
            <MethodText key={value.id} method={value} />
            <div className={ui.stackWide}>
              <dl className={ui.facts}>
                <dt>Source</dt>
                <dd>
                  {value.data.source} ({value.data.confidence})
                </dd>
                <dt>Results</dt>
                <dd>{value.data.results.map((key) => key.replaceAll('-', ' ')).join(', ')}</dd>
                <dt>Speeds</dt>
                <dd>
                  {value.data.speeds
                    .map(({ stage, rule }) => `${stage.replaceAll('-', ' ')}: ${speedWords(rule)}`)
                    .join('; ')}
                </dd>
                <dt>Hazards</dt>
                <dd>{value.data.hazards.join(', ') || 'none named'}</dd>
              </dl>
              <section>
                <h2>Versions</h2>
                <ul>
                  {value.versions.map((version) => (
                    <li key={version.id}>
                      <Link href={`/register/methods/${version.id}`}>version {version.version}</Link>{' '}
                      {version.id === value.id && <span className={ui.soft}>shown</span>}
                    </li>
                  ))}
                </ul>
              </section>
            </div>
          </div>
        </>
      )}
    </FetchStates>
  );
}

/** The next version begins as a copy of this one. */
function MethodText({ method }: { method: MethodView }) {
  const mayEdit = useHasRole('manager');
  const form = useMethodForm(method);
  if (!mayEdit) return <pre className={clsx(ui.framed, ui.scrollX, ui.small)}>{textOf(method)}</pre>;
  return (
    <FormFrame form={form} label="Parameters">
      <div className={ui.data}>
        <FormText
          form={form}
          name="text"
          label="Parameters, as JSON"
          rows={26}
          help="Figures in N, mm, MPa, °C, mm/min. Every field is checked before it is saved."
        />
      </div>
      <div>
        <SubmitButton form={form} disabled={!form.dirty}>
          Offer it as version {method.version + 1}
        </SubmitButton>
      </div>
    </FormFrame>
  );
}

const LENGTHS = {
  parallelLengthMm: 'parallel length',
  gripSeparationMm: 'grip separation',
  gaugeLengthMm: 'gauge length',
  heightMm: 'height',
};

/** How fast a stage of the test runs, in words. */
function speedWords(rule: SpeedRule): string {
  switch (rule.kind) {
    case 'fixed':
      return `${rule.mmPerMin} mm/min`;
    case 'strain-rate':
      return `strain rate ${rule.perS} /s over the ${LENGTHS[rule.over]}`;
    case 'flexure-rate':
      return `outer-fibre strain rate ${rule.outerFibrePerMin} /min`;
    case 'stress-rate':
      return `stress rate ${rule.mPaPerS} MPa/s`;
    case 'rotation':
      return `${rule.degPerMin} °/min`;
    case 'asked':
      return `as requested, ${rule.minMmPerMin} to ${rule.maxMmPerMin} mm/min, usually ${rule.usualMmPerMin} mm/min`;
  }
}

const textOf = ({ data }: MethodView) => JSON.stringify(data, null, 2);

function useMethodForm(method: MethodView): LabForm<{ text: string }> {
  const toast = useToast();
  const [, go] = useLocation();
  const save = useApiMutation<MethodView>(['methods']);
  return useLabForm<{ text: string }>({
    initial: { text: textOf(method) },
    check: ({ text }) => ({ text: whyUnread(text) }),
    send: async ({ text }) => {
      const data = JSON.parse(text) as Record<string, unknown>;
      const saved = await save.mutateAsync(api('POST /methods', { body: { data } })).catch((thrown: unknown) => {
        throw atText(thrown);
      });
      toast(`Version ${saved.version} of ${saved.designation} is offered from now on.`);
      go(`/register/methods/${saved.id}`);
    },
  });
}

function whyUnread(text: string): string | undefined {
  try {
    JSON.parse(text);
    return undefined;
  } catch (error) {
    return `The text is not JSON: ${(error as Error).message}`;
  }
}

/** All fields of the method are in one text, so that each sentence there has to name its own. */
function atText(thrown: unknown): unknown {
  const refusals = refusalsIn(thrown).map(({ sentence }) => ({ field: 'text', sentence }));
  return refusals.length > 0 ? { refusals } : thrown;
}
