// One configuration, two projects: specs beside the code need no database; what is under test/ may.
import { dirname } from 'node:path';

const rootDir = dirname(import.meta.dirname);

const shared = {
  rootDir,
  testEnvironment: 'node',
  setupFiles: ['<rootDir>/.config/jest.setup.mjs'],
  testEnvironmentOptions: { customExportConditions: ['source', 'node', 'node-addons'] },
  extensionsToTreatAsEsm: ['.ts', '.tsx'],
  moduleFileExtensions: ['ts', 'tsx', 'js', 'mjs', 'cjs', 'json', 'node'],
  transform: { '^.+\\.tsx?$': ['@swc/jest'], '\\.css$': '<rootDir>/.config/css-classes.mjs' },
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
        '<rootDir>/{apps,libs,seed}/**/*.spec.ts?(x)',
        '<rootDir>/test/{published,curves,properties}/**/*.spec.ts',
        '<rootDir>/test/*.spec.ts',
      ],
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
