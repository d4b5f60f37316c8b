// Run by a server's engine: the answer of the ES modules, as JSON.
import * as core from 'isochore';
import * as record from 'isochore/record';
import * as worked from 'isochore/worked';
import { readFileSync } from 'node:fs';
import { argv } from 'node:process';
import { answerOf } from './answer.mjs';

const [round, elsewhere] = argv.slice(2).map((path) => readFileSync(path, 'utf8'));
console.log(JSON.stringify(answerOf(core, { record, worked }, round, elsewhere)));
