// What a card holds for: all that the specification states, and the limits of the model.
import { has } from '../../basis/has.js';
import { finer, write, type Division } from '../../quantity/step.js';
import type { PressureUnit, TemperatureUnit, VolumeUnit } from '../../quantity/unit.js';
import { absoluteOf, temperatureOf, type PressureDifference } from '../../quantity/kind.js';
import type { Specification } from '../../target/specification.js';
import type { Line } from '../document/block.js';
import { joined, lineOf, sayIn, type Say } from '../document/line.js';
import type { Language } from '../languages/language.js';

interface Steps {
  readonly pressure: Division<PressureUnit>;
  readonly temperature: Division<TemperatureUnit>;
  readonly volume: Division<VolumeUnit>;
}

export function validity(
  spec: Specification,
  gaugeStep: Division<PressureUnit>,
  temperature: Division<TemperatureUnit>,
  volume: Division<VolumeUnit>,
  language: Language,
): readonly Line[] {
  const words = language.document.card;
  const say = sayIn(language);
  const steps: Steps = { pressure: finer(gaugeStep), temperature, volume };
  const { gas, separator, gasVolume, allowable, settling, ambient } = spec;
  const [coldest, hottest] = gas.validity.temperature_K;
  const degrees = (kelvins: number, toward: 'up' | 'down'): string =>
    say(write(temperatureOf(kelvins), { ...temperature, toward }));
  return [
    precharge(spec, steps, language, say),
    lineOf(words.statedAmbient, { ambient: say(write(ambient, { step: 0.01, unit: 'hPa' })) }),
    allowed(spec, steps, language, say),
    lineOf(words.separator, { separator: language.document.separators[separator] }),
    lineOf(words.volume, { volume: say(write(gasVolume, volume)) }),
    lineOf(words.allowable, { allowable: say(write(allowable, { ...steps.pressure, toward: 'down' })) }),
    lineOf(words.settling, {
      allowance: bare(settling.allowance, steps, say),
      minutes: say(String(settling.minutes)),
    }),
    words.rounding,
    words.otherAmbient,
    lineOf(words.model, {
      model: gas.id,
      from: degrees(coldest, 'up'),
      to: degrees(hottest, 'down'),
      pressure: say(write(absoluteOf(gas.validity.pressure_Pa[1]), { step: 0.1, unit: 'MPa', toward: 'down' })),
    }),
    ...disagreements(spec, steps, language, say),
  ];
}

function precharge({ precharge }: Specification, steps: Steps, { document }: Language, say: Say): Line {
  const { point, byTable } = document.card;
  const degrees = (one: Parameters<typeof write>[0] & { readonly kind: 'temperature' }): string =>
    say(write(one, finer(steps.temperature)));
  if (!has(precharge, 'rows'))
    return lineOf(point, {
      pressure: say(write(precharge.pressure, steps.pressure)),
      temperature: degrees(precharge.temperature),
    });
  const { rows, referenceTemperature } = precharge;
  const [first, last] = [rows[0], rows.at(-1)];
  return lineOf(byTable, {
    first: first === undefined ? '' : degrees(first.temperature),
    last: last === undefined ? '' : degrees(last.temperature),
    temperature: degrees(referenceTemperature),
  });
}

/** What is allowed, never more than the specification allows. */
function allowed({ tolerance }: Specification, steps: Steps, { document }: Language, say: Say): Line {
  const words = document.card;
  if (has(tolerance, 'minimum')) return words.limits;
  const applies = document.applies[tolerance.applies];
  if (has(tolerance, 'plusMinusPercentOfGauge'))
    return lineOf(words.percent, { percent: say(String(tolerance.plusMinusPercentOfGauge)), applies });
  const [below, above] = has(tolerance, 'plusMinus')
    ? [tolerance.plusMinus, tolerance.plusMinus]
    : [tolerance.below, tolerance.above];
  return lineOf(words.tolerance, { below: bare(below, steps, say), above: bare(above, steps, say), applies });
}

function disagreements({ disagreements }: Specification, steps: Steps, language: Language, say: Say): readonly Line[] {
  if (disagreements.length === 0) return [];
  const rows = disagreements.map(({ row }) => say(write(row.temperature, finer(steps.temperature))));
  return [lineOf(language.document.card.disagreements, { rows: joined(rows, '; ') })];
}

/** A size that is allowed, down to the step, without the word for its basis. */
function bare(size: PressureDifference, { pressure }: Steps, say: Say): string {
  return say(write(size, { ...pressure, toward: 'down' }).replace(/ difference$/, ''));
}
