import { lowerClass } from '#libs/accuracy/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import type { Ask } from './ask.js';
import { hasStrength } from './ask-fields.js';
import { checkAsk } from './check-ask.js';
import { declared, figure } from './figure.js';
import { loadAt, plasticHinge, plasticTorque } from './load-at.js';
import type { Material } from '../register/material.js';
import type { ClassNeed, Hazard, Method } from '../register/method.js';
import { modulusUsed, smallestLoad } from './smallest-load.js';
import { forceRateOf, speedOf } from './speed-of.js';
import { specimenNeed } from './specimen-need.js';
import { strainNeed } from './strain-need.js';
import { strengthUsed } from './strength-used.js';
import { DEFAULT_SETTINGS } from './settings.js';
import type { MatchSettings } from './settings.js';
import { storedEnergy, travelNeed } from './travel-need.js';
import type { Figure, Needs } from './needs.js';

/**
 * What a load train must offer for a request: every figure with formula, inputs and source. Figures that nobody declared are marked as
 * assumed.
 *
 * @param method the version that the ask was agreed with
 * @param material from the library, or null when strength or load is declared
 * @returns the needs, or every problem of the ask by field
 */
export function needsOf(
  ask: Ask,
  method: Method,
  material: Material | null,
  settings: MatchSettings = DEFAULT_SETTINGS,
): Needs | FieldProblem[] {
  const problems = checkAsk(method, ask);
  if (problems.length > 0) return problems;
  const load = peakLoads(ask, method, material, settings);
  return Array.isArray(load) ? load : derive(ask, method, material, load, settings);
}

/** Tells needs from the problems that stand in their way. */
export function isNeeds(value: Needs | FieldProblem[]): value is Needs {
  return !Array.isArray(value);
}

interface PeakLoads {
  low: Figure;
  high: Figure;
}

function peakLoads(
  ask: Ask,
  method: Method,
  material: Material | null,
  settings: MatchSettings,
): PeakLoads | FieldProblem[] {
  const unit = method.direction === 'torque' ? 'N·m' : 'N';
  if (ask.peak) {
    return {
      low: declared(ask.peak.low, unit, 'declared', 'requester'),
      high: declared(ask.peak.high, unit, 'declared', 'requester'),
    };
  }
  if (!hasStrength(method)) return [];
  const strength = strengthUsed(ask, method, material, settings);
  if ('field' in strength) return [strength];
  const low = loadAt(strength.low, ask.geometry, method);
  const marks = {
    source: `${strength.source}; ${low.source}`,
    ...(strength.assumed ? { assumed: true as const } : {}),
  };
  return { low: { ...low, ...marks }, high: { ...highestLoad(strength.high, ask, method), ...marks } };
}

/** A bar that is twisted off, and a plate that is bent to an angle, are plastic throughout at the end. */
function highestLoad(strengthMPa: number, { geometry }: Ask, method: Method): Figure {
  if (method.testType === 'torsion') return plasticTorque(strengthMPa, geometry);
  const bendsThrough = method.testType === 'flexure-3' && method.strength === 'tensile';
  return bendsThrough ? plasticHinge(strengthMPa, geometry) : loadAt(strengthMPa, geometry, method);
}

function derive(ask: Ask, method: Method, material: Material | null, peak: PeakLoads, settings: MatchSettings): Needs {
  const modulus = modulusUsed(ask, material);
  const smallest = smallestLoad({ ask, method, material, modulus, peakLow: peak.low });
  const stiff = { modulusMPa: modulus?.low ?? Infinity, frameNPerMm: settings.assumedStiffnessNPerMm };
  const speeds = method.speeds.map((each) => ({
    stage: each.stage,
    speed: speedOf(each, ask.geometry, method, ask.speedMmPerMin, stiff),
  }));
  const travel = travelNeed(ask, method, material);
  const strain = strainNeed({ ask, method, material, modulus, peakLow: peak.low });
  const temperature = temperatureNeed(ask, settings);
  const stressRate = method.speeds.find(({ rule }) => rule.kind === 'stress-rate')?.rule;
  const named = {
    peakHigh: peak.high,
    smallest,
    travel,
    gaugeLength: strain.gaugeLength,
    extension: strain.extension,
    speed: speeds[0]?.speed ?? null,
  };
  return {
    methodId: method.id,
    methodVersion: method.version,
    testType: method.testType,
    direction: method.direction,
    loadUnit: method.direction === 'torque' ? 'N·m' : 'N',
    peakLow: peak.low,
    peakHigh: peak.high,
    smallest,
    speeds,
    control: stressRate ? 'force' : 'position',
    forceRate: stressRate ? forceRateOf(stressRate, ask.geometry, method) : null,
    travel,
    storedEnergy: storedEnergy(ask, method, modulus, peak.high, travel),
    strain,
    temperature,
    chamber: temperature.value < settings.roomMinC || temperature.value > settings.roomMaxC,
    specimen: specimenNeed(ask, method),
    ends: method.ends,
    forceClass: forceClassNeed(ask, method),
    conditioning: conditioningNeed(method),
    hazards: hazardsOf(ask, method, material, temperature.value, settings),
    guardAlways: method.guardAlways,
    brittle: material?.brittle ?? false,
    materialGroup: material?.group ?? method.materialGroups[0] ?? null,
    specimens: ask.specimens,
    minPerSpecimen: method.defaultMinPerSpecimen,
    setupMin: method.defaultSetupMin,
    alignmentMaxBendingPct: method.alignmentMaxBendingPct,
    toConfirm: Object.entries(named).flatMap(([name, each]) =>
      each?.assumed && !ask.confirmed.includes(name) ? [name] : [],
    ),
  };
}

/** The method's class, or the next lower one where that was agreed. */
function forceClassNeed({ options }: Ask, { forceClass }: Method): ClassNeed {
  const lower = options.lowerForceClass ? lowerClass(forceClass) : null;
  return lower ? { ...lower, source: `${forceClass.source}; lower class agreed` } : forceClass;
}

function temperatureNeed(ask: Ask, settings: MatchSettings): Figure {
  return ask.temperatureC === null
    ? declared(settings.roomC, '°C', 'room temperature', 'lab setting')
    : declared(ask.temperatureC, '°C', 'as asked', 'requester');
}

function conditioningNeed({ conditioning }: Method): Figure | null {
  if (!conditioning) return null;
  const { hours, temperatureC, humidityPct, standard } = conditioning;
  const climate =
    humidityPct === null ? `${temperatureC} °C` : `${temperatureC} °C, ${humidityPct} % relative humidity`;
  return figure(hours, 'h', climate, [], standard);
}

function hazardsOf(
  ask: Ask,
  method: Method,
  material: Material | null,
  temperatureC: number,
  settings: MatchSettings,
): Hazard[] {
  const found: Hazard[] = [...method.hazards, ...ask.hazards];
  if (material?.brittle) found.push('fragments');
  if (temperatureC > settings.roomMaxC) found.push('heat');
  if (temperatureC < settings.roomMinC) found.push('cold');
  return [...new Set(found)];
}
