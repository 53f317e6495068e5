import type { Moments } from '../../ui/moments.js';
import { clsx } from 'clsx';
import type { BatchBody, ConformityAsk, RequestView, SaveRequestBody, TeamRef } from '#libs/contract/src/index.js';
import { parseNumber } from '#libs/units/src/index.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { TextField } from '../../ui/fields/text-field.js';
import { Tick } from '../../ui/fields/ticks.js';
import { named } from '../../ui/named.js';

import { DISPOSALS } from './words.js';
import { ui } from '../../ui/styles.js';

/** What a request says as a whole, as it stands in the form. */
export interface RequestHead {
  title: string;
  purpose: string;
  teamId: string;
  due: string;
  disposal: NonNullable<SaveRequestBody['disposal']>;
  conformity: {
    resultKey: string;
    lower: string;
    upper: string;
    of: 'each' | 'mean';
    rule: 'simple' | 'guarded';
    specification: string;
  } | null;
}

/** A result that limits can be held against, with the unit that they are in. */
export interface LimitedResult {
  key: string;
  label: string;
  unit: string;
}

const END_OF_DAY = 17;

export function emptyHead(teamId: string): RequestHead {
  return { title: '', purpose: '', teamId, due: '', disposal: 'keep-90-days', conformity: null };
}

export function headOf(request: RequestView, { toLocalInput }: Moments): RequestHead {
  const { conformity } = request;
  return {
    title: request.title,
    purpose: request.purpose,
    teamId: request.team.id,
    due: toLocalInput(request.dueAt).slice(0, 10),
    disposal: request.disposal,
    conformity: conformity && {
      resultKey: conformity.resultKey,
      of: conformity.of,
      rule: conformity.rule,
      specification: conformity.specification,
      lower: conformity.lower === null ? '' : String(conformity.lower),
      upper: conformity.upper === null ? '' : String(conformity.upper),
    },
  };
}

/** What the form itself can tell to be wrong, by the path of the field that the server knows. */
export function headProblems(
  { title, teamId, due, conformity }: RequestHead,
  nowMs: number,
  { fromLocalInput }: Moments,
): Record<string, string> {
  const problems: Record<string, string> = {};
  if (!title.trim()) problems['title'] = 'Say in a few words what you want to find out.';
  if (!teamId) problems['teamId'] = 'Choose the team that asks.';
  if (conformity && !conformity.specification.trim()) problems['conformity.specification'] = 'Name the specification.';
  if (conformity && !conformity.lower.trim() && !conformity.upper.trim())
    problems['conformity.lower'] = 'Give one limit at least.';
  const dueAt = fromLocalInput(due, END_OF_DAY);
  if (dueAt && Date.parse(dueAt) <= nowMs)
    problems['dueAt'] = 'This day is over. Choose one that is still to come, or none.';
  for (const end of ['lower', 'upper'] as const) {
    const number = conformity?.[end].trim() ? parseNumber(conformity[end]) : null;
    if (number && 'reason' in number) problems[`conformity.${end}`] = number.reason;
  }
  return problems;
}

/** @param results with the units in which limits are held */
export function requestBody(
  head: RequestHead,
  batches: BatchBody[],
  results: readonly LimitedResult[],
  { fromLocalInput }: Moments,
): SaveRequestBody {
  return {
    title: head.title,
    purpose: head.purpose,
    teamId: head.teamId,
    dueAt: fromLocalInput(head.due, END_OF_DAY),
    disposal: head.disposal,
    conformity: head.conformity ? conformityOf(head.conformity, results) : null,
    batches,
  };
}

function conformityOf(typed: NonNullable<RequestHead['conformity']>, results: readonly LimitedResult[]): ConformityAsk {
  const limit = (text: string) => {
    const number = parseNumber(text);
    return 'reason' in number ? null : number.value;
  };
  const unit = results.find(({ key }) => key === typed.resultKey)?.unit ?? '';
  return { ...typed, unit, lower: limit(typed.lower), upper: limit(typed.upper) };
}

interface Props {
  head: RequestHead;
  onChange: (head: RequestHead) => void;
  teams: readonly TeamRef[];
  results: readonly LimitedResult[];
  wrong: Record<string, string>;
}

/** Title, team, due date, disposal and, if asked for, conformity. */
export function RequestFields({ head, onChange, teams, results, wrong }: Props) {
  const set = (part: Partial<RequestHead>) => onChange({ ...head, ...part });
  return (
    <div className={ui.fields}>
      <TextField
        label="What do you want to find out?"
        whole
        required
        value={head.title}
        onChange={(title) => set({ title })}
        placeholder="e.g. Tensile strength of steerer tubes, lot 7"
        wrong={named(wrong['title'], 'title', 'The title')}
      />
      <TextField
        label="What for"
        required={false}
        whole
        rows={2}
        value={head.purpose}
        onChange={(purpose) => set({ purpose })}
        help="It goes on the report and helps the lab to choose well."
        wrong={named(wrong['purpose'], 'purpose', 'The purpose')}
      />
      <SelectField
        label="Team"
        value={head.teamId}
        onChange={(teamId) => set({ teamId })}
        choices={teams.map(({ id, name }) => ({ value: id, label: name }))}
        none={teams.length === 0 ? 'You are in no team' : 'Choose …'}
        wrong={named(wrong['teamId'], 'teamId', 'The team')}
      />
      <TextField
        label="Due"
        required={false}
        type="date"
        value={head.due}
        onChange={(due) => set({ due })}
        wrong={named(wrong['dueAt'], 'dueAt', 'The due date')}
        help="End of that working day."
      />
      <SelectField
        label="Afterwards, the specimens"
        value={head.disposal}
        onChange={(disposal) => set({ disposal: disposal })}
        choices={DISPOSALS}
      />
      <div className={clsx(ui.field, ui.whole)}>
        <Tick
          label="State whether they conform to a specification"
          checked={head.conformity !== null}
          onChange={(on) =>
            set({
              conformity: on
                ? {
                    resultKey: results[0]?.key ?? '',
                    lower: '',
                    upper: '',
                    of: 'each',
                    rule: 'simple',
                    specification: '',
                  }
                : null,
            })
          }
        />
      </div>
      {head.conformity && (
        <ConformityFields
          conformity={head.conformity}
          results={results}
          onChange={(conformity) => set({ conformity })}
          wrong={wrong}
        />
      )}
    </div>
  );
}

function ConformityFields({
  conformity,
  results,
  onChange,
  wrong,
}: {
  conformity: NonNullable<RequestHead['conformity']>;
  results: readonly LimitedResult[];
  onChange: (next: NonNullable<RequestHead['conformity']>) => void;
  wrong: Record<string, string>;
}) {
  const set = (part: Partial<typeof conformity>) => onChange({ ...conformity, ...part });
  const unit = results.find(({ key }) => key === conformity.resultKey)?.unit;
  const inUnit = (label: string) => (unit ? `${label}, ${unit}` : label);
  return (
    <>
      <TextField
        label="Specification"
        value={conformity.specification}
        onChange={(specification) => set({ specification })}
        placeholder="e.g. NC drawing 4410, note 6"
        wrong={named(wrong['conformity.specification'], 'conformity.specification', 'The specification')}
      />
      <SelectField
        label="Which result"
        none="Choose a method first"
        value={conformity.resultKey}
        onChange={(resultKey) => set({ resultKey })}
        choices={results.map(({ key, label }) => ({ value: key, label }))}
        wrong={named(wrong['conformity.resultKey'], 'conformity.resultKey', 'The result')}
      />
      <TextField
        label={inUnit('At least')}
        required={false}
        value={conformity.lower}
        onChange={(lower) => set({ lower })}
        wrong={named(wrong['conformity.lower'], 'conformity.lower', 'The lower limit')}
      />
      <TextField
        label={inUnit('At most')}
        required={false}
        value={conformity.upper}
        onChange={(upper) => set({ upper })}
        wrong={named(wrong['conformity.upper'], 'conformity.upper', 'The upper limit')}
      />
      <SelectField
        label="Judged on"
        value={conformity.of}
        onChange={(of) => set({ of: of })}
        choices={[
          { value: 'each', label: 'each specimen' },
          { value: 'mean', label: 'the mean' },
        ]}
      />
      <SelectField
        label="Decision rule"
        value={conformity.rule}
        onChange={(rule) => set({ rule: rule })}
        choices={[
          { value: 'simple', label: 'simple acceptance' },
          { value: 'guarded', label: 'guarded by the uncertainty' },
        ]}
        help="Agreed with the lab before work begins (ISO/IEC 17025:2017, 7.1.3)."
      />
    </>
  );
}
