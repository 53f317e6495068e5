import { clsx } from 'clsx';
import type { PlanView } from '#libs/contract/src/index.js';
import { Empty, FetchStates } from '../../ui/fetch-states.js';
import { useMoments } from '../../ui/use-moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { NoBreak } from '../../ui/no-break.js';
import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

const FULL = 0.9;

/** How full frames and pools of like items are, and which pools hold everything else back. */
export function PoolsScreen() {
  const plan = useApiQuery('plan', api('GET /plan'));
  return (
    <FetchStates of={plan} what="the load">
      {(value) => (
        <>
          <TitleBlock title="Load and pools" />
          <div className={ui.stackWide}>
            <FrameLoad plan={value} />
            <section>
              <h2>Pools of like items</h2>
              <p className={ui.soft}>Items that can stand in for each other, and how much of their time is planned.</p>
              {value.pools.length === 0 ? (
                <Empty>No item is planned for a job yet.</Empty>
              ) : (
                <table>
                  <thead>
                    <tr>
                      <th>Pool</th>
                      <th className={ui.num}>In use</th>
                      <th style={{ width: '45%' }} />
                      <th>Effect</th>
                    </tr>
                  </thead>
                  <tbody>
                    {[...value.pools]
                      .sort((a, b) => b.loadPct - a.loadPct)
                      .map(({ pool, label, loadPct, binds }) => (
                        <tr key={pool}>
                          <th>
                            <NoBreak>{label}</NoBreak>
                          </th>
                          <td className={ui.num}>{Math.round(loadPct)} %</td>
                          <td>
                            <Bar share={loadPct / 100} />
                          </td>
                          <td className={ui.oneLine}>
                            {binds ? (
                              <span className={ui.badgeAct}>▲ holds jobs back</span>
                            ) : (
                              <span className={ui.soft}>has room</span>
                            )}
                          </td>
                        </tr>
                      ))}
                  </tbody>
                </table>
              )}
            </section>
          </div>
        </>
      )}
    </FetchStates>
  );
}

function FrameLoad({ plan }: { plan: PlanView }) {
  const { day } = useMoments();
  const weeks = plan.lanes[0]?.load.map(({ weekStartsAt }) => weekStartsAt) ?? [];
  return (
    <section className={ui.scrollX}>
      <h2>Frames, booked of available hours, week by week</h2>
      <table>
        <thead>
          <tr>
            <th>Frame</th>
            {weeks.map((week) => (
              <th key={week}>From {day(week)}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {plan.lanes.map(({ frame, load }) => (
            <tr key={frame.id}>
              <th className={ui.fig}>{frame.tag}</th>
              {load.map(({ weekStartsAt, bookedHours, availableHours }) => {
                const share = availableHours > 0 ? bookedHours / availableHours : 0;
                return (
                  <td key={weekStartsAt}>
                    <Bar share={share} />
                    {availableHours === 0 ? (
                      <span className={clsx(ui.fig, ui.small)}>{closedWeek(bookedHours)}</span>
                    ) : (
                      <>
                        <span className={clsx(ui.fig, ui.small)}>{Math.round(share * 100)} % </span>
                        <wbr />
                        <span className={clsx(ui.fig, ui.small, ui.soft)}>
                          {bookedHours.toFixed(0)}/{availableHours.toFixed(0)} h
                        </span>
                        {share > FULL && <span className={clsx(ui.fig, ui.small)}> ▲ full</span>}
                      </>
                    )}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** Work that began before the lab closed may run on. */
function closedWeek(bookedHours: number): string {
  if (bookedHours === 0) return 'closed';
  return `closed · ${bookedHours < 1 ? '< 1' : bookedHours.toFixed(0)} h`;
}

function Bar({ share }: { share: number }) {
  return (
    <svg
      width="100%"
      height="14"
      viewBox="0 0 100 14"
      preserveAspectRatio="none"
      aria-hidden="true"
      style={{ display: 'block' }}
    >
      <path d="M0 7H100" stroke="var(--hair)" vectorEffect="non-scaling-stroke" />
      <path
        d={`M0 7H${Math.min(100, share * 100)}`}
        stroke={share > FULL ? 'var(--act)' : 'var(--ink)'}
        strokeWidth="6"
        vectorEffect="non-scaling-stroke"
      />
      <path d="M100 1v12" stroke="var(--ink)" vectorEffect="non-scaling-stroke" />
    </svg>
  );
}
