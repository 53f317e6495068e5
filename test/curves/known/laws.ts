/**
 * How a specimen answers, as a closed form, with what must be found on it. Stresses in MPa (N/mm for forces per width or
 * thickness, N for components), strains as fractions (mm of travel for components).
 */
export interface Law {
  name: string;
  /** Stress at a strain, on [0, end]. */
  stressAt(strain: number): number;
  /** Where the test ends: at the break, or where the method stops. */
  end: number;
  /** Whether the load is gone on the row after the end. */
  breaks: boolean;
  /** True values by result key; `at` is the strain of a stress at a strain. Null where the law has no such value. */
  truth(key: string, at: number | null): number | null;
}

const INTEGRATION_STEPS = 20_000;

/** Area under the law from zero to a strain, by Simpson's rule. */
function workTo(stressAt: Law['stressAt'], strain: number): number {
  const step = strain / INTEGRATION_STEPS;
  let sum = stressAt(0) + stressAt(strain);
  for (let at = 1; at < INTEGRATION_STEPS; at++) sum += (at % 2 === 1 ? 4 : 2) * stressAt(at * step);
  return (sum * step) / 3;
}

/** Ramberg–Osgood metal: ε = σ/E + 0.002·(σ/Rp0.2)ⁿ up to Rm; then a neck, in which the load falls to 0.8 Rm (textbook). */
export function hardeningMetal(name: string, metal: { E: number; Rp02: number; Rm: number; Ag: number }): Law {
  const { E, Rp02, Rm, Ag } = metal;
  const n = Math.log(Ag / 0.002) / Math.log(Rm / Rp02);
  const strainAt = (stress: number) => stress / E + 0.002 * (stress / Rp02) ** n;
  const uniform = strainAt(Rm);
  const end = uniform * 1.3;
  const stressAt = (strain: number) =>
    strain <= uniform ? inverse(strainAt, strain, Rm) : Rm * (1 - 0.2 * ((strain - uniform) / (end - uniform)) ** 2);
  const truths: Record<string, number> = {
    'peak-stress': Rm,
    'offset-yield': Rp02,
    modulus: E,
    'plastic-strain-at-peak': Ag,
    'strain-at-peak': uniform,
    'strain-at-break': end,
  };
  return { name, stressAt, end, breaks: true, truth: (key) => truths[key] ?? null };
}

/** Mild steel: a straight line to ReH, a plateau of ±0.5 % at ReL on average, hardening to Rm, a neck. Rm may lie below ReH. */
export function yieldingMetal(name: string, metal: { E: number; ReH: number; plateau: number; Rm: number }): Law {
  const { E, ReH, plateau, Rm } = metal;
  const [first, luders, uniform, end] = [ReH / E, 0.02, 0.15, 0.22];
  const dip = 0.0004;
  const ripple = 0.005 * plateau;
  const stressAt = (strain: number) => {
    if (strain <= first) return E * strain;
    if (strain <= first + dip) return ReH - (ReH - plateau) * ((strain - first) / dip);
    if (strain <= luders) return plateau + ripple * Math.sin(((strain - first - dip) * 2 * Math.PI) / 0.004);
    if (strain <= uniform) return plateau + (Rm - plateau) * (1 - ((uniform - strain) / (uniform - luders)) ** 2);
    return Rm * (1 - 0.25 * ((strain - uniform) / (end - uniform)) ** 2);
  };
  const truths: Record<string, number> = {
    'peak-stress': Rm,
    'upper-yield': ReH,
    'lower-yield': plateau - ripple,
    modulus: E,
    'offset-yield': plateau,
    'plastic-strain-at-peak': uniform - Rm / E,
    'strain-at-peak': uniform,
    'strain-at-break': end,
  };
  return { name, stressAt, end, breaks: true, truth: (key) => truths[key] ?? null };
}

/** Bends over from its start: σ = E·ε·(1 − ε/(2·εp)), highest at εp, then falls gently to the break. */
export function bendingOver(
  name: string,
  plastic: { E: number; peakStrain: number; end: number; breaks: boolean; modulusStrain: readonly [number, number] },
): Law {
  const { E, peakStrain, end, breaks, modulusStrain } = plastic;
  const strength = (E * peakStrain) / 2;
  const stressAt = (strain: number) =>
    strain <= peakStrain
      ? E * strain * (1 - strain / (2 * peakStrain))
      : strength * (1 - 0.2 * ((strain - peakStrain) / Math.max(peakStrain, end - peakStrain)) ** 2);
  const peakAt = Math.min(end, peakStrain);
  const truths: Record<string, number> = {
    'peak-stress': stressAt(peakAt),
    'strain-at-peak': peakAt,
    'strain-at-break': end,
    'stress-at-break': stressAt(end),
    // Chord of the parabola: E·(1 − (a + b)/(2·εp)); a regression over equal steps gives the same.
    modulus: E * (1 - (modulusStrain[0] + modulusStrain[1]) / (2 * peakStrain)),
  };
  return {
    ...{ name, stressAt, end, breaks },
    truth: (key, at) => (key === 'stress-at-strain' && at !== null ? stressAt(at) : (truths[key] ?? null)),
  };
}

/** Stiffens slowly and breaks all at once, as carbon fibres do: σ = E·ε·(1 + k·ε). */
export function stiffening(
  name: string,
  { E, k, end, modulusStrain }: { E: number; k: number; end: number; modulusStrain: readonly [number, number] },
): Law {
  const stressAt = (strain: number) => E * strain * (1 + k * strain);
  const truths: Record<string, number> = {
    'peak-stress': stressAt(end),
    'strain-at-peak': end,
    'strain-at-break': end,
    'stress-at-break': stressAt(end),
    modulus: E * (1 + k * (modulusStrain[0] + modulusStrain[1])),
  };
  return { name, stressAt, end, breaks: true, truth: (key) => truths[key] ?? null };
}

/** Straight to the break. */
export function straight(name: string, { E, strength }: { E: number; strength: number }): Law {
  return stiffening(name, { E, k: 0, end: strength / E, modulusStrain: [0, 0] });
}

/** Foam: rises to a plateau, and densifies late: σ = p·(1 − exp(−ε/ε₀)) + d·max(0, ε − εd)². */
export function foam(name: string, { p, start, d, dense, end }: { p: number; start: number; d: number; dense: number; end: number }): Law {
  const stressAt = (strain: number) => p * (1 - Math.exp(-strain / start)) + d * Math.max(0, strain - dense) ** 2;
  return {
    ...{ name, stressAt, end, breaks: false },
    truth: (key, at) => {
      if (key === 'stress-at-strain' && at !== null) return stressAt(at);
      return key === 'peak-stress' ? stressAt(Math.min(end, 0.1)) : null;
    },
  };
}

/** Rubber: σ = c·ln(1 + ε/ε₀) + h·ε², broken at its end. */
export function rubber(name: string, { c, start, h, end }: { c: number; start: number; h: number; end: number }): Law {
  const stressAt = (strain: number) => c * Math.log1p(strain / start) + h * strain * strain;
  const truths: Record<string, number> = { 'peak-stress': stressAt(end), 'strain-at-break': end, 'strain-at-peak': end };
  return {
    ...{ name, stressAt, end, breaks: true },
    truth: (key, at) => (key === 'stress-at-strain' && at !== null ? stressAt(at) : (truths[key] ?? null)),
  };
}

/** A component: straight at `stiffness` N/mm up to 0.85 of the peak, then softens to it and breaks; strain stands for travel in mm. */
export function component(name: string, { stiffness, peakN }: { stiffness: number; peakN: number }): Law {
  const knee = (0.85 * peakN) / stiffness;
  const end = knee + (2 * 0.15 * peakN) / stiffness;
  const stressAt = (travel: number) =>
    travel <= knee ? stiffness * travel : peakN - (0.15 * peakN * ((end - travel) / (end - knee)) ** 2);
  const truths: Record<string, number> = {
    'peak-load': peakN,
    stiffness,
    'travel-at-peak': end,
    'energy-to-peak': workTo(stressAt, end) / 1000,
  };
  return { name, stressAt, end, breaks: true, truth: (key) => truths[key] ?? null };
}

/** The stress whose strain is asked for, by halving: the strain rises with the stress. */
function inverse(strainAt: (stress: number) => number, strain: number, most: number): number {
  let [low, high] = [0, most];
  for (let round = 0; round < 60; round++) {
    const middle = (low + high) / 2;
    if (strainAt(middle) < strain) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Work per volume (or J for components, from N and mm) up to a strain. */
export { workTo };
