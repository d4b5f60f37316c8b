// The working of one reading.
import type { Step } from '../../basis/relation.js';
import { check } from '../../charge/check.js';
import type { Checked } from '../../record/accumulator.js';
import type { Block } from '../document/block.js';
import { aboutIn, localised, sourceIn } from '../languages/format.js';
import type { Language } from '../languages/language.js';

/** Every step of the check of a reading, in order: whose value, the formula, the result, the source. */
export function workingOf({ spec, reading }: Checked, language: Language): readonly Block[] {
  const steps: Step[] = [];
  check(spec, reading, (step) => steps.push(step));
  return [
    {
      kind: 'list',
      marks: 'numbered',
      items: steps.map(({ about, relation, result }) => [
        `${aboutIn(about, language)}: ${relation.gives} = ${relation.formula} = `,
        `${localised(String(result), language)} ${relation.unit} (${sourceIn(relation.source, language)})`,
      ]),
    },
  ];
}
