import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** What the compiler says of a program: its words with their code, in the order of the text. */
export interface Refusal {
  readonly text: string;
  /** The line in which it stands, counted from 1. */
  readonly line: number;
}

// As strict as a program under "strict" is, and no stricter. The library is taken from its sources, so that the tests need
// no build. With dist in the paths below, every program is refused as well, and in the same words but for two things: the
// members of the longest types, those of the record, stand in another order and so are cut elsewhere; and of two pressures
// under "+" the compiler gives the name by which the files of dist hand the type on, 'G' for 'GaugePressure'.
const OPTIONS: ts.CompilerOptions = {
  strict: true,
  target: ts.ScriptTarget.ES2022,
  lib: ['lib.es2022.d.ts'],
  types: [],
  module: ts.ModuleKind.NodeNext,
  moduleResolution: ts.ModuleResolutionKind.NodeNext,
  paths: {
    isochore: [`${ROOT}src/index.ts`],
    'isochore/record': [`${ROOT}src/record/index.ts`],
    'isochore/worked': [`${ROOT}src/worked/index.ts`],
  },
  noEmit: true,
  skipLibCheck: true,
  // The members of a union then stand in the same order whatever else was compiled before.
  stableTypeOrdering: true,
};

/** Compiles programs together, each as a module of its own that exists in memory alone. */
export function refusals(programs: readonly string[]): Refusal[][] {
  const texts = new Map(programs.map((program, i) => [`${ROOT}tests/types/program-${i}.ts`, program]));
  const disk = ts.createCompilerHost(OPTIONS);
  const host = ts.createCompilerHost(OPTIONS);
  host.fileExists = (path) => texts.has(path) || disk.fileExists(path);
  host.readFile = (path) => texts.get(path) ?? disk.readFile(path);
  const paths = [...texts.keys()];
  const program = ts.createProgram(paths, OPTIONS, host);
  const global = [...program.getGlobalDiagnostics(), ...program.getOptionsDiagnostics()];
  if (global.length > 0) throw new Error(global.map(textOf).join('\n'));
  return paths.map((path) => {
    const source = program.getSourceFile(path);
    if (source === undefined) throw new Error(`${path} was not compiled`);
    return [...program.getSyntacticDiagnostics(source), ...program.getSemanticDiagnostics(source)].map((found) => ({
      text: textOf(found),
      line: source.getLineAndCharacterOfPosition(found.start ?? 0).line + 1,
    }));
  });
}

/** Where a type was declared, which the compiler says of two of one name: a path of this machine. */
const QUALIFIED = /import\("[^"]*"(, \{[^()]*\})?\)\./g;

/** A diagnostic as a console shows it, without its place: that of a declaration would change with every edit of it. */
function textOf(found: ts.Diagnostic): string {
  const words = ts.flattenDiagnosticMessageText(found.messageText, '\n');
  const notes = (found.relatedInformation ?? []).map(
    ({ messageText }) => `  note: ${ts.flattenDiagnosticMessageText(messageText, '\n  ')}`,
  );
  return [`TS${found.code}: ${words}`, ...notes].join('\n').replaceAll(QUALIFIED, '');
}
