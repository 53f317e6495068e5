import { clsx } from 'clsx';
import { useState } from 'react';
import { Link } from 'wouter';
import type { ItemDetail } from '#libs/contract/src/index.js';
import { FieldsView } from '../../features/register/fields-view.js';
import { FaultDialog, StateDialog, WindowDialog } from '../../features/register/item-dialogs.js';
import { KIND_WORDS, StateWord, StatusWord } from '../../features/register/item-words.js';
import { useHasRole } from '../../features/session/session.js';
import { FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { useMoments } from '../../ui/use-moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { urlOf } from '../../api-client/call.js';
import { formatNumber } from '#libs/units/src/index.js';
import { ui } from '../../ui/styles.js';

/** One item: what it is, its calibrations, faults, checks, windows, and the jobs that need it. */
export function ItemScreen({ id }: { id: string }) {
  const item = useApiQuery('items', api('GET /items/{id}', { id }));
  return (
    <FetchStates of={item} what="the item">
      {(value) => <ItemSheet item={value} />}
    </FetchStates>
  );
}

function ItemSheet({ item }: { item: ItemDetail }) {
  const { moment } = useMoments();
  const mayEdit = useHasRole('manager');
  const mayReport = useHasRole('manager', 'technician');
  const [asking, setAsking] = useState<'fault' | 'state' | 'window' | null>(null);
  return (
    <>
      <TitleBlock
        title={`${item.tag} ${item.name}`}
        back={{ to: '/register/items', label: 'Items' }}
        cells={[
          ['kind', KIND_WORDS[item.kind]],
          ['calibration', <StatusWord key="s" status={item.calibrationStatus} />],
          [
            'where',
            item.fittedOn
              ? `on ${item.fittedOn.frameTag}, ${item.fittedOn.role.replaceAll('-', ' ')}`
              : item.place || 'not said',
          ],
        ]}
      >
        {mayEdit && item.needsCalibration && (
          <Link className={ui.buttonMain} href={`/register/items/${item.id}/calibrate`}>
            Enter a calibration
          </Link>
        )}
        {mayEdit && (
          <Link className={ui.button} href={`/register/items/${item.id}/edit`}>
            Change
          </Link>
        )}
        <Link className={ui.button} href={`/register/items/${item.id}/impact`}>
          What it touched
        </Link>
      </TitleBlock>
      <div className={ui.splitMainLeft}>
        <div className={ui.stackWide}>
          <Calibrations item={item} />
          <Faults item={item} mayClose={mayEdit} onReport={mayReport ? () => setAsking('fault') : null} />
          {item.shiftChecks.length > 0 && <ShiftChecks item={item} />}
          <section className={ui.stackTight}>
            <h2>Jobs ahead</h2>
            {item.upcomingJobs.length === 0 ? (
              <p className={ui.soft}>No planned job needs it.</p>
            ) : (
              <ul>
                {item.upcomingJobs.map(({ jobId, reference, startsAt }) => (
                  <li key={jobId}>
                    <span className={ui.fig}>{reference}</span> {moment(startsAt)}
                  </li>
                ))}
              </ul>
            )}
          </section>
        </div>
        <div className={ui.stackWide}>
          <section className={ui.stackTight}>
            <div className={ui.rowBetween}>
              <h2>
                State <StateWord state={item.state} />
              </h2>
              {mayEdit && (
                <button type="button" className={clsx(ui.button, ui.buttonSmall)} onClick={() => setAsking('state')}>
                  Change the state …
                </button>
              )}
            </div>
            <Windows item={item} onAdd={mayEdit ? () => setAsking('window') : null} />
          </section>
          <section className={ui.stackTight}>
            <div className={ui.rowBetween}>
              <h2>What it is</h2>
              <Link className={ui.small} href={`/reports/labels/item?of=${encodeURIComponent(item.tag)}`}>
                print its label
              </Link>
            </div>
            <FieldsView item={item} />
          </section>
        </div>
      </div>
      {asking === 'fault' && <FaultDialog item={item} onClose={() => setAsking(null)} />}
      {asking === 'state' && <StateDialog item={item} onClose={() => setAsking(null)} />}
      {asking === 'window' && <WindowDialog item={item} onClose={() => setAsking(null)} />}
    </>
  );
}

function Calibrations({ item }: { item: ItemDetail }) {
  const { day } = useMoments();
  if (!item.needsCalibration) return null;
  return (
    <section className={clsx(ui.stackTight, ui.scrollX)}>
      <h2>Calibrations</h2>
      {item.calibrations.length === 0 ? (
        <p className={ui.act}>▲ None is entered. Until one is, it fits no job that needs a verified range.</p>
      ) : (
        <table>
          <thead>
            <tr>
              <th>Performed</th>
              <th>Due</th>
              <th>Class and verified range</th>
              <th>Certificate</th>
              <th>Found</th>
            </tr>
          </thead>
          <tbody>
            {item.calibrations.map((calibration) => (
              <tr key={calibration.id}>
                <th>{day(calibration.performedAt)}</th>
                <td>{day(calibration.dueAt)}</td>
                <td>
                  {calibration.ranges.map(({ direction, className, from, to, unit }) => (
                    <div
                      key={direction + String(className) + String(from)}
                      className={ui.small}
                      style={{ whiteSpace: 'nowrap' }}
                    >
                      {direction} {className ?? 'no class'}:{' '}
                      <span className={ui.fig}>{`${formatNumber(from)}–${formatNumber(to)} ${unit}`}</span>
                    </div>
                  ))}
                  <span className={clsx(ui.soft, ui.small)}>{calibration.standard}</span>
                </td>
                <td>
                  {calibration.certificateFileId ? (
                    <a href={urlOf(api('GET /files/{id}', { id: calibration.certificateFileId }))}>
                      {calibration.certificateNumber}
                    </a>
                  ) : (
                    calibration.certificateNumber
                  )}
                  <br />
                  <span className={clsx(ui.soft, ui.small)}>{calibration.laboratory}</span>
                </td>
                <td className={calibration.asFound === 'out-of-tolerance' ? ui.act : undefined}>
                  {calibration.asFound === 'out-of-tolerance'
                    ? '▲ out of tolerance'
                    : calibration.asFound === 'within'
                      ? 'within'
                      : 'not recorded'}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

function Faults({ item, mayClose, onReport }: { item: ItemDetail; mayClose: boolean; onReport: (() => void) | null }) {
  const { moment } = useMoments();
  const [remedy, setRemedy] = useState('');
  const close = useApiMutation(['items', 'plan'], () => setRemedy(''));
  return (
    <section className={ui.stackTight}>
      <div className={ui.rowBetween}>
        <h2>Faults</h2>
        {onReport && (
          <button type="button" className={clsx(ui.buttonSharp, ui.buttonSmall)} onClick={onReport}>
            Report a fault …
          </button>
        )}
      </div>
      {item.faults.length === 0 && <p className={ui.soft}>None was ever reported.</p>}
      <ul>
        {item.faults.map((fault) => (
          <li key={fault.id} className={fault.closedAt ? undefined : ui.noteAct}>
            <strong>{fault.what}</strong>
            <br />
            <span className={ui.small}>
              {fault.openedBy.name}, {moment(fault.openedAt)}
              {fault.closedAt
                ? `; closed ${moment(fault.closedAt)}: ${fault.remedy ?? ''}`
                : '; open: the item fits no job'}
            </span>
            {!fault.closedAt && mayClose && (
              <form
                className={ui.row}
                onSubmit={(event) => {
                  event.preventDefault();
                  close.mutate(api('POST /faults/{id}/close', { id: fault.id, body: { remedy } }));
                }}
              >
                <input
                  aria-label="What was done"
                  placeholder="What was done"
                  value={remedy}
                  onChange={(event) => setRemedy(event.target.value)}
                />
                <button type="submit" className={clsx(ui.button, ui.buttonSmall)} disabled={!remedy.trim()}>
                  Close the fault
                </button>
              </form>
            )}
          </li>
        ))}
      </ul>
      <ErrorMessage error={close.error} />
    </section>
  );
}

function ShiftChecks({ item }: { item: ItemDetail }) {
  const { moment } = useMoments();
  return (
    <section className={ui.scrollX}>
      <h2>Shift checks</h2>
      <table>
        <thead>
          <tr>
            <th>When</th>
            <th className={ui.num}>Reference</th>
            <th className={ui.num}>Reading</th>
            <th className={ui.num}>Error</th>
            <th>By</th>
          </tr>
        </thead>
        <tbody>
          {item.shiftChecks.slice(0, 12).map((check) => (
            <tr key={check.at}>
              <th>{moment(check.at)}</th>
              <td className={ui.num}>
                {formatNumber(check.reference)} {check.unit}
              </td>
              <td className={ui.num}>
                {formatNumber(check.reading, 5)} {check.unit}
              </td>
              <td className={check.passed ? ui.num : clsx(ui.num, ui.act)}>
                {check.passed ? '' : '▲ '}
                {check.errorPct.toFixed(2)} %
              </td>
              <td>{check.technician.name}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Windows({ item, onAdd }: { item: ItemDetail; onAdd: (() => void) | null }) {
  const { moment } = useMoments();
  const remove = useApiMutation(['items', 'plan']);
  return (
    <>
      <ul>
        {item.windows.map((window) => (
          <li key={window.id} className={ui.rowBetween}>
            <span>
              {window.kind.replaceAll('-', ' ')}: {window.why}
              <br />
              <span className={clsx(ui.small, ui.soft)}>
                {moment(window.startsAt)} to {moment(window.endsAt)}
              </span>
            </span>
            {onAdd && (
              <button
                type="button"
                className={clsx(ui.buttonBare, ui.buttonSmall)}
                onClick={() => remove.mutate(api('DELETE /windows/{id}', { id: window.id }))}
              >
                Take out
              </button>
            )}
          </li>
        ))}
      </ul>
      {item.windows.length === 0 && <p className={ui.soft}>Nothing keeps it away.</p>}
      {onAdd && (
        <div>
          <button type="button" className={clsx(ui.button, ui.buttonSmall)} onClick={onAdd}>
            Keep it away for a while …
          </button>
        </div>
      )}
      <ErrorMessage error={remove.error} />
    </>
  );
}
