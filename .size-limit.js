/**
 * Fails where something of a package is kept that the import has no use for.
 *
 * @param {readonly string[]} packages
 * @returns {import('esbuild').Plugin}
 */
const without = (packages) => ({
  name: 'without',
  setup: (build) => {
    build.onEnd(({ metafile }) => {
      const kept = Object.values(metafile?.outputs ?? {}).flatMap(({ inputs }) =>
        Object.entries(inputs).flatMap(([path, { bytesInOutput }]) => (bytesInOutput > 0 ? [path] : [])),
      );
      if (kept.length === 0) return { errors: [{ text: 'nothing to look at' }] };
      const found = packages.filter((name) => kept.some((path) => path.includes(`node_modules/${name}/`)));
      return { errors: found.map((name) => ({ text: `${name} is kept` })) };
    });
  },
});

/**
 * esbuild warns of imports that it leaves out, except under node_modules, where consumers have this package.
 *
 * @param {readonly string[]} packages of which nothing may be kept
 */
function asDependency(packages) {
  /** @template {object} T @param {T} [config] */
  const changed = (config) => {
    /** @type {import('esbuild').BuildOptions} */
    const given = config ?? {};
    const plugins = [...(given.plugins ?? []), without(packages)];
    const options = { ...given, logOverride: { 'ignored-bare-import': 'silent' }, metafile: true, plugins };
    return /** @type {T} */ (/** @type {unknown} */ (options));
  };
  return changed;
}

const NEITHER = ['zod', 'decimal.js'];
const SPECIFIED = 'specification, nitrogen, gauge, temperature, pressureDifference, volume, standardAtmosphere';

/**
 * What a consumer's bundler keeps, gzipped. The first two cannot run, as nothing makes what they take: they are what the
 * calls cost a program that has the rest already. The next two are whole programs, without room for decimal.js (13 kB).
 */
const kept = [
  {
    name: 'target and band',
    path: 'dist/index.js',
    import: '{ specification, target, band }',
    without: NEITHER,
    limit: '11.5 kB',
  },
  {
    name: 'judge a reading',
    path: 'dist/index.js',
    import: '{ specification, judge }',
    without: NEITHER,
    limit: '14.1 kB',
  },
  {
    name: 'target and band, with gas and quantities',
    path: 'dist/index.js',
    import: `{ target, band, ${SPECIFIED} }`,
    without: NEITHER,
    limit: '16.5 kB',
  },
  {
    name: 'judge a reading, with gas and quantities',
    path: 'dist/index.js',
    import: `{ judge, ${SPECIFIED} }`,
    without: NEITHER,
    limit: '19 kB',
  },
  { name: 'all of isochore', path: 'dist/index.js', import: '*', without: ['zod'], limit: '97 kB' },
  { name: 'all of isochore/record, with zod', path: 'dist/record/index.js', import: '*', limit: '124.6 kB' },
  {
    name: 'an adjustment card in English',
    path: 'dist/worked/index.js',
    import: '{ card, documentHtml, english }',
    without: NEITHER,
    limit: '36 kB',
  },
  {
    name: 'all of isochore/worked, with the record, zod and both languages',
    path: 'dist/worked/index.js',
    import: '*',
    limit: '185 kB',
  },
];

/** @type {import('size-limit').SizeLimitConfig} */
export default kept.map(({ without: packages = [], ...one }) => ({
  ...one,
  gzip: true,
  modifyEsbuildConfig: asDependency(packages),
}));
