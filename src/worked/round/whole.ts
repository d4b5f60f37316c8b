// The round as a whole: what one gauge and thermometer did to all their readings.
import { has } from '../../basis/has.js';
import { finer, write } from '../../quantity/step.js';
import { temperatureDifference } from '../../quantity/temperature.js';
import type { TogetherJson } from '../../record/certainty-shape.js';
import type { Block, Line } from '../document/block.js';
import { given } from '../document/given.js';
import { joined, lineOf } from '../document/line.js';
import { differenceText, namesOf, type About } from './about.js';

export function whole(about: About): readonly Block[] {
  const { together = [] } = about.report;
  if (together.length === 0) return [];
  return [
    { kind: 'heading', level: 1, text: about.language.document.round.togetherHeading },
    ...together.flatMap((one) => ofOneGauge(one, about)),
  ];
}

function ofOneGauge(one: TogetherJson, about: About): readonly Block[] {
  const words = about.language.document.round;
  const names = [one.gauge, one.thermometer].flatMap((name) => (name === undefined ? [] : [[given(name)]]));
  const counted = {
    gauge: joined(names, ', '),
    counting: String(one.readings - one.leftOut),
    readings: String(one.readings),
  };
  if (one.outcome === 'too few readings')
    return [{ kind: 'paragraph', text: lineOf(words.tooFew, { ...counted, needed: String(one.needed) }) }];
  if (one.outcome === 'no common shift') return [{ kind: 'paragraph', text: lineOf(words.noShift, counted) }];
  const { difference, temperature, ratio, explains, instruments } = one.shift;
  // To a tenth of what is not known of it.
  const { value, standard } = difference;
  const size = Math.abs(Number(standard.value)) || Math.abs(Number(value.value)) || 1;
  const degrees = temperatureDifference(Number(temperature.value.value), temperature.value.unit);
  const { label, text } = {
    label: about.language.severities.caution,
    text: lineOf(words.shift, {
      ...counted,
      difference: about.say(differenceText(value, finer({ step: size, unit: value.unit }))),
      ratio: about.say(ratio.value.toFixed(3)),
      temperature: about.say(write(degrees, { step: 0.1, unit: temperature.value.unit }).replace(/ difference$/, '')),
      explains: String(explains),
      instruments: words.instrumentsShift[instruments],
    }),
  };
  const items: Line[] = [
    words.compare,
    ...one.candidates.map(({ slip }) => lineOf(words.perhaps, { slip: slipLine(slip, about) })),
    ...(one.notExplained.length === 0 ? [] : [lineOf(words.byThemselves, { names: namesOf(one.notExplained, about) })]),
  ];
  return [
    { kind: 'notice', severity: 'caution', label, text },
    { kind: 'list', marks: 'plain', items },
  ];
}

type Slip = Extract<TogetherJson, { readonly candidates: unknown }>['candidates'][number]['slip'];

function slipLine(slip: Slip, { language }: About): Line {
  const { slipKinds } = language.document.round;
  return has(slip, 'stated')
    ? lineOf(slipKinds['stated for'], { stated: slip.stated, readAs: slip.readAs })
    : slipKinds[slip.code];
}
