/**
 * esbuild warns of imports that it leaves out, except under node_modules, where consumers have this package.
 *
 * @template {object} T
 * @param {T} [config]
 */
const asDependency = (config) => /** @type {T} */ ({ ...config, logOverride: { 'ignored-bare-import': 'silent' } });

/** What a consumer's bundler keeps, gzipped: the first has no room for decimal.js (13 kB). */
const kept = [
  { name: 'target and band', path: 'dist/index.js', import: '{ specification, target, band }', limit: '11.5 kB' },
  { name: 'judge a reading', path: 'dist/index.js', import: '{ specification, judge }', limit: '14 kB' },
  { name: 'all of isochore', path: 'dist/index.js', import: '*', limit: '97 kB' },
  { name: 'all of isochore/record, with zod', path: 'dist/record/index.js', import: '*', limit: '124 kB' },
  {
    name: 'an adjustment card in English',
    path: 'dist/worked/index.js',
    import: '{ card, documentHtml, english }',
    limit: '36 kB',
  },
  {
    name: 'all of isochore/worked, with the record, zod and both languages',
    path: 'dist/worked/index.js',
    import: '*',
    limit: '184 kB',
  },
];

/** @type {import('size-limit').SizeLimitConfig} */
export default kept.map((one) => ({ ...one, gzip: true, modifyEsbuildConfig: asDependency }));
