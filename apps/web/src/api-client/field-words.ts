/** Wrappers of a path that say nothing to a person. */
const SILENT = new Set(['ask', 'body', 'details', 'geometry', 'conditions', 'options', 'head']);
/** What the last word of a name says of its unit or kind. */
const SUFFIX = /(Mm2?|MPa|MmPerMin|DegPerMin|NPerMm|Nm|Pct|C|N|J|Kg|Min|Ms|At|Id)$/;

/** A path of a body as people would say it: `results[0].value` is `result 1, value`, `conditions.humidityPct` is `humidity`. */
export function fieldWords(path: string): string {
  const words = path
    .split('.')
    .filter((part) => !SILENT.has(part))
    .map((part) => {
      const [, name = part, index] = /^(.*?)(?:\[(\d+)\])?$/.exec(part) ?? [];
      const plain = name.replace(SUFFIX, '') || name;
      const apart = plain.replace(/([a-z0-9])([A-Z])/g, '$1 $2').toLowerCase();
      return index === undefined ? apart : `${oneOf(apart)} ${Number(index) + 1}`;
    });
  return words.join(', ') || path;
}

/** One of several: `batches` is `batch`, `results` is `result`. */
function oneOf(several: string): string {
  return several.replace(/(?<=ch|sh|x|ss)es$|(?<!s)s$/, '');
}

/** The sentence about a field, with its path said in words. */
export function inWords(field: string, sentence: string): string {
  if (!field || !sentence.startsWith(`${field} `)) return sentence;
  const words = fieldWords(field);
  return words.charAt(0).toUpperCase() + words.slice(1) + sentence.slice(field.length);
}
