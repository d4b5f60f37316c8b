// Holds the public types of the built package against the reports beside this file, so that no change of them goes
// unseen: a report is committed, and its difference is read like that of any other file.
//
//   node api/report.mjs [--update]
//
// Without a word it prints what differs and exits with 1 if anything does; --update writes the reports. Build first.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Extractor, ExtractorConfig, ExtractorLogLevel } from '@microsoft/api-extractor';

const words = process.argv.slice(2);
if (words.some((word) => word !== '--update')) {
  console.error('usage: report.mjs [--update]');
  process.exit(2);
}
const update = words.includes('--update');

const root = fileURLToPath(new URL('..', import.meta.url));
const reports = `${root}api`;
/** @type {unknown} */
const manifest = JSON.parse(readFileSync(`${root}package.json`, 'utf8'));
const { exports } = /** @type {{ exports: Record<string, string | { import: { types: string } }> }} */ (manifest);

// One report for each entry that has types, by the name under which a program imports it.
const entries = Object.entries(exports).flatMap(([path, to]) =>
  typeof to === 'string' ? [] : [{ name: `isochore${path.slice(1)}`, types: root + to.import.types.slice(2) }],
);
for (const { name, types } of entries) {
  if (existsSync(types)) report(name, types);
  else stop(`${types} is missing: npm run build`);
}
const files = entries.map(({ name }) => fileOf(name));
for (const file of readdirSync(reports)) {
  if (file.endsWith('.api.md') && !files.includes(file)) stop(`api/${file} is of no entry of the package: remove it`);
}

/**
 * @param {string} name
 * @param {string} types
 */
function report(name, types) {
  const file = fileOf(name);
  const config = ExtractorConfig.prepare({
    configObjectFullPath: undefined,
    packageJsonFullPath: `${root}package.json`,
    configObject: {
      projectFolder: root,
      mainEntryPointFilePath: types,
      newlineKind: 'lf',
      compiler: {
        overrideTsconfig: {
          // Node's types for one name, URL, that zod's own types want; not those of a browser, which has a Range too.
          compilerOptions: { target: 'es2022', lib: ['es2022'], types: ['node'], module: 'nodenext', strict: true },
          files: [types],
        },
      },
      apiReport: {
        enabled: true,
        reportFolder: reports,
        reportTempFolder: `${root}.cache/api`,
        reportFileName: file,
        // A type that no name is exported for is public all the same, wherever an exported one is made of it.
        includeForgottenExports: true,
      },
      docModel: { enabled: false },
      dtsRollup: { enabled: false },
      tsdocMetadata: { enabled: false },
      messages: {
        compilerMessageReporting: { default: { logLevel: ExtractorLogLevel.Error } },
        // Docstrings are held by the documentation and by tests; release tags are not used.
        extractorMessageReporting: {
          default: { logLevel: ExtractorLogLevel.Error },
          'ae-missing-release-tag': { logLevel: ExtractorLogLevel.None },
          'ae-forgotten-export': { logLevel: ExtractorLogLevel.None },
          // The types of an entry stand in files that it shares with the other; typedoc follows the links.
          'ae-unresolved-link': { logLevel: ExtractorLogLevel.None },
          'ae-undocumented': { logLevel: ExtractorLogLevel.None },
        },
        tsdocMessageReporting: { default: { logLevel: ExtractorLogLevel.None } },
      },
    },
  });
  const { succeeded, apiReportChanged, errorCount } = Extractor.invoke(config, {
    localBuild: update,
    printApiReportDiff: !update,
    messageCallback: (message) => {
      // That a report is new or was copied is said below, in the words of this project.
      if (message.messageId.startsWith('console-api-report') && message.messageId !== 'console-api-report-diff')
        message.handled = true;
      if (message.messageId === 'console-preamble') message.handled = true;
    },
  });
  if (errorCount > 0) return stop(`${name}: the types of the package could not be read whole`);
  if (update) return console.log(`${name}: ${apiReportChanged ? 'written' : 'as it was'}: api/${file}`);
  if (apiReportChanged || !succeeded)
    return stop(`${name} is not what api/${file} says; if it is meant to change: npm run api -- --update`);
  console.log(`${name}: as in api/${file}`);
}

/** @param {string} name */
function fileOf(name) {
  return `${name.replace('/', '-')}.api.md`;
}

/** @param {string} why */
function stop(why) {
  console.error(why);
  process.exitCode = 1;
}
