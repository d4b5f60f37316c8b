// Run by a server's engine: the answer of the CommonJS modules, as JSON.
const core = require('isochore');
const record = require('isochore/record');
const worked = require('isochore/worked');
const { readFileSync } = require('node:fs');

const [round, elsewhere] = process.argv.slice(2).map((path) => readFileSync(path, 'utf8'));
import('./answer.mjs').then(({ answerOf }) => {
  console.log(JSON.stringify(answerOf(core, { record, worked }, round, elsewhere)));
});
