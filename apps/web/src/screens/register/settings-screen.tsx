import { useState } from 'react';
import type { LabSettings, LabSettingsView } from '#libs/contract/src/index.js';
import { asText, readPath, withPath } from '../../features/register/paths.js';
import { refusedOf, rowProblems, rowsOf, shiftsOf } from '../../features/register/shift-rows.js';
import type { RowProblems, ShiftRow } from '../../features/register/shift-rows.js';
import { ShiftsForm } from '../../features/register/shifts-form.js';
import { useHasRole } from '../../features/session/session.js';
import { FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { useToast } from '../../ui/toasts.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { ApiError } from '../../api-client/call.js';
import { ui } from '../../ui/styles.js';

interface Line {
  path: string;
  label: string;
  unit?: string;
  help?: string;
}

const GROUPS: { title: string; lines: Line[] }[] = [
  {
    title: 'Planning',
    lines: [
      { path: 'freezeMin', label: 'Published plan is kept for', unit: 'working min' },
      { path: 'horizonDays', label: 'Planned ahead', unit: 'days' },
      { path: 'planningSeconds', label: 'One planning run takes at most', unit: 's' },
      { path: 'warmUpMin', label: 'Warm-up of a frame', unit: 'min' },
      { path: 'warmUpAfterMin', label: 'Warm-up when it stood closed for', unit: 'min' },
      {
        path: 'assumedArrivalMin',
        label: 'Specimens nobody announced come after',
        unit: 'min',
        help: 'Shown as assumed.',
      },
      { path: 'calibrationVisitMin', label: 'An item is away for calibration', unit: 'min' },
    ],
  },
  {
    title: 'What counts most',
    lines: [
      { path: 'objective.perLateMin', label: 'A minute late', help: 'Times the weight of the job.' },
      { path: 'objective.perChangeoverMin', label: 'A minute of changeover' },
      { path: 'objective.perMovedMin', label: 'A minute moved from the published start' },
      { path: 'objective.perMovedFrame', label: 'A job moved to another frame' },
      { path: 'objective.perEndMin', label: 'A minute of later end' },
      { path: 'objective.perLoadHourSquared', label: 'Uneven load, per squared hour' },
    ],
  },
  {
    title: 'Matching',
    lines: [
      { path: 'matching.forceMargin', label: 'Reserve above the highest force', help: 'A share: 0.2 is 20 %.' },
      {
        path: 'matching.hungWeightCaution',
        label: 'Hung weight is a caution above',
        help: 'A share of the cell’s capacity.',
      },
      { path: 'matching.cellBandLow', label: 'Preferred use of a cell from', help: 'A share of its capacity.' },
      { path: 'matching.cellBandHigh', label: 'Preferred use of a cell up to', help: 'A share of its capacity.' },
      { path: 'matching.clearanceMm', label: 'Clearance between parts', unit: 'mm' },
      { path: 'matching.guardFromJ', label: 'A guard is needed from', unit: 'J' },
      { path: 'matching.roomMinC', label: 'Room temperature from', unit: '°C' },
      { path: 'matching.roomMaxC', label: 'Room temperature up to', unit: '°C' },
    ],
  },
  {
    title: 'How long is kept what need not be kept for ever',
    lines: [
      { path: 'retention.endedTasksMonths', label: 'Ended work of the system', unit: 'months' },
      { path: 'retention.endedSessionsMonths', label: 'Ended sessions', unit: 'months' },
      { path: 'retention.noticesMonths', label: 'Notices', unit: 'months' },
      { path: 'retention.deliveriesMonths', label: 'Log of deliveries to other programs', unit: 'months' },
      { path: 'retention.idempotencyKeysDays', label: 'Answers kept for repeated acts', unit: 'days' },
    ],
  },
  {
    title: 'Bench and calibration',
    lines: [
      {
        path: 'shiftCheckValidMin',
        label: 'A shift check holds for',
        unit: 'min',
        help: '8 to 12 h is common practice, no source.',
      },
      { path: 'shiftCheckTolerancePct', label: 'Largest error of a shift check', unit: '%' },
      { path: 'calibrationNoticeDays', label: 'A calibration is announced before it is due', unit: 'days' },
      { path: 'rampCPerMin', label: 'Chamber ramp where none is known', unit: '°C/min' },
      { path: 'soakMin', label: 'Soak where none is known', unit: 'min' },
    ],
  },
];

/** The lab's own choices. */
export function SettingsScreen() {
  const settings = useApiQuery('settings', api('GET /settings'));
  return (
    <FetchStates of={settings} what="the settings">
      {(value) => <SettingsForm key={value.version} settings={value} />}
    </FetchStates>
  );
}

function SettingsForm({ settings }: { settings: LabSettingsView }) {
  const mayEdit = useHasRole('manager');
  const toast = useToast();
  const [draft, setDraft] = useState<Record<string, string>>({});
  const [rows, setRows] = useState<ShiftRow[] | null>(null);
  const save = useApiMutation(['settings', 'plan', 'session'], () =>
    toast('The settings are kept. A new plan is on its way.'),
  );
  const wrong = save.error instanceof ApiError ? save.error.fields : {};
  const shown = (path: string) => draft[path] ?? asText(readPath(settings, path));
  const set = (path: string) => (text: string) => setDraft({ ...draft, [path]: text });
  const changed = Object.keys(draft).length > 0 || rows !== null;
  const [ownProblems, setOwnProblems] = useState<RowProblems[]>([]);
  const shiftRows = rows ?? rowsOf(settings.shifts);
  const refusedShifts = refusedOf(shiftRows, wrong);
  function changeShifts(next: ShiftRow[]) {
    setRows(next);
    if (ownProblems.length > 0) setOwnProblems(rowProblems(next));
    save.reset(); // what was refused is told by the place in the list, which may be another one now
  }
  function keep() {
    const found = rowProblems(rows ?? []);
    setOwnProblems(found);
    if (found.some((each) => Object.keys(each).length > 0)) return;
    // Whether this is the demo lab is no one's to set: the server takes it in no body.
    const { version, demo: _demo, ...rest } = settings;
    let body: Omit<LabSettings, 'demo'> = rows ? { ...rest, shifts: shiftsOf(rows) } : rest;
    for (const [path, text] of Object.entries(draft))
      body = withPath(body, path, typeof readPath(settings, path) === 'number' ? Number(text.replace(',', '.')) : text);
    save.mutate(api('PUT /settings', { body, version }));
  }
  return (
    <>
      <TitleBlock title="Settings" cells={[['version', settings.version]]}>
        {mayEdit && (
          <button type="button" className={ui.buttonMain} disabled={!changed || save.isPending} onClick={keep}>
            Keep
          </button>
        )}
      </TitleBlock>
      <div className={ui.stackWide}>
        <ErrorMessage error={save.error} />
        <section className={ui.stack}>
          <h2>The lab</h2>
          <div className={ui.fields}>
            <TextField label="Name" value={shown('name')} onChange={set('name')} wrong={wrong['name']} />
            <TextField
              label="Time zone"
              value={shown('timeZone')}
              onChange={set('timeZone')}
              wrong={wrong['timeZone']}
              help="IANA name, e.g. Europe/London."
            />
            <TextField
              label="Contact for readers of reports"
              value={shown('contact')}
              onChange={set('contact')}
              wrong={wrong['contact']}
            />
            <TextField
              label="Address on reports"
              rows={3}
              value={shown('address')}
              onChange={set('address')}
              wrong={wrong['address']}
            />
          </div>
          {mayEdit ? (
            <ShiftsForm
              rows={shiftRows}
              onChange={changeShifts}
              problems={shiftRows.map((_, at) => ({ ...refusedShifts[at], ...ownProblems[at] }))}
              wrong={wrong['shifts']}
            />
          ) : (
            <Shifts rows={shiftRows} />
          )}
        </section>
        {GROUPS.map(({ title, lines }) => (
          <section key={title} className={ui.stack}>
            <h2>{title}</h2>
            <div className={ui.fields}>
              {lines.map(({ path, label, unit, help }) => (
                <TextField
                  key={path}
                  label={unit ? `${label}, ${unit}` : label}
                  value={shown(path)}
                  onChange={set(path)}
                  wrong={wrong[path]}
                  help={help}
                />
              ))}
            </div>
          </section>
        ))}
      </div>
    </>
  );
}

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

function Shifts({ rows }: { rows: readonly ShiftRow[] }) {
  return (
    <table style={{ maxWidth: '40rem' }}>
      <caption>Shifts of the week</caption>
      <tbody>
        {rows.map(({ name, from, to, days }) => (
          <tr key={name + from + to}>
            <th>
              {name} {from}–{to}
            </th>
            <td>{days.map((each) => WEEKDAYS[Number(each) - 1]).join(', ')}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
