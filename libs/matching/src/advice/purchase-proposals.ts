import { formatNumber } from '#libs/units/src/index.js';
import type { FrameRefusal, Verdict } from '../answer/answer.js';
import { partsOf } from '../answer/links.js';
import { counterpart, couplingWords } from '../register/couplings.js';
import { endWords } from '../ask/end-words.js';
import type { Coupling, Frame, Item, LoadCell, RatingPoint } from '../register/item.js';
import type { Parts } from '../rules/parts.js';
import { openEnds } from '../rules/couplings.js';
import { capacityOf } from '../rules/frame-capacity.js';
import { releasedJ } from '../rules/guarding.js';
import { newAdapter, newCell, newChamber, newEnd, newExtensometer, newGuard } from './new-items.js';
import { niceUp } from './proposal.js';
import type { Proposal, Question } from './proposal.js';

/** What could be bought so that the nearest train of a frame passes: the rating, size or class that it must have. */
export function purchaseProposals(verdict: Verdict, refusal: FrameRefusal, question: Question): Proposal[] {
  const { byId } = question.search.index;
  const frame = byId.get(refusal.frameId);
  if (frame?.kind !== 'frame') return [];
  const near = refusal.nearest ? partsOf(refusal.nearest, byId) : null;
  if (verdict.reason === 'no-ends') return near ? [] : [buyEnd(frame, null, question)];
  if (!near) return [];
  const items = verdict.items.flatMap((id) => byId.get(id) ?? []);
  switch (verdict.rule) {
    case 'weakest-link':
      return items.map((item) => stronger(item, question));
    case 'specimen-fit':
    case 'temperature':
      return [
        ...items.filter(isEnd).map((item) => buyEnd(frame, item, question)),
        ...forTemperature(verdict, frame, items, question),
      ];
    case 'couplings':
      return joining(near, question);
    case 'cell-within-frame':
    case 'cell-capacity':
    case 'verified-range':
      return buyCell(near, question);
    case 'strain':
      return [buyExtensometer(question)];
    case 'guarding':
      return [buyGuard(frame, question)];
    default:
      return [];
  }
}

function buy(item: Item, sentence: string): Proposal {
  return { kind: 'buy', sentence, apply: { change: 'new-item', item } };
}

function isEnd(item: Item): boolean {
  return item.kind === 'grip' || item.kind === 'fixture' || item.kind === 'platen';
}

function load(value: number, { needs }: Question): string {
  return needs.loadUnit === 'N' && value >= 1000
    ? `${formatNumber(value / 1000, 3)} kN`
    : `${formatNumber(value, 3)} ${needs.loadUnit}`;
}

/** Load that a new link must carry, with the lab's margin and at the test temperature. */
function neededRating({ needs, settings }: Question): number {
  return niceUp(needs.peakHigh.value * (1 + settings.forceMargin));
}

function stronger(item: Item, question: Question): Proposal {
  const { needs } = question;
  const rating = neededRating(question);
  const curve: RatingPoint[] = [{ temperatureC: needs.temperature.value, rating }];
  const better = { ...item, ...fresh(item.tag), ratings: { ...item.ratings, [needs.direction]: curve } };
  const at = needs.chamber ? ` at ${needs.temperature.value} °C` : '';
  return buy(
    better,
    `Buy a ${item.kind.replaceAll('-', ' ')} like ${item.tag} that carries ${load(rating, question)} in ${needs.direction}${at}.`,
  );
}

/** Identity of a thing that does not exist yet. */
function fresh(like: string): Pick<Item, 'id' | 'tag' | 'state' | 'heldWindows'> {
  return { id: `new-${like}`, tag: `new-${like}`, state: 'in-service', heldWindows: [] };
}

function buyEnd(frame: Frame, like: Item | null, question: Question): Proposal {
  const item = newEnd(frame, like, question.needs, neededRating(question));
  return buy(
    item,
    `Buy ${endWords(question.needs)} for ${sizeWords(question)}, rated ${load(neededRating(question), question)}.`,
  );
}

function sizeWords({ needs: { specimen, temperature, chamber } }: Question): string {
  const span = specimen.spanMm === null ? '' : `, span ${formatNumber(specimen.spanMm, 4)} mm`;
  const at = chamber ? `, at ${temperature.value} °C` : '';
  return `${formatNumber(specimen.gripThicknessMm, 4)} × ${formatNumber(specimen.gripWidthMm, 4)} mm${span}${at}`;
}

function forTemperature({ reason }: Verdict, frame: Frame, items: readonly Item[], question: Question): Proposal[] {
  const { needs } = question;
  if (reason === 'item-too-cold' || reason === 'item-too-hot') {
    const rated = (item: Item): Item => ({
      ...item,
      ...fresh(item.tag),
      temperatureMinC: Math.min(item.temperatureMinC, needs.temperature.value),
      temperatureMaxC: Math.max(item.temperatureMaxC, needs.temperature.value),
    });
    return items.map((item) =>
      buy(rated(item), `Buy a ${item.kind.replaceAll('-', ' ')} like ${item.tag} for ${needs.temperature.value} °C.`),
    );
  }
  if (!['no-chamber', 'too-cold', 'too-hot', 'chamber-too-wide', 'chamber-too-narrow'].includes(reason)) return [];
  return [
    buy(
      newChamber(frame, needs),
      `Buy a chamber for ${needs.temperature.value} °C that fits ${formatNumber(frame.details.columnClearanceMm, 4)} mm between the columns.`,
    ),
  ];
}

/** An adapter for the side that does not meet. */
function joining(near: Parts, question: Question): Proposal[] {
  const open = openEnds(near);
  const rating = neededRating(question);
  const between = (from: Coupling, to: Coupling): Proposal => {
    const words = `Buy an adapter from ${couplingWords(counterpart(from))} to ${couplingWords(counterpart(to))}, rated ${load(rating, question)}.`;
    return buy(newAdapter(counterpart(from), counterpart(to), rating, question.needs), words);
  };
  const { upper, lower } = near.ends;
  return [
    between(open.upper.coupling, upper.details.coupling),
    between(open.lower.coupling, lower.details.coupling),
    ...buyCell(near, question),
  ];
}

/** Part of the frame's capacity below which nobody hangs a cell in it (common practice, no source). */
const SMALLEST_CELL = 1 / 1000;

/** The smallest cell of the usual steps that reads the peak well, no larger than the frame. */
function buyCell({ frame, ends, cellAt }: Parts, question: Question): Proposal[] {
  const { needs } = question;
  const { cellBandHigh, forceMargin } = question.settings;
  const capacity = niceUp(needs.peakHigh.value * Math.max(1 / cellBandHigh, 1 + forceMargin));
  const most = capacityOf(frame.details, needs.direction);
  const rated = capacity <= most ? capacity : most;
  if (rated < needs.peakHigh.value * (1 + forceMargin) || rated < SMALLEST_CELL * most) return [];
  const cell: LoadCell = newCell(frame, cellAt, ends.upper.details.coupling, rated, question);
  const words = `Buy a load cell of ${load(rated, question)} for ${couplingWords(cell.details.frameCoupling)}, verified from ${load(needs.smallest.value, question)} in ${needs.direction} to ${needs.forceClass.standard} class ${needs.forceClass.className}.`;
  return [buy(cell, words)];
}

function buyExtensometer(question: Question): Proposal {
  const { strain } = question.needs;
  const gauge = strain.gaugeLength ? `gauge length ${formatNumber(strain.gaugeLength.value, 4)} mm` : 'deflection';
  const words = `Buy an extensometer: ${gauge}, travel ${formatNumber(strain.extension?.value ?? 0, 3)} mm, ${strain.rule!.standard} class ${strain.rule!.className}.`;
  return buy(newExtensometer(question), words);
}

function buyGuard(frame: Frame, question: Question): Proposal {
  const energyJ = niceUp(releasedJ(question.needs, frame, question.settings));
  return buy(
    newGuard(frame, energyJ),
    `Buy a guard for ${formatNumber(energyJ, 3)} J that fits ${formatNumber(frame.details.columnClearanceMm, 4)} mm between the columns.`,
  );
}
