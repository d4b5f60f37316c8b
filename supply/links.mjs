// Every relative link of the pages in the package leads to a file in the package: who has installed it has nothing else.
import { fromMarkdown } from 'mdast-util-from-markdown';
import { posix } from 'node:path';

/** @import { Nodes } from 'mdast' */

/** @param {ReadonlyMap<string, Buffer>} files of the package, by their paths @returns {string[]} */
export function linkProblems(files) {
  const pages = [...files].filter(([path]) => path.endsWith('.md'));
  if (!pages.some(([path]) => path.startsWith('docs/'))) return ['no page of docs is in the package'];
  return pages.flatMap(([path, bytes]) =>
    targetsOf(fromMarkdown(bytes.toString('utf8')))
      .filter((target) => !/^([a-z]+:|#)/.test(target))
      .map((target) => posix.join(posix.dirname(path), target.replace(/#.*$/, '')))
      .filter((to) => !files.has(to))
      .map((to) => `${path} links to ${to}, which is not in the package`),
  );
}

/** @param {Nodes} node @returns {string[]} */
function targetsOf(node) {
  const own = 'url' in node ? [node.url] : [];
  return 'children' in node ? [...own, ...node.children.flatMap(targetsOf)] : own;
}
