// Documents as a browser lays them out: nothing runs off a screen of any width or off the paper, and a card is one page.
import { createHash } from 'node:crypto';
import { copyFileSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { launched } from './browsers.mjs';
import { ofProject, parsed, run } from './project.mjs';

/** A telephone, a tablet, the first width at which tables no longer scroll, a desk. */
const SCREENS = [360, 800, 900, 1200];

/** A4 less the margins of the style sheet, 186 mm, in pixels of 1/96 inch. */
const PAPER = 703;

/**
 * Runs in the page. What runs off the page or out of its cell is named by its element; and so is a word of ours that is broken
 * in a cell, where only other people's text may be: that stands in `bdi`.
 */
const OFF = `JSON.stringify((() => {
  const root = document.documentElement;
  const problems = [];
  const name = (element) => element.localName + ' "' + element.textContent.trim().slice(0, 40) + '"';
  if (document.styleSheets.length !== 1) problems.push('its policy forbids its style sheet');
  if (root.scrollWidth > root.clientWidth) problems.push('the page is ' + root.scrollWidth + ' wide');
  const off = ({ left, right }) => left < -1 || right > root.clientWidth + 1;
  for (const element of document.querySelectorAll('body *')) {
    const table = element.closest('table');
    const scrolls = table !== null && getComputedStyle(table).overflowX === 'auto';
    if (!(scrolls && element !== table) && off(element.getBoundingClientRect())) problems.push('off the page: ' + name(element));
  }
  for (const cell of document.querySelectorAll('th, td')) {
    if (cell.scrollWidth > cell.clientWidth + 1) problems.push('out of its cell: ' + name(cell));
    const texts = document.createTreeWalker(cell, NodeFilter.SHOW_TEXT);
    for (let text = texts.nextNode(); text !== null; text = texts.nextNode()) {
      if (text.parentElement.closest('bdi') !== null) continue;
      for (const { index, 0: word } of text.data.matchAll(/[\\p{L}\\p{M}]+/gu)) {
        const range = document.createRange();
        range.setStart(text, index);
        range.setEnd(text, index + word.length);
        const lines = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
        if (lines.size > 1) problems.push('a broken word: ' + word);
      }
    }
  }
  return problems;
})())`;

/** How many pages a document is on paper: the browser refuses to print a page that there is not. @param {import('./browsers.mjs').Tab} tab */
async function pagesOnPaper(tab) {
  for (let page = 1; ; page += 1) {
    try {
      await tab.pdf({ preferCSSPageSize: true, pageRanges: String(page) });
    } catch (error) {
      if (page > 1 && String(error).includes('Page range exceeds page count')) return page - 1;
      throw error;
    }
  }
}

/** Puts a document under the strictest policy that docs/embedding.md says it keeps. @param {string} file */
function keepToPolicy(file) {
  const text = readFileSync(file, 'utf8');
  const style = /<style>([^]*?)<\/style>/.exec(text)?.[1] ?? '';
  const policy = `default-src 'none'; style-src 'sha256-${createHash('sha256').update(style).digest('base64')}'`;
  const meta = `<head>\n<meta http-equiv="Content-Security-Policy" content="${policy}">`;
  writeFileSync(
    file,
    text.replace('<head>', () => meta),
  );
}

/**
 * Writes the documents with the packed release and lays them out. Gives what is wrong with them, and how many there are.
 *
 * @param {string} folder the consumer's
 */
export async function laidOut(folder) {
  copyFileSync(ofProject('examples/documents.mjs'), join(folder, 'documents.mjs'));
  await run(process.execPath, ['documents-to-lay-out.mjs', 'pages'], folder);
  for (const language of ['en', 'de']) {
    await run(process.execPath, ['documents.mjs', join('pages', `demo-${language}`), `--language=${language}`], folder);
  }
  const pages = join(folder, 'pages');
  const files = readdirSync(pages, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.html'));
  for (const name of files) keepToPolicy(join(pages, name));
  const cards = files.filter((name) => name.includes('card'));
  if (cards.length < 4 || files.length < 20) throw new Error(`${files.length} documents, ${cards.length} cards`);

  /** @type {string[]} */
  const problems = [];
  const browser = await launched('chromium');
  try {
    for (const file of files) {
      const tab = await browser.newPage();
      await tab.goto(pathToFileURL(join(pages, file)).href);
      const layouts = [...SCREENS.map((width) => ({ width, medium: 'screen' })), { width: PAPER, medium: 'print' }];
      for (const { width, medium } of layouts) {
        await tab.emulateMediaType(medium);
        await tab.setViewport({ width, height: 1000 });
        const found = /** @type {string[]} */ (parsed(await tab.evaluate(OFF)));
        const [first] = found;
        if (first !== undefined) problems.push(`${file}, ${medium}, ${width} wide: ${first}; ${found.length} in all`);
      }
      const count = cards.includes(file) ? await pagesOnPaper(tab) : 1;
      if (count !== 1) problems.push(`${file}: ${count} pages`);
      await tab.close();
    }
    return { problems, count: files.length, cards: cards.length, version: await browser.version() };
  } finally {
    await browser.close();
  }
}
