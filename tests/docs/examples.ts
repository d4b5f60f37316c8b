// Finds the examples in the documents and in the docstrings, and makes modules of them that the tests can check and run.
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import * as core from 'isochore';
import * as record from 'isochore/record';
import * as worked from 'isochore/worked';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));

export interface Example {
  /** Where it stands: file, and its number in it. */
  readonly name: string;
  readonly language: string;
  readonly code: string;
}

const FENCE = /^```(\w+)\n([\s\S]*?)^```$/gm;

/** Stands for the block of text that comes next. */
const BELOW = '// => the text below';

function blocksOf(file: string, text: string): Example[] {
  const blocks = [...text.matchAll(FENCE)].map(([, language = '', code = ''], i) => ({
    name: `${file} ${i + 1}`,
    language,
    code,
  }));
  return blocks.map((block, i) => {
    const { name, code } = block;
    const next = blocks[i + 1];
    if (code.includes(BELOW) !== (next?.language === 'text')) throw new Error(`${name}: text that nothing holds`);
    return { ...block, code: code.replace(BELOW, () => `// => ${JSON.stringify(next?.code)}`) };
  });
}

/** The fenced blocks of README.md and of the guides. In a guide the TypeScript is one program, told in parts. */
export function documentExamples(): Example[] {
  const read = (file: string): Example[] => blocksOf(file, readFileSync(`${ROOT}/${file}`, 'utf8'));
  const guides = readdirSync(`${ROOT}/docs`).filter((name) => name.endsWith('.md'));
  return [...read('README.md'), ...guides.flatMap((name) => asOneProgram(`docs/${name}`, read(`docs/${name}`)))];
}

function asOneProgram(file: string, blocks: readonly Example[]): Example[] {
  const parts = blocks.filter(({ language }) => language === 'ts');
  const rest = blocks.filter(({ language }) => language !== 'ts');
  if (parts.length === 0) return rest;
  return [{ name: file, language: 'ts', code: parts.map(({ code }) => code).join('\n') }, ...rest];
}

/** The fenced blocks of the docstrings in src. */
export function docstringExamples(): Example[] {
  const files = readdirSync(`${ROOT}/src`, { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.ts'),
  );
  return files.sort().flatMap((file) => {
    const text = readFileSync(`${ROOT}/src/${file}`, 'utf8');
    const comments = [...text.matchAll(/\/\*\*[\s\S]*?\*\//g)].map(([comment]) => comment.replace(/^ ?\* ?/gm, ''));
    return blocksOf(`src/${file}`, comments.join('\n'));
  });
}

/** What a docstring's example may use without saying so: the specification and reading of the README, and a round. */
const GIVEN = {
  spec: `const spec = specification({
    gas: nitrogen,
    precharge: { pressure: gauge(140, 'bar'), temperature: temperature(20, '°C') },
    ambient: standardAtmosphere,
    tolerance: { plusMinus: pressureDifference(2, 'bar'), applies: 'at the measured temperature' },
    separator: 'diaphragm',
    gasVolume: volume(5, 'L'),
    allowable: gauge(210, 'bar'),
    settling: { allowance: pressureDifference(1.5, 'bar'), minutes: 5 },
  });`,
  reading: `const reading: Reading = {
    pressure: gauge(143, 'bar'),
    temperature: temperature(40, '°C'),
    ambient: absolute(1008, 'hPa'),
    gaugeStep: { step: 1, unit: 'bar' },
    oilSide: 'drained, zero verified',
    gasInside: 'nitrogen',
    minutesAtRest: 30,
  };`,
  instruments: `const instruments: Instruments = {
  gauge: { type: 'dial gauge', fullScale: gauge(250, 'bar'), accuracy: { accuracyClass: 1 }, temperature: temperature(30, '°C'), zero: 'without stop pin' },
  thermometer: { type: 'contact thermometer', accuracy: { limit: temperatureDifference(1, 'K') }, step: temperatureDifference(1, 'K'), shellToGas: temperatureDifference(2, 'K') },
  barometer: { limit: pressureDifference(2, 'hPa') },
  printed: { pressure: pressureDifference(1, 'bar'), temperature: temperatureDifference(0, 'K'), ambientLimit: pressureDifference(30, 'hPa') },
  modelErrorCorrelation: 0,
  vessel: { linearExpansion_per_K: 12e-6, limit_per_K: 0, treated: 'as uncertainty' },
  readings: 1,
  on: '2026-03-14',
};`,
  round: `const round: unknown = JSON.parse(readFileSync('${ROOT}/README.md', 'utf8').match(/\`\`\`json\\n([^]*?)\`\`\`/)?.[1] ?? '');`,
};

/**
 * A module of an example: names of the package are imported where a docstring leaves that out, and every expression
 * followed by `// => value` is held against the value.
 */
export function moduleOf({ name, code }: Example): string {
  const isDocstring = name.startsWith('src/');
  const given = isDocstring
    ? Object.entries(GIVEN)
        .filter(([variable]) => new RegExp(`\\b${variable}\\b`).test(code) && !code.includes(`const ${variable}`))
        .map(([, declaration]) => declaration)
    : [];
  const body = [...given, held(code)].join('\n');
  const imports = isDocstring ? importsFor(body) : [];
  return [
    `import { expect } from 'vitest';`,
    ...(isDocstring && body.includes('readFileSync') ? [`import { readFileSync } from 'node:fs';`] : []),
    ...imports,
    `const held = (shown: unknown, wanted: unknown) => { expect(JSON.parse(JSON.stringify(shown))).toEqual(wanted); };`,
    `void held;`,
    body,
  ].join('\n');
}

const TYPES = ['Reading', 'Instruments', 'Step', 'Trace', 'Problem'];

function importsFor(body: string): string[] {
  const declared = (name: string): boolean => new RegExp(`const (\\{[^}]*\\b)?${name}\\b`).test(body);
  const used = (name: string): boolean => new RegExp(`\\b${name}\\b`).test(body) && !declared(name);
  const values = Object.keys(core).filter(used);
  const types = TYPES.filter(used).map((name) => `type ${name}`);
  const fromRecord = Object.keys(record).filter((name) => used(name) && !(name in core));
  const fromWorked = Object.keys(worked).filter((name) => used(name) && !(name in core));
  return [
    `import { ${[...values, ...types].join(', ')} } from 'isochore';`,
    ...(fromRecord.length > 0 ? [`import { ${fromRecord.join(', ')} } from 'isochore/record';`] : []),
    ...(fromWorked.length > 0 ? [`import { ${fromWorked.join(', ')} } from 'isochore/worked';`] : []),
  ];
}

/** Turns `expression; // => value` into a check. */
function held(code: string): string {
  const source = ts.createSourceFile('example.ts', code, ts.ScriptTarget.ES2022, true);
  const edits: { start: number; end: number; text: string }[] = [];
  const visit = (node: ts.Node): void => {
    const comment = /^\s*\/\/ => (.*)/.exec(code.slice(node.end));
    if (ts.isExpressionStatement(node) && comment !== null) {
      const text = `held(${node.expression.getText()}, (${comment[1]}));`;
      edits.push({ start: node.getStart(), end: node.end + comment[0].length, text });
    } else ts.forEachChild(node, visit);
  };
  visit(source);
  return edits.reduceRight((text, { start, end, text: by }) => text.slice(0, start) + by + text.slice(end), code);
}

/** How many checks an example holds. */
export function shownValues({ code }: Example): number {
  return [...code.matchAll(/\/\/ => /g)].length;
}

/** What the compiler says about modules, each given by path and text, under the options of the tests. */
export function complaints(modules: ReadonlyMap<string, string>): string[] {
  const { config } = ts.readConfigFile(`${ROOT}/tests/tsconfig.json`, (path) => readFileSync(path, 'utf8')) as {
    config: unknown;
  };
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, `${ROOT}/tests`);
  const program = ts.createProgram([...modules.keys()], { ...options, noEmit: true, noUnusedLocals: false });
  return ts.getPreEmitDiagnostics(program).map((diagnostic) => {
    const place = diagnostic.file === undefined ? '' : `${diagnostic.file.fileName}: `;
    return place + ts.flattenDiagnosticMessageText(diagnostic.messageText, '\n');
  });
}
