// Browsers: pages served from this machine under a strict content security policy, with the tarball bundled as a consumer
// would, and as the plain modules of dist behind an import map.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { createRequire } from 'node:module';
import { delimiter, extname, join, normalize } from 'node:path';
import { parsed, tools } from './project.mjs';

/** @import { Answer } from './numbers/answer.mjs' */

/**
 * What a page says.
 *
 * @typedef {object} Told
 * @property {readonly string[]} violations of the content security policy
 * @property {string} [error]
 */
/** @typedef {Partial<Answer> & Told} PageAnswer */

// What is used of the bundler and of the driver, which are installed apart from the project's own tools.
/** @typedef {{ readonly build: (options: Readonly<Record<string, unknown>>) => Promise<unknown> }} Bundler */
/**
 * @typedef {object} Tab
 * @property {(url: string) => Promise<unknown>} goto
 * @property {(medium: string) => Promise<void>} emulateMediaType
 * @property {(size: { readonly width: number, readonly height: number }) => Promise<void>} setViewport
 * @property {(script: string) => Promise<string>} evaluate
 * @property {(options: Readonly<Record<string, unknown>>) => Promise<unknown>} pdf
 * @property {() => Promise<void>} close
 */
/** @typedef {{ readonly newPage: () => Promise<Tab>, readonly version: () => Promise<string>, readonly close: () => Promise<void> }} Running */
/** @typedef {{ readonly launch: (options: Readonly<Record<string, unknown>>) => Promise<Running> }} Driver */

/**
 * @typedef {object} Browser
 * @property {'chrome' | 'firefox'} kind as the driver calls it
 * @property {readonly string[]} programs names to look for on the path
 * @property {string} install what brings it
 * @property {readonly string[]} words
 */

/** @type {Readonly<Record<string, Browser>>} */
const BROWSERS = {
  chromium: {
    kind: 'chrome',
    programs: ['chromium', 'chromium-browser'],
    install: 'apt-get install -y --no-install-recommends chromium',
    words: [
      // Without its sandbox, because root has none: it opens pages of this machine alone.
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  },
  firefox: {
    kind: 'firefox',
    programs: ['firefox-esr', 'firefox'],
    install: 'apt-get install -y --no-install-recommends firefox-esr',
    words: [],
  },
};

export const BROWSER_NAMES = Object.keys(BROWSERS);

/** Bare names, as a page author writes them for the packages as installed. */
const IMPORT_MAP = JSON.stringify({
  imports: {
    isochore: '/node_modules/isochore/dist/index.js',
    'isochore/record': '/node_modules/isochore/dist/record/index.js',
    'isochore/worked': '/node_modules/isochore/dist/worked/index.js',
    'decimal.js': '/node_modules/decimal.js/decimal.mjs',
    'zod/mini': '/node_modules/zod/mini/index.js',
  },
});

const PAGES = /** @type {const} */ ({
  '/bundled-core': { script: '/bundled/core.js', map: false, record: false },
  '/bundled-record': { script: '/bundled/record.js', map: false, record: true },
  '/plain-core': { script: '/core.mjs', map: true, record: false },
  '/plain-record': { script: '/record.mjs', map: true, record: true },
  // Must be told of: else the others say nothing.
  '/control': { script: '/control.mjs', map: false, record: false },
});
/** @typedef {keyof typeof PAGES} Page */

export const PAGE_NAMES = /** @type {readonly Page[]} */ (Object.keys(PAGES));
export const CONTROL = '/control';

/** @param {Page} page */
export const hasRecord = (page) => PAGES[page].record;

/** No page may evaluate text. An import map is an inline script, and is allowed by its hash alone. @param {boolean} map */
function policy(map) {
  const hash = createHash('sha256').update(IMPORT_MAP).digest('base64');
  return `default-src 'self'; script-src 'self'${map ? ` 'sha256-${hash}'` : ''}`;
}

/** @param {Page} page */
function html(page) {
  const { script, map } = PAGES[page];
  return [
    '<!doctype html><meta charset="utf-8"><title>isochore</title>',
    '<script src="/watch.js"></script>',
    map ? `<script type="importmap">${IMPORT_MAP}</script>` : '',
    `<script type="module" src="${script}"></script>`,
  ].join('');
}

const TYPES = new Map([
  ['.js', 'text/javascript'],
  ['.mjs', 'text/javascript'],
  ['.json', 'application/json'],
]);

/**
 * Serves the consumer's folder, and hands on what its pages send home.
 *
 * @param {string} folder
 * @param {(page: string, answer: PageAnswer) => void} told
 */
function serverOf(folder, told) {
  return createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    if (request.method === 'POST') {
      /** @type {Buffer[]} */
      const pieces = [];
      request.on('data', (/** @type {Buffer} */ piece) => pieces.push(piece));
      request.on('end', () => {
        response.end();
        const answer = /** @type {PageAnswer} */ (parsed(Buffer.concat(pieces).toString()));
        told(pathname.replace('/answer', ''), answer);
      });
      return;
    }
    const page = PAGE_NAMES.find((name) => name === pathname);
    if (page !== undefined) {
      response.setHeader('content-type', 'text/html');
      response.setHeader('content-security-policy', policy(PAGES[page].map));
      response.end(html(page));
      return;
    }
    const path = join(folder, normalize(pathname));
    const type = TYPES.get(extname(path));
    if (!path.startsWith(folder) || type === undefined || !existsSync(path)) {
      response.statusCode = 404;
      response.end();
      return;
    }
    response.setHeader('content-type', type);
    response.end(readFileSync(path));
  });
}

/** @param {readonly string[]} names */
function onPath(names) {
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  return names.flatMap((name) => folders.map((folder) => join(folder, name))).find((path) => existsSync(path));
}

/** A browser with its program; fails with what brings it if it is not there. @param {string} name */
export function browserOf(name) {
  const browser = BROWSERS[name];
  if (browser === undefined) throw new Error(`no browser ${name}`);
  const program = onPath(browser.programs);
  if (program === undefined) {
    throw new Error(
      `no ${name} on the path: ${browser.install} (after apt-get update), or name other parts with --only=`,
    );
  }
  return { ...browser, program };
}

/** @type {(name: string) => Promise<unknown>} */
async function loaded(name) {
  /** @type {(name: string) => unknown} */
  const load = createRequire(join(await tools('browsers'), 'none.js'));
  return load(name);
}

/** A browser that is running. @param {string} name */
export async function launched(name) {
  const { kind, words, program } = browserOf(name);
  const puppeteer = /** @type {Driver} */ (await loaded('puppeteer-core'));
  // Firefox is driven by WebDriver BiDi. The driver makes a new profile for each start, and removes it.
  return puppeteer.launch({ browser: kind, executablePath: program, headless: true, args: words });
}

/** The scripts of the pages, bundled as a consumer's bundler does. @param {Bundler} esbuild @param {string} folder */
async function bundle(esbuild, folder) {
  mkdirSync(join(folder, 'bundled'), { recursive: true });
  await esbuild.build({
    entryPoints: [join(folder, 'core.mjs'), join(folder, 'record.mjs')],
    outdir: join(folder, 'bundled'),
    bundle: true,
    format: 'esm',
    minify: true,
    target: 'es2022',
    logLevel: 'error',
  });
}

/**
 * @param {string} name
 * @param {string} folder the consumer's
 * @returns {Promise<{ readonly version: string, readonly pages: ReadonlyMap<string, PageAnswer> }>}
 */
export async function pagesOf(name, folder) {
  await bundle(/** @type {Bundler} */ (await loaded('esbuild')), folder);

  /** @type {Map<string, PageAnswer>} */
  const pages = new Map();
  /** @type {Map<string, () => void>} */
  const waiting = new Map();
  const server = serverOf(folder, (page, answer) => {
    pages.set(page, answer);
    waiting.get(page)?.();
  });
  await new Promise((listening) => server.listen(0, '127.0.0.1', () => listening(undefined)));
  const address = server.address();
  const port = typeof address === 'object' ? address?.port : undefined;

  const running = await launched(name);
  try {
    for (const page of PAGE_NAMES) {
      const tab = await running.newPage();
      const answered = new Promise((resolve, reject) => {
        waiting.set(page, () => resolve(undefined));
        setTimeout(() => reject(new Error(`${name}: nothing from ${page} within a minute`)), 60_000).unref();
      });
      await tab.goto(`http://127.0.0.1:${port}${page}`);
      await answered;
      await tab.close();
    }
    return { version: await running.version(), pages };
  } finally {
    await running.close();
    server.close();
  }
}
