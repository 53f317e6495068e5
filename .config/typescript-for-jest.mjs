// Turns TypeScript into JavaScript for Jest. Jest runs modules in a context of its own, where every look-up of a global is slow;
// a constant of the module makes `Math` as quick in specs as it is in the product.
import { createTransformer } from '@swc/jest';

const swc = createTransformer();
const withMath = (out) => ({ ...out, code: `const Math = globalThis.Math; ${out.code}` });

export default {
  ...swc,
  process: (...given) => withMath(swc.process(...given)),
  processAsync: async (...given) => withMath(await swc.processAsync(...given)),
  getCacheKey: (...given) => `${swc.getCacheKey(...given)}-math`,
};
