// Which folders of src are mutated, and which tests judge the mutants of each.
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';

/**
 * Folders of tests, or single files, by the folder of src that they judge. A mutant should die in the tests of its own room; the others are
 * those of the rooms that use it in ways of their own.
 *
 * @type {Readonly<Record<string, readonly string[]>>}
 */
export const TESTS = {
  basis: ['basis', 'quantity', 'verdict', 'charge', 'relation', 'record/words.test.ts', 'record/hostile.test.ts'],
  quantity: ['quantity', 'basis', 'relation/relations.test.ts'],
  gas: ['gas', 'relation'],
  target: ['target', 'reading', 'verdict', 'relation', 'basis/listed.test.ts'],
  reading: ['reading', 'relation', 'verdict/budget.test.ts', 'verdict/decide.test.ts', 'verdict/parts.test.ts'],
  verdict: ['verdict', 'charge', 'relation', 'worked/derivation.test.ts', 'basis/listed.test.ts'],
  charge: ['charge', 'relation'],
  supply: ['supply', 'relation'],
  settling: ['settling', 'relation'],
  safety: ['safety', 'procedure', 'relation'],
  procedure: ['procedure'],
  record: ['record', 'basis/listed.test.ts'],
  worked: ['worked'],
};

export const ROOMS = Object.keys(TESTS);

/** Rooms in which each survivor has its reason: a change that brings one without is held up. */
export const SETTLED = new Set(['basis', 'quantity', 'gas', 'target', 'verdict', 'charge', 'record']);

/** Test files that do not judge mutants, and why. */
const FILES_LEFT_OUT = new Set([
  'tests/target/audit-rates.test.ts', // thousands of drawn tables: minutes; and it asks Vitest's own runner for that time
  'tests/verdict/coverage.test.ts', // populations by simulation: minutes
  'tests/supply/exhaustive.test.ts', // every course of steps: a quarter of a minute
  'tests/record/large.test.ts', // documents of 100 000 accumulators: half a minute each
  'tests/record/schema.test.ts', // the same for reports, against ajv and zod
]);

/** Single tests that do not judge mutants: part of their names. */
export const TESTS_LEFT_OUT = [
  // Load the modules a second time, which only Vitest's own runner can do.
  'across two copies of the library',
  'one of another copy of the library is taken',
  'is within a unit in the last place', // digits by the dozen; another test holds the same functions to the bit
  // How often the round as a whole is seen right, over drawn rounds: a minute.
  'show a gauge in kgf/cm2 read as bar',
  'show it in 97 %',
  'show a shift that is not there',
  'have few false ones in a smaller round',
  // Documents by the hundred, of which the tests that are kept judge a few of each kind.
  'one thing wrong: what is said of it', // together with others in all-problems.test.ts
  'every value of a round, replaced',
  'every field of a round, left out',
  'in any place of',
  'all of them are listed > whichever',
  'so is a partial one, whatever is wrong with its round',
  'however many there are, none of what holds them is judged',
  'text and parsed JSON give the same report',
  'too deep, or too large: that is what is said',
  'in any one place: its digest does not match', // every field of a report, judged again each time
  'nor more values than a document may hold', // twenty million, as in hostile.test.ts, where nothing copies them
];

/**
 * Every test of the record makes reports, in which nearly all its code takes part: here is what each of them looks at. What
 * is not named is judged by all.
 *
 * @type {Readonly<Record<string, string>>}
 */
const LOOKS_AT = {
  'tests/basis/listed.test.ts': 'recall',
  'tests/record/all-problems.test.ts':
    'accumulator admit admit-reading certainty characteristics document instruments named problems quantities stated visit',
  'tests/record/bad-input.test.ts': 'document named problems report visit',
  'tests/record/carried.test.ts': 'carried document instruments visit write',
  'tests/record/certainty.test.ts':
    'accumulator admit admit-reading certainty characteristics instruments whole write write-certainty',
  'tests/record/digest.test.ts': 'canonical sha256',
  'tests/record/filling.test.ts': 'admit-safety admit-supply filling safety write-safety',
  'tests/record/hostile.test.ts': 'document json-data length problems',
  'tests/record/json-data.test.ts': 'json-data',
  'tests/record/read-report.test.ts': 'json-data problems read-report',
  'tests/record/recall.test.ts': 'recall',
  'tests/record/report.test.ts': 'accumulator admit-reading document quantities report visit write',
  'tests/record/reverify.test.ts': 'because json-data report reverify version',
  'tests/record/shapes.test.ts':
    'carried certainty-shape codes gas-shape json-schema length measured report-shape safety-shape shape supply-shape',
  'tests/record/tables.test.ts': 'accumulator admit document quantities stated write',
  'tests/record/text.test.ts': 'document problems scan text',
  'tests/record/whole-report.test.ts':
    'accumulator admit-reading admit-safety admit-supply certainty-shape codes document filling gas-shape measured quantities report report-shape safety safety-shape shape supply-shape whole write write-certainty write-safety',
  'tests/record/words.test.ts': 'filling report whole words write write-certainty write-safety safety',
  'tests/record/worst-first.test.ts': 'worst-first',
  'tests/record/work-order.test.ts': 'work-order',
};
const LOOKED_AT = new Set(Object.values(LOOKS_AT).flatMap((names) => names.split(' ')));

/** What all calculation goes through, and one test holds to the last bit: the others would only be slower to see it. */
const TO_THE_BIT = new Map([['src/gas/elementary.ts', ['tests/gas/elementary.test.ts']]]);

/**
 * The test files that judge the mutants of a file.
 *
 * @param {string} file
 * @param {string} root
 */
export async function testFilesOf(file, root) {
  const alone = TO_THE_BIT.get(file);
  if (alone !== undefined) return alone;
  const [, room = ''] = file.split('/');
  const paths = await Promise.all(
    (TESTS[room] ?? []).map(async (place) =>
      place.endsWith('.ts')
        ? [`tests/${place}`]
        : (await readdir(join(root, 'tests', place))).map((name) => `tests/${place}/${name}`),
    ),
  );
  const name = file.replace('src/record/', '').replace('.ts', '');
  const sees = (/** @type {string} */ path) =>
    !LOOKED_AT.has(name) || (LOOKS_AT[path]?.split(' ').includes(name) ?? true);
  return paths
    .flat()
    .filter((path) => path.endsWith('.test.ts') && !FILES_LEFT_OUT.has(path) && sees(path))
    .sort();
}
