// What the compiler does not see: promises nobody waits for, imports that drag code along for a type, leftovers.
import js from '@eslint/js';
import prettier from 'eslint-config-prettier';
import reactHooks from 'eslint-plugin-react-hooks';
import { dirname } from 'node:path';
import tseslint from 'typescript-eslint';

const root = dirname(import.meta.dirname);

/** A cast through `unknown` or to `never` says that the compiler is wrong: then the type that it doubts is put right. */
const NO_ESCAPE = [
  { selector: 'TSAsExpression > TSNeverKeyword', message: 'Give it its type.' },
  { selector: 'TSAsExpression > TSAsExpression > TSUnknownKeyword', message: 'Give it its type.' },
];
/** TypeORM takes anything as the rows to change, and goes into jsonb columns with its types. */
const ONE_WAY_TO_WRITE = ["[callee.object.name='manager']", "[callee.object.property.name='manager']"].map((of) => ({
  selector: `CallExpression[callee.property.name=/^(insert|update|upsert|save)$/]${of}`,
  message: 'Rows are written by libs/records/src/platform/write-rows.ts.',
}));
/** The lab's clock says what time it is: only its own file asks the machine. Screens ask `useMoments`. */
const NO_WALL_CLOCK = [
  { selector: "CallExpression[callee.object.name='Date'][callee.property.name='now']", message: 'Ask the Clock.' },
  { selector: "NewExpression[callee.name='Date'][arguments.length=0]", message: 'Ask the Clock.' },
];

export default tseslint.config(
  { ignores: ['dist/**', 'apps/web/src/api-client/operations.ts', 'node_modules/**', 'coverage/**', '.data/**'] },
  js.configs.recommended,
  {
    files: ['**/*.ts', '**/*.tsx'],
    extends: [...tseslint.configs.recommendedTypeChecked],
    languageOptions: { parserOptions: { project: ['./tsconfig.json'], tsconfigRootDir: root } },
    rules: {
      '@typescript-eslint/consistent-type-imports': 'error',
      'no-duplicate-imports': ['error', { allowSeparateTypeImports: true }],
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      '@typescript-eslint/unbound-method': 'off', // our interfaces describe plain objects of functions, which may be taken apart
      '@typescript-eslint/require-await': 'off', // an interface may ask for a promise where one side has nothing to wait for
    },
  },
  {
    files: ['{apps,libs,seed}/**/*.{ts,tsx}'],
    ignores: ['**/*.spec.{ts,tsx}'],
    rules: { 'no-restricted-syntax': ['error', ...NO_ESCAPE] },
  },
  {
    files: ['apps/{api,worker,solo}/**/*.ts', 'libs/**/*.ts', 'seed/**/*.ts'],
    ignores: ['**/*.spec.ts', 'libs/calendar/src/clock.ts'],
    rules: { 'no-restricted-syntax': ['error', ...NO_ESCAPE, ...NO_WALL_CLOCK, ...ONE_WAY_TO_WRITE] },
  },
  {
    files: ['apps/web/src/{screens,features}/**/*.{ts,tsx}'],
    ignores: ['**/*.spec.{ts,tsx}'],
    rules: { 'no-restricted-syntax': ['error', ...NO_ESCAPE, ...NO_WALL_CLOCK] },
  },
  {
    files: ['libs/records/src/platform/write-rows.ts'],
    rules: { 'no-restricted-syntax': ['error', ...NO_ESCAPE, ...NO_WALL_CLOCK] },
  },
  {
    files: ['apps/web/**/*.{ts,tsx}'],
    plugins: { 'react-hooks': reactHooks },
    rules: { 'react-hooks/rules-of-hooks': 'error', 'react-hooks/exhaustive-deps': 'error' },
  },
  {
    // Answers over HTTP have no type in the specs that check them.
    files: ['test/**/*.ts', '**/*.spec.ts'],
    rules: {
      '@typescript-eslint/no-explicit-any': 'off',
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-argument': 'off',
      '@typescript-eslint/no-unsafe-call': 'off',
      '@typescript-eslint/no-unsafe-member-access': 'off',
      '@typescript-eslint/no-unsafe-return': 'off',
    },
  },
  {
    files: ['.config/*', '**/*.mjs'],
    languageOptions: {
      globals: Object.fromEntries(
        ['process', 'console', 'URL', 'globalThis', 'performance', 'setTimeout', 'clearTimeout'].map((name) => [
          name,
          'readonly',
        ]),
      ),
    },
  },
  prettier,
);
