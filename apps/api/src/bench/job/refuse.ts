import type { Finding } from '#libs/bench/src/index.js';
import { LabError } from '#libs/errors/src/index.js';

/**
 * Lets nothing happen while something is in the way.
 *
 * @throws LabError of the first finding; the sentences of the others are among its facts, as `also`
 */
export function refuseAny(findings: readonly (Finding | null)[]): void {
  const [first, ...others] = findings.filter((finding) => finding !== null);
  if (!first) return;
  const also = others.length > 0 ? { also: others.map(({ sentence }) => sentence) } : {};
  throw new LabError(first.code, first.sentence, { ...first.facts, ...also });
}
