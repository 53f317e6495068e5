import { clsx } from 'clsx';
import { useState } from 'react';
import { Link } from 'wouter';
import { linkWords } from '#libs/contract/src/index.js';
import type { ItemDetail } from '#libs/contract/src/index.js';
import { FieldsView } from '../../features/register/fields-view.js';
import { FaultDialog, StateDialog, WindowDialog } from '../../features/register/item-dialogs.js';
import { KIND_WORDS, StateWord, StatusWord } from '../../features/register/item-words.js';
import { useHasRole } from '../../features/session/session.js';
import { FetchStates } from '../../ui/fetch-states.js';
import { useMoments } from '../../ui/use-moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import { formatNumber } from '#libs/units/src/index.js';
import { ItemCalibrations } from './item-calibrations.js';
import { ItemFaults } from './item-faults.js';
import { ItemWindows } from './item-windows.js';
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
  const mayEdit = useHasRole('manager');
  const mayReport = useHasRole('manager', 'technician');
  const [asking, setAsking] = useState<'fault' | 'state' | 'window' | null>(null);
  return (
    <>
      <ItemTitle item={item} mayEdit={mayEdit} />
      <div className={ui.splitMainLeft}>
        <div className={ui.stackWide}>
          <ItemCalibrations item={item} />
          <ItemFaults item={item} mayClose={mayEdit} onReport={mayReport ? () => setAsking('fault') : null} />
          {item.shiftChecks.length > 0 && <ShiftChecks item={item} />}
          <JobsAhead jobs={item.upcomingJobs} />
        </div>
        <div className={ui.stackWide}>
          <State item={item} mayEdit={mayEdit} onAsk={setAsking} />
          <WhatItIs item={item} />
        </div>
      </div>
      {asking === 'fault' && <FaultDialog item={item} onClose={() => setAsking(null)} />}
      {asking === 'state' && <StateDialog item={item} onClose={() => setAsking(null)} />}
      {asking === 'window' && <WindowDialog item={item} onClose={() => setAsking(null)} />}
    </>
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

function ItemTitle({ item, mayEdit }: { item: ItemDetail; mayEdit: boolean }) {
  return (
    <TitleBlock
      title={`${item.tag} ${item.name}`}
      back={{ to: '/register/items', label: 'Items' }}
      cells={[
        ['kind', KIND_WORDS[item.kind]],
        ['calibration', <StatusWord key="s" status={item.calibrationStatus} />],
        [
          'where',
          item.fittedOn ? `on ${item.fittedOn.frameTag}, ${linkWords(item.fittedOn.role)}` : item.place || 'not said',
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
  );
}

function JobsAhead({ jobs }: { jobs: ItemDetail['upcomingJobs'] }) {
  const { moment } = useMoments();
  return (
    <section className={ui.stackTight}>
      <h2>Jobs ahead</h2>
      {jobs.length === 0 ? (
        <p className={ui.soft}>No planned job needs it.</p>
      ) : (
        <ul>
          {jobs.map(({ jobId, reference, startsAt }) => (
            <li key={jobId}>
              <span className={ui.fig}>{reference}</span> {moment(startsAt)}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** Its state, and when it is kept away. */
function State({
  item,
  mayEdit,
  onAsk,
}: {
  item: ItemDetail;
  mayEdit: boolean;
  onAsk: (what: 'state' | 'window') => void;
}) {
  return (
    <section className={ui.stackTight}>
      <div className={ui.rowBetween}>
        <h2>
          State <StateWord state={item.state} />
        </h2>
        {mayEdit && (
          <button type="button" className={clsx(ui.button, ui.buttonSmall)} onClick={() => onAsk('state')}>
            Change the state …
          </button>
        )}
      </div>
      <ItemWindows item={item} onAdd={mayEdit ? () => onAsk('window') : null} />
    </section>
  );
}

function WhatItIs({ item }: { item: ItemDetail }) {
  return (
    <section className={ui.stackTight}>
      <div className={ui.rowBetween}>
        <h2>What it is</h2>
        <Link className={ui.small} href={`/reports/labels/item?of=${encodeURIComponent(item.tag)}`}>
          print its label
        </Link>
      </div>
      <FieldsView item={item} />
    </section>
  );
}
