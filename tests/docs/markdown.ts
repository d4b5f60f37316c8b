// The documents of the project, and what stands in them.
import { readdirSync, readFileSync } from 'node:fs';
import GithubSlugger from 'github-slugger';
import type { Nodes, Root } from 'mdast';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { toString } from 'mdast-util-to-string';
import { ROOT } from './examples.js';

export interface Document {
  /** Path from the root of the project. */
  readonly path: string;
  readonly text: string;
  readonly tree: Root;
}

export function documentAt(path: string): Document {
  const text = readFileSync(`${ROOT}/${path}`, 'utf8');
  return { path, text, tree: fromMarkdown(text) };
}

/** Paths of the guides, and of the other pages in docs. */
export function pagesInDocs(): string[] {
  return readdirSync(`${ROOT}/docs`)
    .filter((name) => name.endsWith('.md'))
    .map((name) => `docs/${name}`);
}

/** Every node of a tree, the root first. */
export function nodesOf(node: Nodes): Nodes[] {
  return [node, ...('children' in node ? node.children.flatMap(nodesOf) : [])];
}

/** The anchors of a document's headings, as the places that show it make them. */
export function anchorsOf({ tree }: Document): Set<string> {
  const slugger = new GithubSlugger();
  const headings = nodesOf(tree).filter((node) => node.type === 'heading');
  return new Set(headings.map((heading) => slugger.slug(toString(heading))));
}

/** Where a document's links and pictures lead. */
export function targetsOf({ tree }: Document): string[] {
  return nodesOf(tree).flatMap((node) =>
    node.type === 'link' || node.type === 'image' || node.type === 'definition' ? [node.url] : [],
  );
}

/** A document without its code. */
export function proseOf({ tree }: Document): string {
  return nodesOf(tree)
    .flatMap((node) => (node.type === 'text' ? [node.value] : []))
    .join('\n');
}

/** The cells of every table, row by row. Tables are taken from the text, as plain Markdown has none. */
export function tableRowsOf({ text }: Document): string[][] {
  return text
    .split('\n')
    .filter((line) => line.startsWith('|'))
    .map((line) =>
      line
        .slice(1, -1)
        .split('|')
        .map((cell) => cell.trim()),
    );
}
