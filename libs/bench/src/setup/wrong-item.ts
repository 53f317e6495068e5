import type { Finding } from '../finding.js';
import type { TrainProblem } from './train-problem.js';

/** An item that was scanned or typed, and the places of the train that it might take. */
export interface WrongItem {
  item: { tag: string; name: string };
  /** Tags of the items of the train that are not confirmed yet. */
  expected: readonly string[];
  /** The job that has the item now. */
  inUseBy: string | null;
  /** Places of its kind: whose item stands there, what speaks against this one there, and whether both are equal units. */
  places: readonly { itemId: string; tag: string; problems: readonly TrainProblem[]; isEqual: boolean }[];
}

/** Why an item is not the one for this train: who has it, the rules that it would break, or that an equal unit was meant. */
export function wrongItem(wrong: WrongItem): Finding {
  const { sentence, ...more } = whyWrong(wrong);
  const wanted = `Wanted is ${wrong.expected.join(' or ') || 'nothing more'}.`;
  return {
    code: 'bench/wrong-item',
    sentence: `${sentence} ${wanted}`,
    facts: { found: wrong.item.tag, allowed: wrong.expected, ...more },
  };
}

interface Why {
  sentence: string;
  /** Job that has the item now. */
  inUseBy?: string;
  /** Rules that it would break. */
  rules?: string[];
  /** Item for which it could stand in. */
  standInFor?: string;
}

function whyWrong({ item, inUseBy, places }: WrongItem): Why {
  if (inUseBy !== null) return { sentence: `${item.tag} is in use by ${inUseBy}.`, inUseBy };
  const [nearest] = [...places].sort((a, b) => a.problems.length - b.problems.length);
  if (!nearest) return { sentence: `${item.tag} (${item.name}) has no place in this train.` };
  const { tag: planned, problems, isEqual, itemId } = nearest;
  if (problems.length > 0) {
    const said = problems.map(({ sentence }) => sentence).join(' ');
    return {
      sentence: `${item.tag} cannot take the place of ${planned}: ${said}`,
      rules: problems.map(({ rule }) => rule),
    };
  }
  if (isEqual) {
    return {
      sentence: `${item.tag} is not the one on the sheet, but an equal unit: let it stand in for ${planned}.`,
      standInFor: itemId,
    };
  }
  return {
    sentence: `${item.tag} breaks no rule here, but it is not equal to ${planned}, for which the plan was made.`,
  };
}
