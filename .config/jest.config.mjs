// One configuration, three projects: specs beside the code need no database, those of components need a document, and what is under
// test/ may need a database.
import { dirname } from 'node:path';

const rootDir = dirname(import.meta.dirname);

/** Components have no decorators and are compiled as Vite does. */
const TSX = {
  swcrc: false,
  sourceMaps: 'inline',
  module: { type: 'es6' },
  jsc: {
    target: 'es2022',
    parser: { syntax: 'typescript', tsx: true },
    transform: { react: { runtime: 'automatic' } },
  },
};

const shared = {
  rootDir,
  testEnvironment: 'node',
  setupFiles: ['<rootDir>/.config/jest.setup.mjs'],
  testEnvironmentOptions: { customExportConditions: ['source', 'node', 'node-addons'] },
  extensionsToTreatAsEsm: ['.ts', '.tsx'],
  moduleFileExtensions: ['ts', 'tsx', 'js', 'mjs', 'cjs', 'json', 'node'],
  transform: {
    '^.+\\.ts$': '<rootDir>/.config/typescript-for-jest.mjs',
    '^.+\\.tsx$': ['@swc/jest', TSX],
    '\\.css$': '<rootDir>/.config/css-classes.mjs',
  },
  moduleNameMapper: { '^(\\.{1,2}/.*)\\.js$': '$1' },
  modulePathIgnorePatterns: ['<rootDir>/dist', '<rootDir>/.data'],
};

export default {
  rootDir,
  workerIdleMemoryLimit: '800MB',
  projects: [
    {
      ...shared,
      displayName: 'parts',
      testMatch: [
        '<rootDir>/{apps,libs,seed}/**/*.spec.ts',
        '<rootDir>/test/{published,curves,properties}/**/*.spec.ts',
        '<rootDir>/test/*.spec.ts',
      ],
    },
    {
      ...shared,
      displayName: 'components',
      testMatch: ['<rootDir>/apps/web/**/*.spec.tsx'],
      testEnvironment: 'jsdom',
      testEnvironmentOptions: { customExportConditions: ['source', 'browser'] },
      setupFilesAfterEnv: ['<rootDir>/test/support/component-document.ts'],
    },
    {
      ...shared,
      displayName: 'whole',
      testMatch: ['<rootDir>/test/{stories,browser,records,faults,exchange}/**/*.spec.ts'],
      globalSetup: '<rootDir>/test/support/start-database.mjs',
      globalTeardown: '<rootDir>/test/support/stop-database.mjs',
    },
  ],
};
