import { clsx } from 'clsx';
import type { ReactNode } from 'react';
import type { PreviewView } from '#libs/contract/src/index.js';
import type { Candidate, Figure, FrameRefusal, Needs, Verdict } from '#libs/matching/src/index.js';
import { formatNumber } from '#libs/units/src/index.js';
import { span } from '../../ui/moments.js';
import { load } from './force-ladder.js';
import { ui } from '../../ui/styles.js';
import styles from './matching.module.css';

type Names = PreviewView['items'];

function figureText({ value, unit }: Figure): string {
  if (unit === 'N' || unit === 'N·m') return load(value, unit);
  return unit ? `${formatNumber(value)}\u00a0${unit}` : formatNumber(value);
}

/** What a load train must offer, each figure with the formula and inputs that it came from. */
export function NeedsList({
  needs,
  confirmed,
  onConfirm,
}: {
  needs: Needs;
  confirmed?: readonly string[];
  onConfirm?: (name: string) => void;
}) {
  const lines: [string, string, Figure | null][] = [
    ['Highest load', 'peakHigh', needs.peakHigh],
    ['Lowest peak', 'peakLow', needs.peakLow],
    ['Smallest to read', 'smallest', needs.smallest],
    ...needs.speeds.map(({ stage, speed }): [string, string, Figure] => [
      stage === 'whole' ? 'Speed' : `Speed, ${stage}`,
      `speed-${stage}`,
      speed,
    ]),
    ['Travel', 'travel', needs.travel],
    ['Stored energy', 'storedEnergy', needs.storedEnergy],
    ['Temperature', 'temperature', needs.temperature],
    ['Gauge length', 'gaugeLength', needs.strain.gaugeLength],
    ['Extension', 'extension', needs.strain.extension],
    ['Conditioning', 'conditioning', needs.conditioning],
  ];
  return (
    <div className={ui.stackTight}>
      <div>
        {lines.map(([label, name, figure]) => figure && <NeedsLine key={name} label={label} figure={figure} />)}
        <div className={styles.needsLine}>
          <span>Force class</span>
          <span className={ui.fig}>{needs.forceClass.className}</span>
          <span className={styles.formula}>{needs.forceClass.standard}</span>
        </div>
      </div>
      {onConfirm && needs.toConfirm.length > 0 && (
        <div className={clsx(ui.noteAct, ui.stackTight)}>
          <strong>Assumed, because nobody said so:</strong>
          {needs.toConfirm.map((name) => (
            <div className={ui.row} key={name}>
              <span>{lines.find(([, of]) => of === name)?.[0] ?? name}</span>
              {!confirmed?.includes(name) && (
                <button type="button" className={clsx(ui.button, ui.buttonSmall)} onClick={() => onConfirm(name)}>
                  That is right
                </button>
              )}
            </div>
          ))}
        </div>
      )}
    </div>
  );
}

function NeedsLine({ label, figure }: { label: string; figure: Figure }) {
  const inputs = figure.inputs
    .map(({ name, value, unit }) => `${name} ${formatNumber(value)}${unit ? ` ${unit}` : ''}`)
    .join(', ');
  return (
    <div className={styles.needsLine}>
      <span>
        {label}
        {figure.assumed && <span className={clsx(ui.small, ui.act)}> assumed</span>}
      </span>
      <span className={ui.fig}>{figureText(figure)}</span>
      <span className={styles.formula}>
        {figure.formula}
        {inputs && ` with ${inputs}`}
        {figure.source && ` · ${figure.source}`}
      </span>
    </div>
  );
}

const OUTCOMES = { pass: ['✓', 'passes'], caution: ['!', 'caution'], fail: ['✕', 'fails'] } as const;

/** What every rule says about a train, failures first. */
export function Verdicts({ verdicts }: { verdicts: readonly Verdict[] }) {
  const order = { fail: 0, caution: 1, pass: 2 };
  return (
    <ul className={styles.rules}>
      {[...verdicts]
        .sort((a, b) => order[a.outcome] - order[b.outcome])
        .map((verdict, index) => (
          <li key={`${verdict.rule}-${index}`} className={styles[verdict.outcome]}>
            <span className={styles.outcome} role="img" aria-label={OUTCOMES[verdict.outcome][1]}>
              {OUTCOMES[verdict.outcome][0]}
            </span>
            <span>
              {verdict.sentence} <span className={clsx(ui.soft, ui.small)}>{verdict.source}</span>
            </span>
            <span className={ui.fig}>{marginText(verdict)}</span>
          </li>
        ))}
    </ul>
  );
}

function marginText({ margin, unit, required }: Verdict): string {
  if (margin === null) return '';
  const share = typeof required === 'number' && required > 0 ? ` (${Math.round((margin / required) * 100)} %)` : '';
  const size =
    unit === 'N' || unit === 'N·m'
      ? load(Math.abs(margin), unit)
      : `${formatNumber(Math.abs(margin), 3)} ${unit ?? ''}`;
  return `${margin < 0 ? 'short by' : 'spare'} ${size}${share}`;
}

interface CandidatesProps {
  candidates: readonly Candidate[];
  items: Names;
  /** The drawing of the candidate at that place, if there is one. */
  picture?: (index: number) => ReactNode;
}

/** The trains that can run the batch, the best of each frame first; each opens to its rules, score and picture. */
export function Candidates({ candidates, ...rest }: CandidatesProps) {
  const places = candidates.map((candidate, index) => ({ candidate, index }));
  const best = places.filter(
    ({ candidate, index }) => candidates.findIndex(({ frameId }) => frameId === candidate.frameId) === index,
  );
  const others = places.filter((place) => !best.includes(place));
  return (
    <div className={styles.candidates}>
      {best.map((place) => (
        <CandidateEntry key={place.index} {...place} {...rest} />
      ))}
      {others.length > 0 && (
        <details>
          <summary>{others.length} other trains on these frames</summary>
          {others.map((place) => (
            <CandidateEntry key={place.index} {...place} {...rest} />
          ))}
        </details>
      )}
    </div>
  );
}

function CandidateEntry({
  candidate,
  index,
  items,
  picture,
}: Omit<CandidatesProps, 'candidates'> & { candidate: Candidate; index: number }) {
  return (
    <details className={styles.candidate}>
      <summary>
        <strong className={ui.fig}>{items[candidate.frameId]?.tag ?? 'Frame'}</strong>
        <span>
          {trainText(candidate, items)}
          {cautions(candidate) > 0 && (
            <span className={clsx(ui.soft, ui.small)}>
              {' '}
              · {cautions(candidate) === 1 ? 'one caution' : `${cautions(candidate)} cautions`}
            </span>
          )}
        </span>
        <span className={ui.small}>
          {candidate.changeover.minutes > 0 ? `changeover ${span(candidate.changeover.minutes)}` : 'stands ready'}
        </span>
      </summary>
      <div className={ui.stack}>
        {picture?.(index)}
        <p className={ui.small}>
          Score {formatNumber(candidate.score, 3)} (lower is better):{' '}
          {candidate.scoreParts.map(({ points, sentence }) => `${sentence}: ${formatNumber(points, 3)}`).join('; ')}
        </p>
        <Verdicts verdicts={candidate.verdicts} />
      </div>
    </details>
  );
}

function cautions({ verdicts }: Candidate): number {
  return verdicts.filter(({ outcome }) => outcome === 'caution').length;
}

function trainText({ links }: Candidate, items: Names): string {
  const shown = links.filter(({ role }) =>
    ['load-cell', 'upper', 'ends', 'lower', 'extensometer', 'chamber'].includes(role),
  );
  return shown
    .map(({ itemId, pool }) => `${items[itemId]?.tag ?? '–'}${pool.length > 1 ? ` or ${pool.length - 1} like it` : ''}`)
    .join(' · ');
}

/** Why every other frame cannot: the fewest rules that its nearest train breaks. */
export function Refusals({ refusals, items }: { refusals: readonly FrameRefusal[]; items: Names }) {
  return (
    <div className={styles.candidates}>
      {refusals.map(({ frameId, failing }) => (
        <details key={frameId} className={styles.candidate}>
          <summary>
            <strong className={ui.fig}>{items[frameId]?.tag ?? 'Frame'}</strong>
            <span>{failing[0]?.sentence}</span>
            <span className={ui.small}>{failing.length > 1 ? `and ${failing.length - 1} more` : ''}</span>
          </summary>
          <Verdicts verdicts={failing} />
        </details>
      ))}
    </div>
  );
}

/** Computed changes that would open frames. */
export function AdviceList({ advice, items }: { advice: PreviewView['advice']; items: Names }) {
  return (
    <ul className={styles.advice}>
      {advice.map(({ sentence, opensFrames }) => (
        <li key={sentence}>
          {sentence}{' '}
          <span className={clsx(ui.soft, ui.small)}>
            Opens {opensFrames.length === 1 ? 'frame' : `${opensFrames.length} frames:`}{' '}
            {opensFrames.map((id) => items[id]?.tag ?? '').join(', ')}
          </span>
        </li>
      ))}
    </ul>
  );
}
