import js from '@eslint/js';
import { defineConfig, globalIgnores } from 'eslint/config';
import tseslint from 'typescript-eslint';

const decimalOutsideText = {
  name: 'decimal.js',
  message: 'Only src/quantity/text.ts, which reads and writes decimal text, needs it; it weighs 13 kB gzipped.',
};
const zodOutsideRecord = {
  regex: '^zod(/|$)',
  message: 'Only src/record knows zod: the core stays free of it.',
};
const recordOutsideRecord = {
  regex: '/record/',
  message: 'The core does not import src/record: that would bring zod into it.',
};

const roundingMessage = 'Engines differ in its last place: multiply, or take Math.sqrt.';
const ambientMessage = 'Clock, locale and environment are never read: what depends on them is passed in.';

export default defineConfig(
  globalIgnores(['dist/', 'coverage/', '.cache/', 'docs/api/', 'everywhere/consumer/', 'everywhere/tools/']),
  js.configs.recommended,
  tseslint.configs.strictTypeChecked,
  tseslint.configs.stylisticTypeChecked,
  {
    linterOptions: { reportUnusedDisableDirectives: 'error', reportUnusedInlineConfigs: 'error' },
    languageOptions: {
      parserOptions: { project: ['tsconfig.json', 'tests/tsconfig.json'], tsconfigRootDir: import.meta.dirname },
    },
    rules: {
      eqeqeq: 'error',
      // An interface gives a shape of zod a name in messages of the compiler.
      '@typescript-eslint/no-empty-object-type': ['error', { allowInterfaces: 'with-single-extends' }],
      // TypeScript checks this better, with the globals that each folder has.
      'no-undef': 'off',
      // Messages state numbers all the time.
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      // A check that leaves early by "return check(x)", or is handed on as "() => check(x)", reads well.
      '@typescript-eslint/no-confusing-void-expression': 'off',
      // Its remedy is the non-null "!", which no-non-null-assertion forbids.
      '@typescript-eslint/non-nullable-type-assertion-style': 'off',
      // The mark of a quantity is a getter on the prototype, so that a copy by spread does not carry it.
      '@typescript-eslint/class-literal-property-style': 'off',
    },
  },
  {
    files: ['src/**'],
    rules: {
      // The doors check at run time what the types promise, for callers in plain JavaScript.
      '@typescript-eslint/no-unnecessary-condition': 'off',
      '@typescript-eslint/explicit-module-boundary-types': 'error',
      'no-restricted-imports': [
        'error',
        { paths: [decimalOutsideText], patterns: [zodOutsideRecord, recordOutsideRecord] },
      ],
      'no-restricted-globals': [
        'error',
        ...['Date', 'Intl', 'globalThis', 'process'].map((name) => ({ name, message: ambientMessage })),
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'pow', message: roundingMessage },
        { object: 'Math', property: 'random', message: 'The same inputs give the same result.' },
      ],
      'no-restricted-syntax': [
        'error',
        {
          selector: ":matches(BinaryExpression[operator='**'], AssignmentExpression[operator='**='])",
          message: roundingMessage,
        },
        {
          selector: "BinaryExpression[operator='in']",
          message: "It sees what a program has put on Object.prototype: has(value, 'field') does not.",
        },
        {
          selector: 'MemberExpression[property.name=/^(toLocale|localeCompare)/]',
          message: ambientMessage,
        },
        {
          selector:
            'ImportDeclaration[source.value=/^zod/] > :matches(ImportSpecifier[importKind!="type"], ImportDefaultSpecifier)',
          message: "Write import * as z from 'zod': the other forms keep all of it (93 kB against 26 kB gzipped).",
        },
      ],
    },
  },
  {
    files: ['src/record/**'],
    rules: { 'no-restricted-imports': ['error', { paths: [decimalOutsideText] }] },
  },
  {
    // Documents are made of reports: it knows the record, by its types and codes, and not its schemas.
    files: ['src/worked/**'],
    rules: { 'no-restricted-imports': ['error', { paths: [decimalOutsideText], patterns: [zodOutsideRecord] }] },
  },
  {
    files: ['src/quantity/text.ts'],
    rules: { 'no-restricted-imports': ['error', { patterns: [zodOutsideRecord, recordOutsideRecord] }] },
  },
  {
    // Type tests hold code that is wrong on purpose.
    files: ['tests/**/*.test-d.ts'],
    rules: {
      '@typescript-eslint/no-unused-expressions': 'off',
      '@typescript-eslint/restrict-plus-operands': 'off',
    },
  },
);
