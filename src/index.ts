export * from './core.js';
export { read } from './quantity/text.js';
