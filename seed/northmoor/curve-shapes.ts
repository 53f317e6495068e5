import { Chance } from './chance.js';

/** What a recorded test shows: seconds, newtons, millimetres. Extension is absent where no extensometer was fitted. */
export interface RecordedPoint {
  timeS: number;
  forceN: number;
  travelMm: number;
  extensionMm?: number;
}

/** Strains between which ISO 527-1 takes the modulus. */
const CHORD = { from: 0.0005, to: 0.0025 };
const POINTS = 480;

export interface StiffPlastic {
  modulusMPa: number;
  strengthMPa: number;
  breakStrain: number;
  areaMm2: number;
  gaugeLengthMm: number;
  gripSeparationMm: number;
}

/**
 * Tension of a stiff plastic to its break: σ = E₀·ε − c·ε^1.5, with E₀ and c such that the chord modulus and the point of break
 * are those asked for. The shape is made up; it rises to the break as such plastics do.
 */
export function stiffPlastic(name: string, wanted: StiffPlastic): RecordedPoint[] {
  const { modulusMPa, strengthMPa, breakStrain, areaMm2, gaugeLengthMm, gripSeparationMm } = wanted;
  const bend = (CHORD.to ** 1.5 - CHORD.from ** 1.5) / (CHORD.to - CHORD.from);
  const steep = breakStrain ** 1.5;
  const first = (modulusMPa - (bend * strengthMPa) / steep) / (1 - (bend * breakStrain) / steep);
  const curved = (first * breakStrain - strengthMPa) / steep;
  const noise = new Chance(`noise/${name}`);
  const pointAt = (strain: number, timeS: number, stress: number): RecordedPoint => ({
    timeS,
    forceN: Math.max(0, stress * areaMm2 + 0.4 * noise.normal()),
    travelMm: strain * gripSeparationMm * 1.12,
    extensionMm: strain * gaugeLengthMm,
  });
  const strains = strainsTo(breakStrain);
  const rising = strains.map(({ strain, timeS }) => pointAt(strain, timeS, first * strain - curved * strain ** 1.5));
  const endS = strains.at(-1)!.timeS;
  const broken = AFTER_BREAK.map((share, index) =>
    pointAt(breakStrain * (1 + 0.0005 * (index + 1)), endS + 0.1 * (index + 1), strengthMPa * share),
  );
  return [...rising, ...broken];
}

/** What is left of the load on the rows after the break, as shares of the strength. */
const AFTER_BREAK = [0.25, 0.03, 0.005] as const;

/** 1 mm/min over the modulus, 5 mm/min after it, as ISO 527-1 has it; half of the points lie below 0.4 % strain. */
function strainsTo(breakStrain: number): { strain: number; timeS: number }[] {
  const slowTo = 0.004;
  const half = POINTS / 2;
  const slowS = (strain: number) => strain * 115 * 60;
  return Array.from({ length: POINTS + 1 }, (_, index) => {
    if (index <= half) return { strain: (slowTo * index) / half, timeS: slowS((slowTo * index) / half) };
    const strain = slowTo + ((breakStrain - slowTo) * (index - half)) / half;
    return { strain, timeS: slowS(slowTo) + ((strain - slowTo) * 115 * 60) / 5 };
  });
}

export interface SpringyPart {
  stiffnessNPerMm: number;
  peakN: number;
  speedMmPerMin: number;
}

/** A part that is pulled until it lets go: it takes up its slack, stiffens, bends over towards the peak and drops. */
export function springyPart(name: string, { stiffnessNPerMm, peakN, speedMmPerMin }: SpringyPart): RecordedPoint[] {
  const noise = new Chance(`noise/${name}`);
  const slackMm = 0.8;
  const reachMm = (peakN / stiffnessNPerMm) * 1.08;
  const rising = Array.from({ length: POINTS + 1 }, (_, index) => {
    const travelMm = ((slackMm + reachMm) * index) / POINTS;
    const share = Math.max(0, travelMm - slackMm) / reachMm;
    return { travelMm, forceN: peakN * (1.08 * share - 0.08 * share ** 3) };
  });
  const dropped = [0.6, 0.22, 0.06, 0.02].map((share, index) => ({
    travelMm: slackMm + reachMm + 0.02 * (index + 1),
    forceN: peakN * share,
  }));
  return [...rising, ...dropped].map(({ travelMm, forceN }) => ({
    timeS: (travelMm / speedMmPerMin) * 60,
    forceN: Math.max(0, forceN + 0.3 * noise.normal()),
    travelMm,
  }));
}

/** The file as the frame's own recorder writes it. */
export function curveFile(title: string, points: readonly RecordedPoint[]): string {
  const withExtension = points[0]!.extensionMm !== undefined;
  const heading = ['Time', 'Force', 'Travel', ...(withExtension ? ['Extension'] : [])];
  const units = ['s', 'N', 'mm', ...(withExtension ? ['mm'] : [])];
  const rows = points.map(({ timeS, forceN, travelMm, extensionMm }) => [
    timeS.toFixed(2),
    forceN.toFixed(2),
    travelMm.toFixed(4),
    ...(extensionMm === undefined ? [] : [extensionMm.toFixed(5)]),
  ]);
  return [
    `Northmoor Cycles materials lab;${title}`,
    '',
    ...[heading, units, ...rows].map((cells) => cells.join(';')),
    '',
  ].join('\r\n');
}
