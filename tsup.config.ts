import { readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { defineConfig } from 'tsup';

export default defineConfig({
  // Few files, because a program pays for each that it loads. What the same entries need becomes one chunk, and `core` is an
  // entry so that decimal.js, which only reading text needs and which no bundler can drop (13 kB gzipped), comes to lie in a
  // chunk of its own. `card` is one for the same reason: it needs no zod.
  entry: {
    core: 'src/core.ts',
    card: 'src/worked/card/card.ts',
    index: 'src/index.ts',
    'record/index': 'src/record/index.ts',
    'worked/index': 'src/worked/index.ts',
  },
  format: ['esm', 'cjs'],
  // Shared chunks, in CommonJS too: one identity of every module across the entries.
  splitting: true,
  // Every entry has all of the core, so that it is one chunk and not one for each set of entries that need a part of it. What
  // a program does not use a bundler leaves out: to it no file has side effects. Here those of src have, by package.json, or
  // this import would be left out.
  esbuildOptions: (options) => {
    options.inject = ['src/core.ts'];
  },
  platform: 'neutral',
  target: 'es2022',
  sourcemap: true,
  clean: true,
  dts: {
    entry: { index: 'src/index.ts', 'record/index': 'src/record/index.ts', 'worked/index': 'src/worked/index.ts' },
    // tsup sets an option that TypeScript 6 deprecates.
    compilerOptions: { ignoreDeprecations: '6.0' },
  },
  // The maps of the CommonJS files lead to these files themselves, by the path of the machine that built them: of no use,
  // and two builds would differ.
  onSuccess: async () => {
    for (const path of await readdir('dist', { recursive: true })) {
      if (path.endsWith('.cjs.map')) await rm(`dist/${path}`);
      if (!path.endsWith('.cjs')) continue;
      const text = await readFile(`dist/${path}`, 'utf8');
      await writeFile(`dist/${path}`, text.replace(/\n\/\/# sourceMappingURL=.*\n?$/, '\n'));
    }
  },
});
