// From a check to plain JSON data. Pressures go out in the unit of the gauge, temperatures in that of the reading; the
// reading itself goes out as it was given.
import { USUAL, type CautionCode } from '../basis/caution.js';
import { has } from '../basis/has.js';
import { causeText, type Reason, type Words } from '../basis/words.js';
import type { Charge, GasQuantity, Withheld } from '../charge/charge.js';
import { valueIn } from '../quantity/step.js';
import type { PressureUnit } from '../quantity/unit.js';
import { why } from '../verdict/why.js';
import type { Checked } from './accumulator.js';
import { dayOf, isPastDue } from './instruments.js';
import { differenceJson, gaugeJson, markJson, temperatureJson } from './quantities.js';
import type { GasJson } from './gas-shape.js';
import type { ChargeJson, JudgedJson } from './report-shape.js';
import { certaintyJson } from './write-certainty.js';

/** A judged reading as JSON. */
export function judgedJson(checked: Checked, words: Words | undefined): JudgedJson {
  const { admitted, spec, reading, check } = checked;
  const { given, stated, at } = admitted;
  const { verdict, charge } = check;
  const { unit } = reading.gaugeStep;
  const say: Say = (result) => why(spec, reading, result, words);
  const { band } = verdict;
  const json: JudgedJson = {
    at,
    reading: { ...given, stated },
    outcome: verdict.outcome,
    because: [...verdict.because],
    why: say(verdict),
    target: gaugeJson(verdict.target, unit),
    targetFrom: {
      by: verdict.targetFrom.by,
      rows: verdict.targetFrom.rows.map((row) => ({
        temperature: temperatureJson(row.temperature, given.temperature.unit),
        pressure: gaugeJson(row.pressure, unit),
      })),
    },
    band: {
      lower: gaugeJson(band.lower, unit),
      upper: gaugeJson(band.upper, unit),
      onGauge:
        typeof band.onGauge === 'string'
          ? band.onGauge
          : { lower: markJson(band.onGauge.lower, unit), upper: markJson(band.onGauge.upper, unit) },
    },
    charge: chargeJson(charge, unit, say),
    ...certaintyJson(checked, words),
    cautions: cautionsOf(checked).filter((code) => !USUAL.includes(code)),
  };
  if (has(verdict, 'stepNeeded')) {
    json.stepNeeded = { value: verdict.stepNeeded.step, unit: verdict.stepNeeded.unit, basis: 'difference' };
  }
  if (has(verdict, 'causes')) json.causes = verdict.causes.map((code) => ({ code, text: causeText(code, words) }));
  if (has(verdict, 'offTarget')) {
    json.offTarget = differenceJson(verdict.offTarget, unit);
    json.insideBandBy = differenceJson(verdict.insideBandBy, unit);
  }
  if (has(verdict, 'referred')) {
    const explaining = verdict.explainingTemperature;
    json.referred = gaugeJson(verdict.referred, unit);
    json.explainingTemperature =
      typeof explaining === 'string' ? explaining : temperatureJson(explaining, given.temperature.unit);
  }
  return json;
}

/** The cautions of a reading, with that of an instrument past due, whether or not its accuracy is stated. */
export function cautionsOf({ admitted, check }: Checked): readonly CautionCode[] {
  const codes = check.cautions.map(({ code }) => code);
  const isLate = isPastDue(admitted.used, dayOf(admitted.at)) && !codes.includes('certificate past due');
  return isLate ? ['certificate past due', ...codes] : codes;
}

/** The reasons of a result in words. */
type Say = (result: { readonly because: readonly Reason[] }) => string;

function chargeJson(charge: Charge, unit: PressureUnit, say: Say): ChargeJson {
  if (charge.action === 'none') return { action: 'none' };
  if (charge.action === 'withheld') return withheldJson(charge, say);
  const { action, gas, stop, settleMinutes, then } = charge;
  if (stop.action === 'withheld')
    return { action, gas: gasJson(gas), stop: withheldJson(stop, say), settleMinutes, then };
  const mark = typeof stop.mark === 'string' ? stop.mark : markJson(stop.mark.value, stop.mark.unit);
  return {
    action,
    gas: gasJson(gas),
    stop: { action: 'stop', pressure: gaugeJson(stop.pressure, unit), mark },
    settleMinutes,
    then,
  };
}

function withheldJson(withheld: Withheld, say: Say): Extract<ChargeJson, { action: 'withheld' }> {
  return { action: 'withheld', because: [...withheld.because], why: say(withheld) };
}

/** A quantity of gas as JSON. */
export function gasJson({ amount, mass, normalVolume, rounded }: GasQuantity): GasJson {
  const { pressure, temperature } = normalVolume.at;
  return {
    amount: { value: amount.moles, unit: 'mol' },
    mass: { value: mass.kilograms, unit: 'kg' },
    normalVolume: {
      value: normalVolume.cubicMetres,
      unit: 'm3',
      at: {
        pressure: { value: valueIn(pressure, 'kPa'), unit: 'kPa', basis: 'absolute' },
        temperature: temperatureJson(temperature, '°C'),
      },
    },
    rounded: { ...rounded },
  };
}
