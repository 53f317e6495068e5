import type { CalibrationStatus, ItemView } from '#libs/contract/src/index.js';
import type { ItemKind, Ratings } from '#libs/matching/src/index.js';
import { formatQuantity } from '#libs/units/src/index.js';
import { ui } from '../../ui/styles.js';

export const KIND_WORDS: Record<ItemKind, string> = {
  frame: 'Frame',
  'load-cell': 'Load cell',
  grip: 'Grip',
  'jaw-face': 'Jaw face',
  fixture: 'Fixture',
  platen: 'Platen',
  adapter: 'Adapter',
  extensometer: 'Extensometer',
  chamber: 'Chamber',
  guard: 'Guard',
  transducer: 'Transducer',
};

const STATUS_WORDS: Record<CalibrationStatus, [word: string, className: string | undefined]> = {
  'not-needed': ['needs none', ui.badgeQuiet],
  'in-force': ['in force', ui.badgeFit],
  'due-soon': ['due soon', ui.badge],
  overdue: ['▲ overdue', ui.badgeAct],
  never: ['▲ never calibrated', ui.badgeAct],
  'out-of-use': ['out of use', ui.badgeQuiet],
};

export const STATUS_CHOICES = (Object.keys(STATUS_WORDS) as CalibrationStatus[]).map((value) => ({
  value,
  label: STATUS_WORDS[value][0].replace('▲ ', ''),
}));

export function StatusWord({ status }: { status: CalibrationStatus }) {
  const [word, className] = STATUS_WORDS[status];
  return <span className={className}>{word}</span>;
}

export function StateWord({ state }: { state: ItemView['state'] }) {
  if (state === 'in-service') return null;
  return <span className={ui.badgeAct}>▲ {state.replace('-', ' ')}</span>;
}

/** What an item carries, in short: capacity of a frame or cell, else its smallest rating. */
export function capacityText({ kind, details, ratings }: Pick<ItemView, 'kind' | 'details' | 'ratings'>): string {
  const force = Number(details[kind === 'frame' ? 'tensionCapacityN' : 'capacityN'] ?? 0);
  const torque = Number(details['torqueCapacityNm'] ?? 0);
  if (force > 0) return force >= 1000 ? formatQuantity(force, 'kN') : formatQuantity(force, 'N');
  if (torque > 0) return formatQuantity(torque, 'N·m');
  return ratingText(ratings);
}

function ratingText(ratings: Ratings): string {
  const shown = (['tension', 'compression', 'torque'] as const).flatMap((direction) => {
    const most = Math.max(...(ratings[direction] ?? []).map(({ rating }) => rating));
    if (!Number.isFinite(most)) return [];
    return direction === 'torque'
      ? formatQuantity(most, 'N·m')
      : most >= 1000
        ? formatQuantity(most, 'kN')
        : formatQuantity(most, 'N');
  });
  return [...new Set(shown)].join(', ');
}
