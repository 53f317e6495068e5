import { clsx } from 'clsx';
import { useMoments } from '../../ui/use-moments.js';
import { ui } from '../../ui/styles.js';
import styles from './requests.module.css';

interface Props {
  promise50At: string | null;
  promise80At: string | null;
  dueAt: string | null;
}

const WIDTH = 240;
const PAD = 12;

/** When it will be done, drawn as a dimension: from now to the 50 % day and the 80 % day, with the due date as a flag. */
export function PromiseSpan({ promise50At, promise80At, dueAt }: Props) {
  const { day, moment, nowMs } = useMoments();
  if (!promise50At || !promise80At)
    return <span className={ui.soft}>{dueAt ? `due ${day(dueAt)}` : 'no date yet'}</span>;
  const now = nowMs();
  const [half, likely] = [Date.parse(promise50At), Date.parse(promise80At)];
  const due = dueAt ? Date.parse(dueAt) : null;
  const from = Math.min(now, half, due ?? now);
  const to = Math.max(likely, due ?? likely, now);
  const x = (at: number) => PAD + ((at - from) / Math.max(1, to - from)) * (WIDTH - 2 * PAD);
  const late = due !== null && half > due;
  const said = `50 % by ${moment(promise50At)}, 80 % by ${moment(promise80At)}${dueAt ? `, due ${moment(dueAt)}` : ''}`;
  return (
    <span className={late ? clsx(styles.promise, styles.late) : styles.promise} title={said}>
      <svg viewBox={`0 0 ${WIDTH} 26`} width={WIDTH} height="26" role="img" aria-label={said}>
        <path d={`M${PAD} 16H${WIDTH - PAD}`} className={styles.hair} />
        <path d={`M${x(now)} 10v12`} />
        <path d={`M${x(now)} 16H${x(half)}`} className={styles.sure} />
        <path d={`M${x(half)} 16H${x(likely)}`} className={styles.maybe} />
        <path d={`M${x(half)} 9v14M${x(likely)} 11v10`} />
        {due !== null && <path d={`M${x(due)} 22V3h9l-3 3.5 3 3.5h-9`} className={styles.due} />}
      </svg>
      <span className={styles.days}>
        {day(promise50At)}
        {day(promise80At) !== day(promise50At) && (
          <>
            {' '}
            <span className={ui.soft}>to</span> {day(promise80At)}
          </>
        )}
      </span>
    </span>
  );
}
