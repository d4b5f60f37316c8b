// Numbers about what can hurt, as the report has them, rounded to the side that does not make them smaller.
import { write } from '../../quantity/step.js';
import { temperatureDifference } from '../../quantity/temperature.js';
import type { SafetyJson } from '../../record/safety-shape.js';
import type { Block, Line } from '../document/block.js';
import { given } from '../document/given.js';
import { lineOf } from '../document/line.js';
import { differenceText, stepAt, writtenGauge, type About } from './about.js';

export function safety(about: About): readonly Block[] {
  const { safety } = about.report;
  if (safety === undefined) return [];
  const words = about.language.document.safety;
  const items = [
    ...safety.specifications.flatMap((one) => ofSpecification(one, about)),
    ...safety.releases.map((one) => released(one, about)),
  ];
  return [
    { kind: 'heading', level: 1, text: words.heading },
    { kind: 'paragraph', text: [{ kind: 'strong', text: words.clearNothing }] },
    ...(items.length === 0 ? [] : [{ kind: 'list', marks: 'plain', items } as const]),
  ];
}

function ofSpecification(
  { specification, hot, energy, ratings, leakTest, purge }: SafetyJson['specifications'][number],
  { language, say }: About,
): readonly Line[] {
  const words = language.document.safety;
  const whose = { specification: [given(specification)] };
  const most = (one: Parameters<typeof writtenGauge>[0]): string => say(writtenGauge(one, stepAt(one.unit, 0.1), 'up'));
  const least = (one: Parameters<typeof writtenGauge>[0]): string =>
    say(writtenGauge(one, stepAt(one.unit, 0.1), 'down'));
  const lines: Line[] = [];
  if (hot !== undefined)
    lines.push(
      lineOf(words.hot[hot.outcome], { ...whose, pressure: most(hot.pressure), allowable: least(hot.allowable) }),
    );
  if (energy !== undefined) {
    const { charged, inService, tnt } = energy;
    const values = { ...whose, charged: kilojoules(charged), tnt: `${Math.ceil(1000 * tnt.value)} g` };
    lines.push(
      inService === undefined
        ? lineOf(words.energy, values)
        : lineOf(words.energyInService, { ...values, service: kilojoules(inService) }),
    );
  }
  for (const { code, part, limit, pressure } of ratings?.problems ?? [])
    lines.push(
      lineOf(words.ratings[code], {
        ...whose,
        part: words.parts[part],
        limit: least(limit),
        pressure: most(pressure),
      }),
    );
  if (ratings?.outcome === 'nothing found') lines.push(lineOf(words.nothingFound, whose));
  if (leakTest !== undefined) {
    const { bubbles, gauge } = leakTest;
    const minutes = bubbles.minutesApart;
    lines.push(
      lineOf(minutes === 'none' ? words.leak.noBubbles : words.leak.bubbles, {
        ...whose,
        minutes: minutes === 'none' ? '' : say(String(Number(minutes.toPrecision(2)))),
        against: words.against[bubbles.against],
      }),
      lineOf(words.leak.gauge, {
        ...whose,
        fall: say(differenceText(gauge.fall, stepAt(gauge.fall.unit, 0.001), 'down')),
        cooling: say(kelvins(gauge.sameAsCoolingBy)),
        against: words.against[gauge.against],
      }),
    );
  }
  if (purge !== undefined) {
    const { outcome, fillings, left, gas } = purge;
    const values = {
      ...whose,
      fillings: String(fillings),
      percent: say(`${(Math.ceil(1e4 * (left.at(-1) ?? 0)) / 100).toFixed(2)} %`),
      gas: say(gas.rounded.mass),
    };
    lines.push(lineOf(outcome === 'reached' ? words.purged : words.notPurged[outcome], values));
  }
  return lines;
}

type LeakTestJson = NonNullable<SafetyJson['specifications'][number]['leakTest']>;

function kelvins({ value, unit }: LeakTestJson['gauge']['sameAsCoolingBy']): string {
  return write(temperatureDifference(Number(value), unit), { step: 0.001, unit, toward: 'down' }).replace(
    / difference$/,
    '',
  );
}

function kilojoules({ value }: { readonly value: number }): string {
  return `${Math.ceil(value / 1000)} kJ`;
}

function released({ of, name, outcome, lowest }: SafetyJson['releases'][number], { language, say }: About): Line {
  const words = language.document.safety;
  return lineOf(words.release[of], {
    name: [given(name)],
    // Never more oxygen than there is.
    percent: say(`${(Math.floor(1000 * lowest.fraction) / 10).toFixed(1)} %`),
    by: words.by[lowest.by],
    ventilation: words.ventilation[lowest.ventilation],
    outcome: words.outcomes[outcome],
  });
}
