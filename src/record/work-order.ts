// The work on one accumulator of a round, as an order that a maintenance system can store and sign.
import { fail, quote } from '../basis/fault.js';
import { has } from '../basis/has.js';
import { notAReport, unknownWord } from '../basis/problem.js';
import { workOrder, type OrderNumbers, type OrderStep, type WorkOrder } from '../procedure/order.js';
import type { WorkWords } from '../procedure/steps.js';
import { readDocument } from './document.js';
import { emptyFindings } from './problems.js';
import { lookedAt } from './reverify.js';

/** A work order as plain JSON data: what `needComplete` of `isochore` takes back. */
export interface StoredOrder {
  readonly basis: WorkOrder['basis'];
  readonly steps: readonly OrderStep[];
  readonly numbers: OrderNumbers;
  readonly cautions: WorkOrder['cautions'];
}

/** An accumulator of a report, by its names. */
export interface Named {
  readonly group: string;
  readonly name: string;
}

/**
 * The sequence of a check on one accumulator of a report, with the numbers of its reading as found in place: for a
 * maintenance system to store with the report, and to sign step by step. It is judged again from the round in the report,
 * with its instruments and rule if that round has them. `needComplete` of `isochore` takes it back as JSON.
 *
 * @param of group and name of an accumulator that was judged
 * @param words of one's own for steps, under their codes
 * @throws {@link Fault} `not a report` for what is none, was altered or has no round; `unknown word` for an accumulator that
 * was not judged in it; `words not sound`
 * @example
 * ```ts
 * const report = reportRound(round, { problems: 'refuse the round' });
 * const order = orderFor(report, { group: 'Exhaust valves', name: 'EV 1' });
 * order.steps.find(({ step }) => step === 'charge')?.state; // => 'to do'
 * order.numbers.stop; // => '154 bar gauge'
 * ```
 */
export function orderFor(report: unknown, of: Named, words?: WorkWords): StoredOrder {
  const looked = lookedAt(report);
  const found = looked.report;
  if (found === undefined || looked.because.includes('digest does not match') || !Object.hasOwn(found, 'input'))
    return fail(
      notAReport,
      'report',
      found === undefined ? quote(report) : 'a report that was altered, or has no round',
    );
  const { judged, deciding } = readDocument({ json: found.input, isWhole: true }, emptyFindings());
  const one = judged.find(({ whose }) => whose.group === of?.group && whose.name === of?.name);
  if (one === undefined)
    return fail(unknownWord, 'of', quote(of), { words: 'group and name of an accumulator that was judged' });
  const { admitted, spec, measuring } = one.asFound;
  const assessed =
    deciding === undefined || measuring === undefined || has(measuring, 'lacking')
      ? undefined
      : { instruments: measuring.instruments, rule: deciding.rule };
  const { basis, steps, numbers, cautions } = workOrder(spec, admitted.reading, assessed, words);
  return { basis, steps, numbers, cautions };
}
