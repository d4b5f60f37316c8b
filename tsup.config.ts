import { defineConfig } from 'tsup';

export default defineConfig({
  // Every source file is an entry, so that a bundler can leave out what is not used: an unused import of decimal.js
  // in one single bundle would stay in (13 kB gzipped), as that package has top-level code.
  entry: ['src/**/*.ts'],
  format: ['esm', 'cjs'],
  // Shared chunks, in CommonJS too: one identity of every module across the entries.
  splitting: true,
  platform: 'neutral',
  target: 'es2022',
  sourcemap: true,
  clean: true,
  dts: {
    entry: { index: 'src/index.ts', 'record/index': 'src/record/index.ts' },
    // tsup sets an option that TypeScript 6 deprecates.
    compilerOptions: { ignoreDeprecations: '6.0' },
  },
});
