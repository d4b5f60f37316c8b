// Numbers about what can hurt, as the report has them, rounded to the side that does not make them smaller.
import type { SafetyJson } from '../../record/safety-shape.js';
import type { Block, Line } from '../document/block.js';
import { given } from '../document/given.js';
import { lineOf } from '../document/line.js';
import type { SafetyWords } from '../languages/charging-words.js';
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
  if (leakTest !== undefined) lines.push(...leaks(leakTest, whose, { words, say }));
  if (purge !== undefined) {
    const { fillings, left, gas } = purge;
    const values = {
      fillings: String(fillings),
      percent: say(percentUp(left.at(-1) ?? 1)),
      gas: say(gas.rounded.mass),
    };
    lines.push(lineOf(words.purge[purge.outcome], { ...whose, ...values }));
  }
  return lines;
}

type OfSpecification = SafetyJson['specifications'][number];

/** What a leak test shows, by bubbles and by the gauge. */
function leaks(
  { lossPerYear, bubbles, gauge }: NonNullable<OfSpecification['leakTest']>,
  whose: Readonly<Record<'specification', Line>>,
  { words, say }: { readonly words: SafetyWords; readonly say: About['say'] },
): readonly Line[] {
  const { minutesApart } = bubbles;
  const apart =
    minutesApart === 'none' ? words.noBubble : lineOf(words.apart, { minutes: say(twoDigits(minutesApart)) });
  const fall = say(differenceText(gauge.fall, { step: gauge.fall.unit === 'MPa' ? 1e-4 : 1e-3 }));
  const by = { loss: say(twoDigits(lossPerYear.value)), apart, against: words.shown[bubbles.against] };
  return [
    lineOf(words.bubbles, { ...whose, ...by, least: say(twoDigits(bubbles.smallestPerYear.value)) }),
    lineOf(words.gauge, {
      ...whose,
      fall,
      against: words.shown[gauge.against],
      least: say(twoDigits(gauge.smallestPerYear.value)),
    }),
  ];
}

/** Two significant digits, without an exponent. */
function twoDigits(x: number): string {
  return String(Number(x.toPrecision(2)));
}

/** A fraction in per cent, rounded up. */
function percentUp(fraction: number): string {
  return `${(Math.ceil(10_000 * fraction) / 100).toFixed(2)} %`;
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
