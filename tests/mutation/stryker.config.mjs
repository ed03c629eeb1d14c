// Which files: `npm run mutation -- lib/core/day.ts …`; without names, everything in lib/core and lib/guide.
/** @type {import('@stryker-mutator/api/core').PartialStrykerOptions} */
export default {
  mutate: ['lib/core/**/*.ts', 'lib/guide/**/*.ts'],
  testRunner: 'vitest',
  vitest: { configFile: 'tests/mutation/vitest.config.ts', related: false },
  coverageAnalysis: 'perTest',
  // A static mutant needs a new process and every test: tables and words, which other tests compare with their sources.
  ignoreStatic: true,
  // Strings are words, judged by the tests of sentences, and keys, judged by TypeScript; most question marks of `?.` are
  // there for an index that the types cannot know to be inside.
  mutator: { excludedMutations: ['StringLiteral', 'OptionalChaining'] },
  // There is no TypeScript checker (it does not know version 7), and no file to rewrite.
  tsconfigFile: 'tsconfig.none.json',
  disableTypeChecks: false,
  concurrency: 2,
  timeoutMS: 10_000,
  timeoutFactor: 1,
  tempDirName: 'tests/mutation/.sandbox',
  ignorePatterns: [
    '.next',
    '.ci',
    'data',
    'public',
    'prisma',
    'tests/browser*',
    'tests/mutation/reports',
    'tests/mutation/.sandbox*',
    '*.tsbuildinfo',
  ],
  reporters: ['json', 'progress-append-only'],
  jsonReporter: { fileName: 'tests/mutation/reports/last.json' },
  allowEmpty: true,
  cleanTempDir: 'always',
}
