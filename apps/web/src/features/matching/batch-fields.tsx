import type { MaterialView, MethodView } from '#libs/contract/src/index.js';
import type { AskField, Hazard } from '#libs/matching/src/index.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { TextField } from '../../ui/fields/text-field.js';
import { Ticks } from '../../ui/fields/ticks.js';
import { questionsOf, withEnd } from './batch-draft.js';
import type { BatchDraft } from './batch-draft.js';
import { Question } from './question.js';
import { ui } from '../../ui/styles.js';

const HAZARDS: { value: Hazard; label: string }[] = [
  { value: 'fragments', label: 'throws fragments' },
  { value: 'sharp-edges', label: 'sharp edges' },
  { value: 'dust', label: 'dust' },
  { value: 'pressure', label: 'under pressure' },
  { value: 'biological', label: 'biological' },
];

interface Props {
  draft: BatchDraft;
  onChange: (draft: BatchDraft) => void;
  methods: readonly MethodView[];
  materials: readonly MaterialView[];
  onMethod: (method: MethodView) => void;
  wrong: Record<string, string>;
}

/** One batch of the request form: the method first, then only what that method needs. */
export function BatchFields({ draft, onChange: tell, methods, materials, onMethod, wrong }: Props) {
  const method = methods.find((each) => each.id === draft.methodId);
  const onChange = (next: BatchDraft) => tell(method ? withEnd(method, draft, next) : next);
  const fitting = method ? materials.filter((each) => method.data.materialGroups.includes(each.data.group)) : [];
  return (
    <div className={ui.stackWide}>
      <div className={ui.fields}>
        <SelectField
          label="Method"
          whole
          none="Choose a method …"
          value={draft.methodId}
          onChange={(id) => {
            const chosen = methods.find((each) => each.id === id);
            if (chosen) onMethod(chosen);
          }}
          choices={methods.map((each) => ({
            value: each.id,
            label: `${each.designation} · ${each.title}`,
            group: each.testType.replaceAll('-', ' '),
          }))}
          help={method ? methodHelp(method) : 'Everything else follows from the method.'}
          wrong={wrong['methodId']}
        />
        {method && method.data.testType !== 'component' && (
          <SelectField
            label="Material"
            none="Not in the library: declare a strength band below"
            value={draft.materialId}
            onChange={(materialId) => onChange({ ...draft, materialId })}
            choices={fitting.map((each) => ({ value: each.id, label: each.name }))}
            wrong={wrong['materialId']}
            help={materialHelp(materials.find((each) => each.id === draft.materialId))}
          />
        )}
        {method && (
          <TextField
            label="Name of this batch"
            required={false}
            value={draft.label}
            onChange={(label) => onChange({ ...draft, label })}
            placeholder="e.g. lot 7, at 60 °C"
          />
        )}
      </div>
      {method && <MethodQuestions method={method} {...{ draft, onChange, wrong }} />}
    </div>
  );
}

type Asked = Pick<Props, 'draft' | 'onChange' | 'wrong'>;

/** What the method must know: specimens, conditions, load, and what the bench must. */
function MethodQuestions({ method, draft, onChange, wrong }: Asked & { method: MethodView }) {
  return (
    <>
      <Group title="Specimens" fields={pick(method, draft, isGeometry)} {...{ draft, onChange, wrong }} />
      <Group
        title="Conditions and results"
        fields={pick(method, draft, (field) => !isGeometry(field) && !isLoad(field))}
        {...{ draft, onChange, wrong }}
      />
      <details
        open={pick(method, draft, isLoad).some(({ field, required }) => required || draft.typed[`${field}.low`]?.value)}
      >
        <summary>
          <strong>Load, if you know it better than material and geometry do</strong>
        </summary>
        <Group title="" fields={pick(method, draft, isLoad)} {...{ draft, onChange, wrong }} />
      </details>
      <Ticks
        label="When a specimen breaks, it …"
        values={draft.hazards}
        onChange={(hazards) => onChange({ ...draft, hazards: hazards })}
        choices={HAZARDS}
        help="What the method cannot know about your specimens, and the bench must."
      />
    </>
  );
}

const isGeometry = ({ field }: AskField) =>
  field.startsWith('geometry.') || field === 'endShape' || field === 'specimens';
const isLoad = ({ field }: AskField) => ['peak', 'strength', 'modulusMPa'].includes(field);

function pick(method: MethodView, draft: BatchDraft, which: (field: AskField) => boolean): AskField[] {
  return questionsOf(method, draft).filter(which);
}

function methodHelp({ data }: MethodView): string {
  return `Version ${data.version}; ${data.minSpecimens} or more specimens are usual. Source: ${data.source} (${data.confidence}).`;
}

function materialHelp(material: MaterialView | undefined): string {
  if (!material) return 'The library gives strength bands with their source.';
  return material.data.strengths
    .map(({ property, low, high, unit, source }) => `${property} ${low} to ${high} ${unit} (${source})`)
    .join('; ');
}

interface GroupProps extends Asked {
  title: string;
  fields: readonly AskField[];
}

function Group({ title, fields, ...rest }: GroupProps) {
  if (fields.length === 0) return null;
  return (
    <section className={ui.stack}>
      {title && <h3>{title}</h3>}
      <div className={ui.fields}>
        {fields.map((field) => (
          <Question key={field.field} field={field} {...rest} />
        ))}
      </div>
    </section>
  );
}
