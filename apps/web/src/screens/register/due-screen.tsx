import { useState } from 'react';
import { Link } from 'wouter';
import type { DueLine } from '#libs/contract/src/index.js';
import { KIND_WORDS, StatusWord } from '../../features/register/item-words.js';
import { Empty, FetchStates } from '../../ui/fetch-states.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { useMoments } from '../../ui/use-moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** What falls due, and which planned jobs it would stop. */
export function DueScreen() {
  const [days, setDays] = useState('90');
  const due = useApiQuery('items', api('GET /calibration/due', { days }));
  return (
    <>
      <TitleBlock title="Calibration due" cells={[['items', due.value?.length ?? '…']]} />
      <div className={ui.filters}>
        <SelectField
          label="Look ahead"
          value={days}
          onChange={setDays}
          choices={[
            { value: '30', label: '30 days' },
            { value: '90', label: '90 days' },
            { value: '365', label: 'a year' },
          ]}
        />
      </div>
      <FetchStates
        of={due}
        what="what falls due"
        empty={(value) => value.length === 0 && <Empty>Nothing falls due in this time.</Empty>}
      >
        {(value) => <DueTable due={value} />}
      </FetchStates>
    </>
  );
}

function DueTable({ due }: { due: readonly DueLine[] }) {
  const { day, moment } = useMoments();
  return (
    <table>
      <thead>
        <tr>
          <th>Item</th>
          <th>Kind</th>
          <th>Due</th>
          <th>Status</th>
          <th>Would stop</th>
        </tr>
      </thead>
      <tbody>
        {due.map(({ item, dueAt, status, stops }) => (
          <tr key={item.id}>
            <th>
              <Link href={`/register/items/${item.id}`}>
                <span className={ui.fig}>{item.tag}</span> {item.name}
              </Link>
            </th>
            <td>{KIND_WORDS[item.kind]}</td>
            <td className={ui.oneLine}>{day(dueAt)}</td>
            <td>
              <StatusWord status={status} />
            </td>
            <td>
              {stops.length === 0 && <span className={ui.soft}>no planned job</span>}
              {stops.map((job) => (
                <div key={job.jobId} className={ui.act}>
                  ▲ <span className={ui.fig}>{job.reference}</span> on {moment(job.startsAt)}
                </div>
              ))}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
