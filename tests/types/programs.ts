// Small programs that are wrong, each in the way its title says: what a user writes by mistake, and the compiler refuses.
import { AROUND } from './programs-around.js';
import { missing, mixes, type Wrong } from './wrong.js';

/** What each program may use, all of it right. */
export const GIVEN = `
import {
  absolute, assess, bottleState, charge, compare, decide, difference, gauge, judge, mass, needComplete, nitrogen,
  normalConditions, normalVolume, oxygenAfterRelease, pressureDifference, pressureWhenHot, purge, ratio, read, roundTo,
  serves, shift, specification, standardAtmosphere, stateAt, target, temperature, temperatureDifference, toAbsolute,
  toFill, toGauge, uncertainty, valueIn, volume, whereToStop, workOrder, write,
  type AbsolutePressure, type Bottle, type GaugePressure, type Instruments, type Levelled, type Purge, type Quantity,
  type Release, type Rig, type Rule, type Signatures, type StopStep, type Temperature, type ToFill,
} from 'isochore';
import { recall, reportRound, reportRoundText, worstFirst, type Recalling, type Round } from 'isochore/record';
import { card, documentText, english, roundDocument, type CardGiven, type WorkedDocument } from 'isochore/worked';

const shown = gauge(143, 'bar');
const other = gauge(140, 'bar');
const ambient = absolute(1008, 'hPa');
const twoBar = pressureDifference(2, 'bar');
const warm = temperature(40, '°C');
const swing = temperatureDifference(20, 'K');
const space = volume(5, 'L');
const given = {
  gas: nitrogen,
  precharge: { pressure: other, temperature: temperature(20, '°C') },
  ambient: standardAtmosphere,
  tolerance: { plusMinus: twoBar, applies: 'at the measured temperature' },
  separator: 'diaphragm',
  gasVolume: space,
  allowable: gauge(210, 'bar'),
  settling: { allowance: pressureDifference(1.5, 'bar'), minutes: 5 },
} as const;
const spec = specification(given);
const reading = {
  pressure: shown,
  temperature: warm,
  ambient,
  gaugeStep: { step: 1, unit: 'bar' },
  oilSide: 'drained, zero verified',
  gasInside: 'nitrogen',
  minutesAtRest: 30,
} as const;
const verdict = judge(spec, reading);
const move = charge(spec, reading);
declare const either: GaugePressure | AbsolutePressure;
declare const quantity: Quantity;
declare const parsed: Round;
const report = reportRound(parsed, { problems: 'report the rest' });
declare const bottle: Bottle;
declare const rig: Rig;
declare const filled: ToFill;
declare const stop: StopStep;
declare const instruments: Instruments;
declare const rule: Rule;
declare const release: Release;
declare const purging: Purge;
declare const signatures: Signatures;
declare const recalling: Recalling;
declare const onCard: CardGiven;
declare const page: WorkedDocument;
`;

/** Compiles where a program has not set exactOptionalPropertyTypes: an optional part may then be undefined. */
export const UNDEFINED = 'judge(spec, { ...reading, systemPressure: undefined });';

export const WRONG: readonly Wrong[] = [
  // Kinds of quantity.
  {
    title: 'a gauge pressure where an absolute one is meant',
    program: 'toGauge(shown, ambient);',
    says: mixes('GaugePressure', 'AbsolutePressure'),
  },
  {
    title: 'an absolute pressure where a gauge pressure is meant',
    program: 'toAbsolute(ambient, ambient);',
    says: mixes('AbsolutePressure', 'GaugePressure'),
  },
  {
    title: 'a gauge pressure as the ambient of a reading',
    program: 'judge(spec, { ...reading, ambient: other });',
    says: mixes('GaugePressure', 'AbsolutePressure'),
  },
  {
    title: 'an absolute pressure as what the gauge showed',
    program: "judge(spec, { ...reading, pressure: absolute(144, 'bar') });",
    says: mixes('AbsolutePressure', 'GaugePressure'),
  },
  {
    title: 'a difference where a point on the scale is meant',
    program: 'specification({ ...given, allowable: twoBar });',
    says: mixes('PressureDifference', 'GaugePressure'),
  },
  {
    title: 'a point on the scale where a difference is meant',
    program: "specification({ ...given, settling: { allowance: gauge(1.5, 'bar'), minutes: 5 } });",
    says: mixes('GaugePressure', 'PressureDifference'),
  },
  {
    title: 'a temperature where its difference is meant',
    program: 'shift(warm, warm);',
    says: mixes('Temperature', 'TemperatureDifference'),
  },
  {
    title: 'a difference of temperatures where a temperature is meant',
    program: 'target(spec, { temperature: swing, ambient });',
    says: mixes('TemperatureDifference', 'Temperature'),
  },
  {
    title: 'the difference of a gauge and an absolute pressure',
    program: 'difference(shown, ambient);',
    says: mixes('AbsolutePressure', 'GaugePressure'),
  },
  {
    title: 'the order of a pressure and a temperature',
    program: 'compare(shown, warm);',
    says: mixes('Temperature', 'GaugePressure'),
  },
  {
    title: 'a ratio of gauge pressures',
    program: 'ratio(shown, other);',
    says: [/'GaugePressure'/, /AbsolutePressure/],
  },
  {
    title: 'a pressure shifted by kelvins',
    program: 'shift(shown, swing);',
    says: mixes('TemperatureDifference', 'PressureDifference'),
  },
  {
    title: 'a gas state at a gauge pressure',
    program: 'stateAt(nitrogen, { pressure: shown, temperature: warm });',
    says: mixes('GaugePressure', 'AbsolutePressure'),
  },
  {
    title: 'a mass of gas where an amount is meant',
    program: "normalVolume(mass(1, 'kg'), nitrogen, normalConditions);",
    says: mixes('Mass', 'Amount'),
  },

  // Of several kinds, of which it is not known which one it is.
  {
    title: 'the difference of an absolute pressure and one that may be either',
    program: 'difference(either, ambient);',
    says: [/'SeveralKinds'/, /one kind alone: narrow by kind first/],
  },
  {
    title: 'the difference of a gauge pressure and one that may be either',
    program: 'difference(shown, either);',
    says: mixes('AbsolutePressure', 'GaugePressure'),
  },
  {
    title: 'the order of a pressure and a temperature, under the name of both',
    program: 'compare<Levelled>(shown, warm);',
    says: [/'SeveralKinds'/, /one kind alone: narrow by kind first/],
  },
  {
    title: 'a list of several kinds put in order',
    program: 'const list: Levelled[] = [shown, warm];\nlist.sort(compare);',
    says: [/'SeveralKinds'/],
  },
  {
    title: 'a ratio of a pressure and a temperature, under the name of both',
    program: 'ratio<AbsolutePressure | Temperature>(ambient, warm);',
    says: [/'SeveralKinds'/, /one kind alone: narrow by kind first/],
  },
  {
    title: 'a pressure shifted by kelvins, under the name of all levels',
    program: 'shift<Levelled>(shown, swing);',
    says: [/'SeveralKinds'/, /one kind alone: narrow by kind first/],
  },
  {
    title: 'the number of any quantity in kilograms',
    program: "valueIn(quantity, 'kg');",
    says: [/'SeveralKinds/],
  },
  {
    title: 'a pressure written in kelvins, under the name of any quantity',
    program: "write<Quantity>(shown, { step: 1, unit: 'K' });",
    says: [/'SeveralKinds/],
  },
  {
    title: 'any quantity rounded to a bar',
    program: "roundTo(quantity, { step: 1, unit: 'bar', toward: 'up' });",
    says: [/'SeveralKinds/],
  },

  // Bare numbers, text, and operators.
  {
    title: 'a bare number for a quantity',
    program: 'toAbsolute(143, ambient);',
    says: mixes('number', 'GaugePressure'),
  },
  {
    title: 'a text for a quantity',
    program: "toAbsolute('143 bar gauge', ambient);",
    says: mixes('string', 'GaugePressure'),
  },
  {
    title: 'an object of the right look for a quantity',
    program: "toAbsolute({ kind: 'gauge pressure', pascals: 14_300_000 }, ambient);",
    says: [/Property ''~isochore'' is missing/, /'GaugePressure'/],
  },
  {
    title: 'the conversion of a gauge pressure without an ambient',
    program: 'toAbsolute(shown);',
    says: [/Expected 2-3 arguments, but got 1/, /'ambient' was not provided/],
  },
  {
    title: 'two pressures subtracted by an operator',
    program: 'shown - other;',
    says: [/arithmetic operation/],
  },
  {
    title: 'two pressures added by an operator',
    program: 'shown + other;',
    says: [/Operator '\+' cannot be applied to types 'GaugePressure' and 'GaugePressure'/],
  },
  {
    title: 'a gauge pressure set against an absolute one by an operator',
    program: 'shown < ambient;',
    says: [/Operator '<' cannot be applied to types 'GaugePressure' and 'AbsolutePressure'/],
  },
  {
    title: 'a pressure set against a bare number by an operator',
    program: 'shown > 140;',
    says: [/Operator '>' cannot be applied to types 'GaugePressure' and 'number'/],
  },
  {
    title: 'a gauge pressure held equal to an absolute one',
    program: 'shown === ambient;',
    says: [/'GaugePressure' and 'AbsolutePressure' have no overlap/],
  },
  {
    title: 'a temperature changed in place',
    program: 'warm.kelvins = 300;',
    says: [/'kelvins'/, /read-only/],
  },
  {
    title: 'a specification changed in place',
    program: "spec.allowable = gauge(250, 'bar');",
    says: [/'allowable'/, /read-only/],
  },

  // Units.
  {
    title: 'a unit of pressure that there is not',
    program: "gauge(143, 'atm');",
    says: [/'"atm"' is not assignable to parameter of type 'PressureUnit'/],
  },
  {
    title: 'a basis written into the unit',
    program: "gauge(143, 'barg');",
    says: [/'"barg"' is not assignable to parameter of type 'PressureUnit'/],
  },
  {
    title: 'a unit of another kind',
    program: "valueIn(warm, 'bar');",
    says: [/'"bar"' is not assignable to parameter of type 'TemperatureUnit'/],
  },
  {
    title: 'a unit left out',
    program: 'gauge(143);',
    says: [/Expected 2 arguments, but got 1/, /'unit' was not provided/],
  },
  {
    title: 'a direction of rounding that there is not',
    program: "roundTo(shown, { step: 1, unit: 'bar', toward: 'nearest' });",
    says: [/'"nearest"' is not assignable to type 'Toward'/],
  },
  {
    title: 'a kind to read that there is not',
    program: "read('pressure', '143 bar');",
    says: [/'"pressure"' is not assignable/],
  },

  // The specification.
  ...['ambient', 'separator', 'gasVolume', 'allowable', 'settling', 'tolerance'].map((name) => ({
    title: `a specification without its ${name}`,
    program: `const { ${name}: left, ...rest } = given;\nspecification(rest);`,
    says: [new RegExp(`Property '${name}' is missing .* required in type 'SpecificationGiven'`)],
  })),
  {
    title: 'a settling without its allowance',
    program: 'specification({ ...given, settling: { minutes: 5 } });',
    says: missing('allowance'),
  },
  {
    title: 'a separator that there is not',
    program: "specification({ ...given, separator: 'membrane' });",
    says: [/'"membrane"' is not assignable to type 'Separator'/],
  },
  {
    title: 'a tolerance that does not say where it applies',
    program: 'specification({ ...given, tolerance: { plusMinus: twoBar } });',
    says: missing('applies'),
  },
  {
    title: 'a tolerance with one side only',
    program: "specification({ ...given, tolerance: { below: twoBar, applies: 'at the measured temperature' } });",
    says: missing('above'),
  },
  {
    title: 'a tolerance that is a gauge pressure',
    program: "specification({ ...given, tolerance: { plusMinus: shown, applies: 'at the measured temperature' } });",
    says: mixes('GaugePressure', 'PressureDifference'),
  },
  {
    title: 'what a manual says, where a checked specification is meant',
    program: 'judge(given, reading);',
    says: [/'Specification'/],
  },
  {
    title: 'a copy of a specification, changed',
    program: "judge({ ...spec, separator: 'a sponge' }, reading);",
    says: [/'"a sponge"' is not assignable to type 'Separator'/],
  },

  // The reading.
  ...['ambient', 'gaugeStep', 'oilSide', 'gasInside', 'minutesAtRest'].map((name) => ({
    title: `a reading without its ${name}`,
    program: `const { ${name}: left, ...rest } = reading;\njudge(spec, rest);`,
    says: [new RegExp(`Property '${name}' is missing .* required in type '(Reading|Conditions)'`)],
  })),
  {
    title: 'an oil side in other words',
    program: "judge(spec, { ...reading, oilSide: 'drained' });",
    says: [/'"drained"' is not assignable to type 'OilSide'/],
  },
  {
    title: 'air in the accumulator',
    program: "judge(spec, { ...reading, gasInside: 'air' });",
    says: [/'"air"' is not assignable to type 'GasInside'/],
  },
  {
    title: 'a target without an ambient',
    program: 'target(spec, { temperature: warm });',
    says: [/Property 'ambient' is missing .* required in type 'Conditions'/],
  },

  // Results.
  {
    title: 'a deviation before it is known that there was a comparison',
    program: 'verdict.offTarget;',
    says: [/Property 'offTarget' does not exist on type 'Verdict'/, /'NotComparable'/],
  },
  {
    title: 'an outcome misspelled',
    program: "if (verdict.outcome === 'under charged') shown;",
    says: [/"under charged"/, /"undercharged"/, /no overlap/],
  },
  {
    title: 'a reason misspelled',
    program: "verdict.because.includes('below lower limit');",
    says: [/'"below lower limit"' is not assignable/],
  },
  {
    title: 'a printed limit before it is known that the gauge has marks there',
    program: 'verdict.band.onGauge.lower;',
    says: [/no mark of the gauge lies in the band/],
  },
  {
    title: 'an explaining temperature before it is known that there is one',
    program: "if (verdict.outcome === 'undercharged') write(verdict.explainingTemperature, { step: 1, unit: '°C' });",
    says: [/none in range/],
  },
  {
    title: 'gas to add before it is known that any is given',
    program: 'move.gas;',
    says: [/Property 'gas' does not exist on type 'Charge'/, /'NoMove'/],
  },
  {
    title: 'a stop pressure that may be withheld',
    program: "if (move.action === 'add') move.stop.pressure;",
    says: [/Stop/, /'pressure' does not exist on type 'Withheld'/],
  },
  {
    title: 'an action that there is not',
    program: "if (move.action === 'fill') shown;",
    says: [/"fill"/, /"add"/, /no overlap/],
  },

  // The record.
  {
    title: 'a round reported without saying what happens to its problems',
    program: 'reportRound(parsed);',
    says: [/Expected 2 arguments, but got 1/, /'when' was not provided/],
  },
  {
    title: 'another word for what happens to problems',
    program: "reportRound(parsed, { problems: 'ignore' });",
    says: [/'"ignore"' is not assignable to type/, /"refuse the round"/, /"report the rest"/],
  },
  {
    title: 'parsed data where text is meant',
    program: "reportRoundText(parsed, { problems: 'refuse the round' });",
    says: [/not assignable to parameter of type 'string'/],
  },
  {
    title: 'a round where a report is meant',
    program: 'worstFirst(parsed);',
    says: [/libraryVersion|digest|RoundReport/],
  },
  {
    title: 'a verdict where a report is meant',
    program: 'worstFirst(verdict);',
    says: [/'Compared'|'Verdict'|'NotComparable'/],
  },
  {
    title: 'an accumulator as left, which may not have been read',
    program: 'report.accumulators[0]?.asLeft.outcome;',
    says: [/"not read"/],
  },
  {
    title: 'a quantity of the report, which is plain data, where a checked one is meant',
    program: 'for (const { asFound } of report.accumulators) toAbsolute(asFound.target, ambient);',
    says: [/'GaugePressure'/, /kind|basis/],
  },
  {
    title: 'an accumulator of a ranking, which may not have been judged',
    program: 'worstFirst(report)[0]?.accumulators[0]?.accumulator;',
    says: [/Property 'accumulator' does not exist on type 'Ranked'/],
  },
  {
    title: 'a state of an accumulator that there is not',
    program: "report.accumulators.filter(({ state }) => state === 'ok');",
    says: [/"in order"/, /no overlap/],
  },
  ...AROUND,
];
