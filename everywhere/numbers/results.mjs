// A fixed set of results over the whole of the library. It takes the library as an argument and imports nothing, so that
// the same lines run as a module, from CommonJS, bundled, and in a browser.

/** @import * as Core from 'isochore' */
/** @import * as Record from 'isochore/record' */
/** @import * as Worked from 'isochore/worked' */

/**
 * One result: a number, which engines may bring to another last place, or a text, which they may not.
 *
 * @typedef {{ readonly name: string, readonly value: number | string }} Result
 */

/** @typedef {(name: string, value: number | string) => void} Put */

/**
 * The results of the core, in a fixed order.
 *
 * @param {typeof Core} core
 * @returns {readonly Result[]}
 */
export function coreResults(core) {
  /** @type {Result[]} */
  const results = [];
  /** @type {Put} */
  const put = (name, value) => {
    results.push({ name, value });
  };
  densities(core, put);
  properties(core, put);
  saturation(core, put);
  otherModels(core, put);
  const specs = specifications(core);
  targets(core, specs, put);
  verdicts(core, specs, put);
  texts(core, put);
  return results;
}

/**
 * The results of the record, in a fixed order.
 *
 * @param {typeof Record} record
 * @param {string} round a round of checks, as JSON text
 * @returns {readonly Result[]}
 */
export function recordResults({ canonicalJson, reportRoundText, reverify, sha256 }, round) {
  /** @type {Result[]} */
  const results = [];
  /** @type {Put} */
  const put = (name, value) => {
    results.push({ name, value });
  };
  const report = reportRoundText(round, { problems: 'report the rest' });
  for (const { name, state, asFound } of report.accumulators) put(`round, ${name}`, `${state}, ${asFound.outcome}`);
  put('round: counts', canonicalJson(report.counts));
  put('round: digest of what was put in', sha256(canonicalJson(report.input)));
  put('round: digest of the report', report.digest);
  put('round: judged again where it was judged', reverify(report).outcome);
  return results;
}

/**
 * The documents of a round, and all of the working of a check, each format by its digest.
 *
 * @param {typeof Core} core
 * @param {typeof Worked} worked
 * @param {typeof Record} record
 * @param {string} round a round of checks, as JSON text
 * @returns {readonly Result[]}
 */
export function workedResults(core, worked, { reportRoundText, sha256 }, round) {
  const report = reportRoundText(round, { problems: 'report the rest' });
  const spec = specifications(core)['unequal sides'];
  /** @type {Core.Reading} */
  const reading = { ...soundReading(core), pressure: core.gauge(143, 'bar') };
  const derivation = worked.derivationOf({ spec, reading }, (given, trace) =>
    core.check(given.spec, given.reading, trace),
  );
  const units = /** @type {const} */ ({ pressure: 'bar', temperature: '°C', volume: 'L', mass: 'kg' });
  return [worked.english, worked.german].flatMap((language) => {
    const pages = {
      report: worked.roundDocument(report, { language, working: 'left out' }),
      working: worked.derivationDocument(derivation, 'EV 2', { language, units, detail: 'everything' }),
    };
    return Object.entries(pages).flatMap(([name, page]) => {
      const written = {
        text: worked.documentText(page, { width: 100 }),
        Markdown: worked.documentMarkdown(page),
        LaTeX: worked.documentLatex(page),
        HTML: worked.documentHtml(page),
      };
      return Object.entries(written).map(([format, text]) => ({
        name: `${name} in ${page.language}: digest as ${format}`,
        value: sha256(text),
      }));
    });
  });
}

/** A number, or the codes of its refusal: liquid is liquid on every engine. @param {typeof Core} core @param {() => number} of */
function orRefused(core, of) {
  try {
    return of();
  } catch (error) {
    if (!core.isFault(error)) throw error;
    return error.problems.map(({ code }) => code).join(', ');
  }
}

// Cold vapour, the surroundings of the critical point (126.192 K, 3.3958 MPa), the range of accumulators, and the ends.
const KELVINS = [64, 77.355, 100, 120, 126.19, 126.192, 126.2, 127, 135, 160, 200, 253.15, 293.15, 333.15, 500, 1000];
const MEGAPASCALS = [0.001, 0.101325, 0.8, 2.5, 3.3958, 3.4, 4, 14, 20, 35, 100, 200];

/** @param {typeof Core} core @param {Put} put */
function densities(core, put) {
  const { absolute, nitrogen, stateAt, temperature } = core;
  for (const T of KELVINS) {
    for (const p of MEGAPASCALS) {
      const given = { temperature: temperature(T, 'K'), pressure: absolute(p, 'MPa') };
      const density = orRefused(core, () => stateAt(nitrogen, given).density_mol_m3);
      put(`density at ${T} K and ${p} MPa`, density);
    }
  }
}

/** The numbers of a state but the one that names it. @param {string} name @param {Core.GasState} state @param {Put} put */
function putState(name, state, put) {
  put(`${name}: temperature`, state.temperature.kelvins);
  put(`${name}: pressure`, state.pressure.pascals);
  for (const [key, value] of Object.entries(state)) {
    if (typeof value === 'number') put(`${name}: ${key}`, value);
  }
  put(`${name}: uncertainty`, String(state.densityUncertainty));
}

/** @param {typeof Core} core @param {Put} put */
function properties(core, put) {
  const { absolute, nitrogen, stateAt, temperature } = core;
  const at = (/** @type {number} */ T, /** @type {number} */ p) => ({
    temperature: temperature(T, 'K'),
    pressure: absolute(p, 'MPa'),
  });
  /** @type {readonly (readonly [number, number])[]} */
  const points = [
    [64, 0.001],
    [100, 0.5],
    [125, 3.1],
    [126.2, 3.39],
    [128, 3.5],
    [160, 20],
    [253.15, 10],
    [293.15, 14.1],
    [313.15, 15.3],
    [333.15, 35],
    [1000, 200],
  ];
  for (const [T, p] of points) putState(`state at ${T} K and ${p} MPa`, stateAt(nitrogen, at(T, p)), put);
  const density_mol_m3 = 5700;
  putState(
    'state by temperature and density',
    stateAt(nitrogen, { temperature: temperature(20, '°C'), density_mol_m3 }),
    put,
  );
  const from = stateAt(nitrogen, at(293.15, 14));
  putState(
    'state by pressure and entropy',
    stateAt(nitrogen, { pressure: absolute(5, 'MPa'), entropy_J_molK: from.entropy_J_molK }),
    put,
  );
  const internalEnergy_J_mol = 5000;
  putState('state by density and energy', stateAt(nitrogen, { density_mol_m3, internalEnergy_J_mol }), put);
}

/** @param {typeof Core} core @param {Put} put */
function saturation({ nitrogen, saturationAt, temperature }, put) {
  for (const T of [64, 70, 77.355, 85, 95, 105, 115, 120, 124, 125.5, 126, 126.15]) {
    const state = saturationAt(nitrogen, temperature(T, 'K'));
    put(`saturation at ${T} K: pressure`, state.pressure.pascals);
    put(`saturation at ${T} K: liquid density`, state.liquidDensity_mol_m3);
    put(`saturation at ${T} K: vapour density`, state.vapourDensity_mol_m3);
  }
}

/** @param {typeof Core} core @param {Put} put */
function otherModels({ absolute, cubicNitrogen, idealNitrogen, stateAt, temperature }, put) {
  for (const model of [idealNitrogen, cubicNitrogen]) {
    const [least, most] = model.validity.temperature_K;
    const [, highest] = model.validity.pressure_Pa;
    for (const share of [0, 0.1, 0.5, 1]) {
      const T = least + share * (most - least);
      const given = { temperature: temperature(T, 'K'), pressure: absolute(highest / 4, 'Pa') };
      putState(`${model.id}, ${share} of its range`, stateAt(model, given), put);
    }
  }
}

/** One specification for each way to state a tolerance. @param {typeof Core} core */
function specifications(core) {
  const { absolute, gauge, nitrogen, pressureDifference, specification, standardAtmosphere, temperature, volume } =
    core;
  const settling = { allowance: pressureDifference(1.5, 'bar'), minutes: 5 };
  return {
    'equal sides': specification({
      gas: nitrogen,
      precharge: { pressure: gauge(140, 'bar'), temperature: temperature(20, '°C') },
      ambient: standardAtmosphere,
      tolerance: { plusMinus: pressureDifference(2, 'bar'), applies: 'at the measured temperature' },
      separator: 'diaphragm',
      gasVolume: volume(5, 'L'),
      allowable: gauge(210, 'bar'),
      settling,
    }),
    'unequal sides': specification({
      gas: nitrogen,
      precharge: { pressure: gauge(2000, 'psi'), temperature: temperature(68, '°F') },
      ambient: absolute(1002.3, 'hPa'),
      tolerance: {
        below: pressureDifference(1, 'bar'),
        above: pressureDifference(3, 'bar'),
        applies: 'at the reference temperature',
      },
      separator: 'bladder',
      gasVolume: volume(2.5, 'US gal'),
      allowable: gauge(3000, 'psi'),
      settling,
    }),
    percent: specification({
      gas: nitrogen,
      precharge: { pressure: gauge(28.4, 'MPa'), temperature: temperature(15, '°C') },
      ambient: standardAtmosphere,
      tolerance: { plusMinusPercentOfGauge: 1.5, applies: 'at the reference temperature' },
      separator: 'piston',
      gasVolume: volume(0.05, 'm3'),
      allowable: gauge(40, 'MPa'),
      settling,
    }),
  };
}

/** @param {typeof Core} core @param {ReturnType<typeof specifications>} specs @param {Put} put */
function targets(core, specs, put) {
  const { absolute, band, explainingTemperature, gauge, referred, slope, target, temperature, write } = core;
  const gaugeStep = /** @type {const} */ ({ step: 0.5, unit: 'bar' });
  for (const [name, spec] of Object.entries(specs)) {
    put(`${name}: density`, spec.density_mol_m3);
    for (const celsius of [-30, -10, 0, 15, 20, 27.5, 40, 60, 80]) {
      const about = `${name} at ${celsius} °C`;
      const at = { temperature: temperature(celsius, '°C'), ambient: absolute(998.7, 'hPa') };
      const read = { ...at, pressure: gauge(120, 'bar') };
      const wanted = target(spec, at);
      const allowed = band(spec, at, gaugeStep);
      put(`${about}: target`, wanted.pascals);
      put(`${about}: target written`, write(wanted, { step: 0.01, unit: 'bar' }));
      put(`${about}: slope`, slope(spec, at).pascalsPerKelvin);
      put(`${about}: lower limit`, allowed.lower.pascals);
      put(`${about}: upper limit`, allowed.upper.pascals);
      put(`${about}: on the gauge`, JSON.stringify(allowed.onGauge));
      put(`${about}: 120 bar referred`, referred(spec, read).pascals);
      const explaining = explainingTemperature(spec, read);
      put(
        `${about}: explaining temperature of 120 bar`,
        typeof explaining === 'string' ? explaining : explaining.kelvins,
      );
    }
  }
}

/** A reading with full evidence, but for its pressure. @param {typeof Core} core @returns {Omit<Core.Reading, 'pressure'>} */
function soundReading({ absolute, temperature }) {
  return {
    temperature: temperature(33.3, '°C'),
    ambient: absolute(1008, 'hPa'),
    gaugeStep: { step: 1, unit: 'bar' },
    oilSide: 'drained, zero verified',
    gasInside: 'nitrogen',
    minutesAtRest: 30,
  };
}

/** @param {typeof Core} core @param {ReturnType<typeof specifications>} specs @param {Put} put */
function verdicts(core, specs, put) {
  const { charge, check, gauge, judge } = core;
  const sound = soundReading(core);
  /** @type {Readonly<Record<string, Partial<Core.Reading>>>} */
  const readings = {
    'far below': { pressure: gauge(60, 'bar') },
    below: { pressure: gauge(143, 'bar') },
    within: { pressure: gauge(148, 'bar') },
    above: { pressure: gauge(2250, 'psi') },
    empty: { pressure: gauge(0, 'bar') },
    'empty and cleared': { pressure: gauge(0, 'bar'), emptyGasSide: 'investigated and cleared' },
    'coarse gauge': { pressure: gauge(150, 'bar'), gaugeStep: { step: 10, unit: 'bar' } },
    'oil side open': { pressure: gauge(148, 'bar'), oilSide: 'not drained' },
    'gas not known': { pressure: gauge(148, 'bar'), gasInside: 'not known' },
  };
  for (const [name, spec] of Object.entries(specs)) {
    for (const [which, own] of Object.entries(readings)) {
      const about = `${name}, ${which}`;
      const reading = { pressure: gauge(148, 'bar'), ...sound, ...own };
      const { outcome, because } = judge(spec, reading);
      put(`${about}: outcome`, outcome);
      put(`${about}: because`, because.join(', '));
      const todo = charge(spec, reading);
      put(`${about}: action`, todo.action);
      put(
        `${about}: cautions`,
        check(spec, reading)
          .cautions.map(({ code }) => code)
          .join(', '),
      );
      if (todo.action !== 'add' && todo.action !== 'vent') continue;
      put(`${about}: amount`, todo.gas.amount.moles);
      put(`${about}: mass`, todo.gas.mass.kilograms);
      put(`${about}: normal volume`, todo.gas.normalVolume.cubicMetres);
      put(`${about}: rounded`, `${todo.gas.rounded.mass}, ${todo.gas.rounded.normalVolume}`);
      const { stop } = todo;
      put(`${about}: stop`, stop.action === 'stop' ? stop.pressure.pascals : stop.because.join(', '));
      if (stop.action === 'stop') put(`${about}: mark to stop at`, JSON.stringify(stop.mark));
    }
  }
}

/** No exponential is in these: what goes in and out by the numeric door. @param {typeof Core} core @param {Put} put */
function texts({ gauge, read, temperature, valueIn, volume, write }, put) {
  for (const value of [0.1, 141.3, 1234.5678, 1e-7, 2 / 3]) {
    const pressure = gauge(value, 'psi');
    put(`${value} psi`, pressure.pascals);
    put(`${value} psi in psi`, valueIn(pressure, 'psi'));
    put(`${value} psi in kgf/cm2`, valueIn(pressure, 'kgf/cm2'));
    put(`${value} psi written`, write(pressure, { step: 0.0001, unit: 'bar' }));
    put(`${value} °F`, temperature(value, '°F').kelvins);
    put(`${value} in3`, volume(value, 'in3').cubicMetres);
  }
  for (const text of ['141.3 bar gauge', '2049.38193721 psi gauge', '0.1000000000000000055511151231257827 MPa gauge']) {
    put(`read ${text}`, read('gauge pressure', text).pascals);
  }
  put('read 40 °C', read('temperature', '40 °C').kelvins);
}
