import { isNeeds, needsOf } from '#libs/matching/src/index.js';
import type { Ask, Material, Method } from '#libs/matching/src/index.js';
import type { CalibrationEntity } from '#libs/records/src/index.js';

const NAMES: Readonly<Record<string, string>> = {
  widthMm: 'width',
  thicknessMm: 'thickness',
  diameterMm: 'diameter',
  outerDiameterMm: 'outer diameter',
  innerDiameterMm: 'inner diameter',
  gaugeLengthMm: 'gauge length',
  parallelLengthMm: 'parallel length',
  gripSeparationMm: 'grip separation',
  heightMm: 'height',
  lengthMm: 'length',
  spanMm: 'span',
  overlapMm: 'overlap',
};

/** E.g. `PA66-GF30, rectangle, width 10 mm, thickness 4 mm`. */
export function describeSpecimen({ geometry }: Ask, material: Material | null): string {
  const sizes = Object.entries(NAMES).flatMap(([key, name]) => {
    const value = geometry[key as keyof typeof geometry];
    return typeof value === 'number' ? [`${name} ${Number(value.toPrecision(6))} mm`] : [];
  });
  return [material?.name, geometry.shape, ...sizes].filter(Boolean).join(', ');
}

/** E.g. `1 mm/min, then 5 mm/min`. */
export function saySpeed(ask: Ask, method: Method): string {
  const needs = needsOf(ask, method, null);
  if (!isNeeds(needs)) return ask.speedMmPerMin === null ? 'by the method' : `${ask.speedMmPerMin} mm/min`;
  return needs.speeds.map(({ speed }) => `${Number(speed.value.toPrecision(3))} ${speed.unit}`).join(', then ');
}

/** E.g. `88 h at 23 °C and 50 % humidity, ISO 291`. */
export function sayConditioning({ conditioning }: Method): string {
  if (!conditioning || conditioning.hours === 0) return '';
  const { hours, temperatureC, humidityPct, standard } = conditioning;
  const humidity = humidityPct === null ? '' : ` and ${humidityPct} % humidity`;
  return `${hours} h at ${temperatureC} °C${humidity}, ${standard}`;
}

/** E.g. `ISO 7500-1: tension class 0.5, 100 to 10000 N`. */
export function sayCalibration({ standard, ranges }: CalibrationEntity): string {
  const spans = ranges.map(
    ({ direction, className, from, to, unit }) => `${direction} class ${className ?? 'none'}, ${from} to ${to} ${unit}`,
  );
  return `${standard}: ${spans.join('; ')}`;
}
