// The types of the tarball as consumers of TypeScript see them: each compiler, each way to resolve modules, nothing skipped.
import { mkdirSync, copyFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { run, tools } from './project.mjs';

/**
 * Every compiler here passes, with `strict` and without `skipLibCheck`. The first is the oldest that does, for all
 * entries: before 5.4 there is no NoInfer, which the types of zod have.
 */
export const COMPILERS = ['5.4', '5.5', '5.9', '6.0', '7.0'];

/** The oldest, and the newest of each line that is in use. */
const QUICK = ['5.4', '6.0'];

/**
 * The types of zod name URL: of the DOM, or of Node's types. The core has no such need.
 *
 * @type {Readonly<Record<string, readonly string[]>>}
 */
const LIBS = { core: ['es2022'], record: ['es2022', 'dom'], worked: ['es2022', 'dom'] };

/** `.mts` is an ES module and `.cts` is CommonJS under node16 and nodenext; a bundler's own project has `.ts`. */
const WAYS = [
  { module: 'node16', moduleResolution: 'node16', extension: 'mts' },
  { module: 'node16', moduleResolution: 'node16', extension: 'cts' },
  { module: 'nodenext', moduleResolution: 'nodenext', extension: 'mts' },
  { module: 'nodenext', moduleResolution: 'nodenext', extension: 'cts' },
  { module: 'esnext', moduleResolution: 'bundler', extension: 'ts' },
];

/**
 * Compiles the consumers. Gives what failed, in the compiler's words, and how many were compiled.
 *
 * @param {string} folder the consumer's
 * @param {boolean} quick
 */
export async function typesIn(folder, quick) {
  const packages = await tools('types');
  const work = (quick ? QUICK : COMPILERS).flatMap((compiler) =>
    WAYS.flatMap((way) => Object.keys(LIBS).map((entry) => ({ compiler, entry, ...way }))),
  );
  /** @type {string[]} */
  const problems = [];
  const queue = [...work];
  const worker = async () => {
    for (let one = queue.shift(); one !== undefined; one = queue.shift()) {
      const { compiler, entry, module, moduleResolution, extension } = one;
      const name = `${compiler}-${entry}-${moduleResolution}-${extension}`;
      const project = join(folder, 'compiled', name);
      mkdirSync(project, { recursive: true });
      const file = `consumer.${extension}`;
      copyFileSync(join(folder, `${entry}.ts`), join(project, file));
      const compilerOptions = {
        target: 'es2022',
        lib: LIBS[entry],
        types: [],
        module,
        moduleResolution,
        strict: true,
        skipLibCheck: false,
        noEmit: true,
      };
      writeFileSync(join(project, 'tsconfig.json'), JSON.stringify({ compilerOptions, files: [file] }));
      const tsc = join(packages, `typescript-${compiler}`, 'bin', 'tsc');
      try {
        await run(process.execPath, [tsc, '--project', '.'], project);
      } catch (error) {
        problems.push(`TypeScript ${compiler}, ${entry}, ${moduleResolution} .${extension}: ${String(error)}`);
      }
    }
  };
  // Two at a time, one to a core of a small machine.
  await Promise.all([worker(), worker()]);
  return { problems, count: work.length };
}
