import * as core from 'isochore';
import { answerOf } from './answer.mjs';

finish(answerOf(core));
