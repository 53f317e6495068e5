import type { ConformityAsk } from '#libs/contract/src/index.js';

/** `NC drawing 4410: peak stress of each at least 300 MPa, simple acceptance`. */
export function limitsText({ specification, resultKey, of, lower, upper, unit, rule }: ConformityAsk): string {
  const limits = [
    lower === null ? [] : `at least ${lower} ${unit}`,
    upper === null ? [] : `at most ${upper} ${unit}`,
  ].flat();
  const whose = of === 'mean' ? 'the mean of' : 'each';
  const held = rule === 'guarded' ? 'guarded by the uncertainty' : 'simple acceptance';
  return `${specification}: ${whose} ${resultKey.replaceAll('-', ' ')} ${limits.join(' and ')}, ${held}`;
}
