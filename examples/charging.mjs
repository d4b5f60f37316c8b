// The parts of the printed report about filling and about what can hurt.
import { gauge, pressureDifference, write } from 'isochore';
import { columns, printable, tenth, wrap } from './lines.mjs';

/** @import { RoundReport } from 'isochore/record' */
/** @typedef {NonNullable<RoundReport['filling']>} Filling */
/** @typedef {NonNullable<RoundReport['safety']>} Safety */
/** @typedef {{ value: number | string, unit: 'bar' | 'MPa' | 'psi' | 'kgf/cm2' | 'kPa' | 'hPa' | 'Pa' | 'mmHg' | 'inHg' }} Pressure */

/** Which bottle goes on which accumulator, where to stop, what is left, what to order. @param {RoundReport} report */
export function filling({ filling, accumulators }) {
  if (filling === undefined) return [];
  const { bottles, steps, bleeding, checks, objectives, optimal, vented, order } = filling;
  /** @param {{ group: string, name: string }} of */
  const stepOf = (of) =>
    accumulators.find(({ group, name }) => group === of.group && name === of.name)?.asFound.reading.gaugeStep.value ??
    1;
  const rows = bottles.map(({ name, at15C, state, aboveResidual, use, after, because }) => [
    printable(name),
    about(at15C, 1),
    state,
    aboveResidual.rounded.mass,
    use,
    use === 'used' ? about(after, 1) : '',
    because.map(({ text }) => text).join('; '),
  ]);
  const gap = objectives.filter(({ gap }) => gap !== 0).map(({ objective }) => objective);
  return [
    '',
    'FILLING, step by step',
    '  Pressures are gauge pressures.',
    ...columns([['', 'at 15 °C', '', 'above residual', 'use', 'reads after', ''], ...rows]),
    ...(steps.length === 0 ? ['  Nothing can be filled.'] : []),
    ...steps.flatMap((step, i) => {
      const to = filling.accumulators.find(({ group, name }) => group === step.group && name === step.name);
      const lead = `  ${i + 1}. ${printable(step.bottle)} on ${printable(step.name)}: `;
      const ended = step.ended === 'at the pressure wanted' ? '' : `, ${step.ended}`;
      const isLast = !steps.slice(i + 1).some(({ group, name }) => group === step.group && name === step.name);
      return [
        ...wrap(
          `to ${inUnit(step.accumulatorAfter, tenth(stepOf(step)))} settled${ended}; ${step.moved.rounded.mass}, and ` +
            `${step.vented.rounded.mass} vented from the kit; the bottle then reads ${about(step.bottleAfter, 1)}`,
          lead,
        ),
        ...(isLast && to?.stops !== undefined ? stops(to.stops, tenth(stepOf(step))) : []),
      ];
    }),
    ...filling.accumulators
      .filter(({ outcome }) => outcome === 'undone')
      .flatMap(({ name, because, missing }) =>
        wrap(
          `${because.map(({ text }) => text).join('; ')}; ${missing.rounded.mass} missing`,
          `  UNDONE ${printable(name)}: `,
        ),
      ),
    ...wrap(
      optimal === 'proven'
        ? 'No plan of such steps is better: proven.'
        : `That no plan is better is not proven: ${gap.join(', ')}.`,
      '  ',
    ),
    ...wrap(
      `Vented from the kit in all: ${vented.rounded.mass}. Pressures are those after settling, at the temperatures read.`,
      '  ',
    ),
    ...(order === undefined ? [] : wrap(orderText(order), '  ')),
    ...bleeding.flatMap((one) => [
      `  ${printable(one.name)}, to be bled:`,
      ...(one.stops === 'leaves the model'
        ? ['     no stop: gas of this pressure would condense; look at the reading again']
        : stops(one.stops, tenth(stepOf(one)))),
    ]),
    ...(checks === undefined || checks.length === 0 ? [] : wrap(checkText(checks), '  ')),
  ];
}

/** What the checks have cost, by the accumulator that felt it most. @param {NonNullable<Filling['checks']>} checks */
function checkText(checks) {
  const share = (/** @type {typeof checks[number]} */ { fall, before }) => Number(fall.value) / Number(before.value);
  const most = checks.reduce((a, b) => (share(b) > share(a) ? b : a));
  return (
    `The check itself has taken most from ${printable(most.name)}: it held ${about(most.before, 0.1)} before the kit was ` +
    `connected, and ${most.gas.rounded.mass} went with the kit.`
  );
}

/** @param {NonNullable<Filling['order']>} order */
function orderText({ needed, order, fewest, because }) {
  if (needed === 'not found') return `Bottles to order: none would do: ${because.map(({ text }) => text).join('; ')}.`;
  if (needed === 0) return 'Bottles to order for this work: none.';
  return `Bottles to order: ${order} (${needed} needed${fewest === 'proven' ? '' : ', fewer may do'}; the rest is reserve).`;
}

/**
 * @param {NonNullable<Filling['accumulators'][number]['stops']>} stops
 * @param {number} step
 */
function stops({ way, steps, reaches }, step) {
  if (way === 'no mark of the gauge to stop at') return ['     there is no mark of this gauge to stop at'];
  return steps.flatMap(({ mark, settled: { isothermal, adiabatic } }, i) =>
    wrap(
      `stop at ${mark.value} ${mark.unit}, close, wait; it settles at ${range(adiabatic, isothermal, step)}${i + 1 === steps.length && reaches === 'neither' ? ', which is not in the band' : ''}`,
      i === 0 ? '     ' : '     read, then again: ',
    ),
  );
}

/** @param {Pressure} one @param {Pressure} other @param {number} step */
function range(one, other, step) {
  const [low, high] = Number(one.value) < Number(other.value) ? [one, other] : [other, one];
  return `${inUnit(low, step)} to ${inUnit(high, step)}`;
}

/** Numbers about what can hurt. They clear nothing. @param {RoundReport} report */
export function safety({ safety }) {
  if (safety === undefined) return [];
  return [
    '',
    'SAFETY NUMBERS: they clear nothing; the maker, local codes and licensed practice decide',
    '  Pressures are gauge pressures.',
    ...safety.specifications.flatMap(({ specification, hot, energy, ratings, leakTest, purge }) => [
      `  ${printable(specification)}`,
      ...(hot === undefined
        ? []
        : wrap(
            `a gas at its upper limit comes to ${about(hot.pressure, 0.1, 'up')} when hottest, ${hot.outcome} of ` +
              about(hot.allowable, 0.1),
            '    ',
          )),
      ...(energy === undefined
        ? []
        : wrap(
            `stored energy ${kilojoules(energy.charged)} charged${energy.inService === undefined ? '' : `, ${kilojoules(energy.inService)} in service`}; ` +
              `as of ${Math.ceil(1000 * energy.tnt.value)} g of TNT`,
            '    ',
          )),
      ...(ratings === undefined || ratings.problems.length === 0
        ? []
        : ratings.problems.flatMap(({ code, part, limit, pressure }) =>
            wrap(`${part} ${code}: it takes ${about(limit, 1)}, and ${about(pressure, 1, 'up')} may come`, '    '),
          )),
      ...(ratings?.outcome === 'nothing found'
        ? ['    ratings of the charging line: nothing found, which is no approval']
        : []),
      ...(leakTest === undefined ? [] : wrap(leakText(leakTest), '    ')),
      ...(purge === undefined ? [] : wrap(purgeText(purge), '    ')),
    ]),
    ...safety.releases.flatMap((release) => released(release)),
  ];
}

/** @param {NonNullable<Safety['specifications'][number]['leakTest']>} test */
function leakText({ bubbles, gauge }) {
  const apart = bubbles.minutesApart === 'none' ? 'none' : `one in ${bubbles.minutesApart.toFixed(1)} min`;
  const fall = write(pressureDifference(Number(gauge.fall.value), gauge.fall.unit), {
    step: 0.001,
    unit: 'bar',
    toward: 'down',
  });
  return (
    `leak test for the loss that matters: bubbles, ${apart}, ${bubbles.against}; the gauge, by ` +
    `${fall.replace(' difference', '')}, ${gauge.against}`
  );
}

/** @param {NonNullable<Safety['specifications'][number]['purge']>} purge */
function purgeText({ outcome, fillings, left, gas }) {
  const percent = (Math.ceil(1e4 * (left.at(-1) ?? 0)) / 100).toFixed(2); // never less than is left
  const many = `${fillings} ${fillings === 1 ? 'filling' : 'fillings'}`;
  return outcome === 'reached'
    ? `gas that is not known, let out and purged: ${many} leave ${percent} % of it, with ${gas.rounded.mass} of nitrogen`
    : `gas that is not known cannot be purged so: ${outcome}`;
}

/** @param {Safety['releases'][number]} release */
function released({ of, name, outcome, lowest }) {
  const percent = (Math.floor(1000 * lowest.fraction) / 10).toFixed(1); // never more oxygen than there is
  return wrap(
    `the gas of one ${of} (${printable(name)}) released: ${percent} % oxygen (${lowest.by}, ${lowest.ventilation}), ` +
      `${outcome}; measure before anybody enters`,
    '  ',
  );
}

/**
 * @param {Pressure} pressure
 * @param {number} step in the unit of the pressure
 * @param {'up' | 'nearest even'} toward
 */
function inUnit({ value, unit }, step, toward = 'nearest even') {
  return write(gauge(Number(value), unit), { step, unit, toward }).replace(' gauge', '');
}

/**
 * Where nobody reads a gauge: to a step in bar, in MPa a tenth of it.
 *
 * @param {Pressure} pressure
 * @param {number} step
 * @param {'up' | 'nearest even'} [toward]
 */
function about(pressure, step, toward) {
  return inUnit(pressure, pressure.unit === 'MPa' ? Number((step / 10).toPrecision(1)) : step, toward);
}

/** @param {{ value: number }} energy */
function kilojoules({ value }) {
  return `${Math.ceil(value / 1000)} kJ`;
}
