import { formatNumber, formatQuantity } from '#libs/units/src/index.js';

/** What the cautions of a job follow from. */
export interface CautionFacts {
  hazards: readonly string[];
  brittle: boolean;
  chamber: boolean;
  /** Energy that the specimen alone lets go at the peak, J. */
  storedEnergy: { value: number };
  /** Test temperature, °C. */
  temperature: { value: number };
}

/** An item of the train, as far as it can hurt. */
export interface CautionItem {
  tag: string;
  massKg: number;
  /** A grip that closes by air or oil. */
  isPowered: boolean;
}

/** What always ends the cautions. */
export const LAST_CAUTION =
  "Follow the operator's guide of the equipment, your lab's rules and local law; this sheet replaces neither training nor supervision.";

const OF_HAZARD = {
  fragments: 'Fragments can fly when it breaks: guard closed, eye protection on, nobody in line with the specimen.',
  'stored-energy': 'The train lets go stored energy at the break: keep hands and head away while there is load.',
  biological: 'The specimen can carry germs: gloves, and clean grips and bench afterwards.',
  pressure: 'There is pressure inside: shield it, and let it off before you touch it.',
  heat: 'Hot parts burn: insulated gloves, and let everything cool before you open it.',
  cold: 'Cold parts stick to skin, and liquid nitrogen takes the air to breathe: insulated gloves, eye protection, open air.',
  'sharp-edges': 'Edges and broken ends cut: gloves when you load and unload.',
  dust: 'Dust and fibres harm lungs and skin: extraction on, mask and gloves.',
} as const satisfies Record<string, string>;

const HEAVY_KG = 10;
const NOTABLE_J = 5;
/** From here on skin is burned or frozen on touch; common practice, no source. */
const HOT_C = 45;
const COLD_C = 0;

/** What can hurt in this job, short; then what the rules warn of; last, what goes before all of it. */
export function cautionsFor(needs: CautionFacts, train: readonly CautionItem[], ofRules: readonly string[]): string[] {
  const heavy = train
    .filter(({ massKg }) => massKg >= HEAVY_KG)
    .map(({ tag, massKg }) => `${tag} (${formatNumber(massKg)} kg)`);
  const clamps = train.some(({ isPowered }) => isPowered);
  const hot = needs.temperature.value >= HOT_C && !needs.hazards.includes('heat');
  const cold = needs.temperature.value <= COLD_C && !needs.hazards.includes('cold');
  return [
    'The crosshead crushes: hands out of the test space before anything moves, jog slowly, stops set first.',
    clamps ? 'Powered grips close on fingers: hold the specimen from the side, never between the jaws.' : [],
    heavy.length > 0 ? `Heavy: ${heavy.join(', ')}. Use the hoist or two people.` : [],
    needs.brittle && !needs.hazards.includes('fragments') ? OF_HAZARD.fragments : [],
    needs.storedEnergy.value >= NOTABLE_J
      ? `At the peak the specimen alone holds ${formatQuantity(needs.storedEnergy.value, 'J', 2)}: it breaks with a jerk.`
      : [],
    needs.hazards.flatMap((hazard) => (isKnown(hazard) ? OF_HAZARD[hazard] : [])),
    needs.chamber && hot ? `Chamber at ${formatNumber(needs.temperature.value)} °C. ${OF_HAZARD.heat}` : [],
    needs.chamber && cold ? `Chamber at ${formatNumber(needs.temperature.value)} °C. ${OF_HAZARD.cold}` : [],
    ofRules.filter((sentence) => !sentence.startsWith('Take care:')),
    LAST_CAUTION,
  ].flat();
}

function isKnown(hazard: string): hazard is keyof typeof OF_HAZARD {
  return hazard in OF_HAZARD;
}
