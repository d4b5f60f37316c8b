import {
  idealNitrogen,
  isentropicExpansion,
  nitrogen,
  standardAtmosphere,
  stateAt,
  storedEnergy,
  temperature,
  toAbsolute,
  volume,
  type Vessel,
} from 'isochore';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bar, celsius, specWith } from '../support/accumulator.js';
import { evenly } from '../support/evenly.js';
import { numberRows, relativeError } from '../support/reference.js';
import { problemOf } from '../support/problem.js';

const vessel: Vessel = { gas: nitrogen, gasVolume: volume(5, 'L') };
const charged = (p_bar: number, t_C = 20) => ({
  pressure: bar(p_bar),
  temperature: celsius(t_C),
  ambient: standardAtmosphere,
});

describe('ASME PCC-2, article 501, from memory: E = 2.5 P V [1 - (Pa / P)^0.286] for nitrogen', () => {
  // With 2/7 for 0.286, as k = 1.4 has it, the two differ by less than 0.1 %.
  test.each([20, 50, 150, 210, 300])('%d bar gauge', (p_bar) => {
    const P = p_bar * 1e5 + 101_325;
    const { pcc2_J } = storedEnergy(vessel, charged(p_bar)).charged;
    const r = 101_325 / P;
    expect(relativeError(pcc2_J, 2.5 * P * 0.005 * (1 - r ** 0.286))).toBeLessThan(1e-3);
    expect(relativeError(pcc2_J, 2.5 * P * 0.005 * (1 - r ** (2 / 7)))).toBeLessThan(1e-13);
  });

  test('TNT: 4 266 920 J/kg, from memory', () => {
    const { energy_J, tnt, tntFactor } = storedEnergy(vessel, charged(150));
    expect(tnt.kilograms).toBeCloseTo(energy_J / 4_266_920, 14);
    expect(tntFactor.joulesPerKilogram).toBe(4_266_920);
    expect(tntFactor.source).toContain('from memory');
  });
});

describe('the real gas', () => {
  // Source: CoolProp 8.0.0, as in tests/reference/README.md. From 20 bar to 500 bar, of which most end in two phases.
  const rows = numberRows('expansion.csv', [
    'T1_C',
    'p1_abs_bar',
    'p2_abs_Pa',
    'rho1_mol_m3',
    'rho2_mol_m3',
    'u1_less_u2_J_mol',
  ]).filter((row) => row.p2_abs_Pa === 101_325);
  test('energy, and work on the atmosphere, to 1e-9', () => {
    expect(rows).toHaveLength(36);
    for (const row of rows) {
      const { realGas } = storedEnergy(vessel, charged(row.p1_abs_bar - 1.01325, row.T1_C)).charged;
      const n = 0.005 * row.rho1_mol_m3;
      expect(relativeError(realGas.energy_J, n * row.u1_less_u2_J_mol)).toBeLessThan(1e-9);
      const pushed = 101_325 * n * (1 / row.rho2_mol_m3 - 1 / row.rho1_mol_m3);
      expect(relativeError(realGas.onAtmosphere_J, pushed)).toBeLessThan(1e-9);
      expect(realGas.lessAtmosphere_J).toBeCloseTo(realGas.energy_J - realGas.onAtmosphere_J, 9);
    }
  });

  // Isentropic expansion in the ideal-gas limit: with cp = 7/2 R it is the expression of ASME PCC-2.
  test('is the expression in the ideal-gas limit', () => {
    const { pcc2_J, realGas } = storedEnergy({ ...vessel, gas: idealNitrogen }, charged(20)).charged;
    expect(relativeError(realGas.energy_J, pcc2_J)).toBeLessThan(1e-3);
    const low = storedEnergy(vessel, charged(0.1)).charged;
    expect(relativeError(low.realGas.energy_J, low.pcc2_J)).toBeLessThan(2e-3);
  });

  test('governs where it is the larger: hot gas, whose heat capacity is above 5/2 R', () => {
    const hot = storedEnergy(vessel, charged(20, 400)).charged;
    expect(hot.realGas.energy_J).toBeGreaterThan(hot.pcc2_J);
    expect(hot).toMatchObject({ governs: 'real gas', energy_J: hot.realGas.energy_J });
    const usual = storedEnergy(vessel, charged(150)).charged;
    expect(usual).toMatchObject({ governs: 'ASME PCC-2', energy_J: usual.pcc2_J });
    expect(usual.realGas.ends.phase).toBe('liquid and vapour');
  });
});

describe('in service', () => {
  const system = { systemPressure: bar(280), temperature: celsius(50) };
  const result = storedEnergy(specWith(), charged(140), system);

  test('the amount of gas is the same, in a smaller volume', () => {
    if (result.inService === 'not asked') return expect.fail('asked');
    const rho = stateAt(nitrogen, {
      pressure: toAbsolute(bar(280), standardAtmosphere),
      temperature: celsius(50),
    }).density_mol_m3;
    expect(relativeError(rho * result.inService.volume.cubicMetres, result.amount.moles)).toBeLessThan(1e-13);
    expect(result.inService.volume.cubicMetres).toBeLessThan(0.005);
    const end = isentropicExpansion(
      nitrogen,
      { pressure: toAbsolute(bar(280), standardAtmosphere), temperature: celsius(50) },
      standardAtmosphere,
    );
    expect(relativeError(result.inService.realGas.energy_J, result.amount.moles * end.work_J_mol)).toBeLessThan(1e-12);
  });

  test('the worse of both leads', () => {
    expect(result.worse).toBe('in service');
    expect(result.energy_J).toBe(result.inService === 'not asked' ? 0 : result.inService.energy_J);
    expect(storedEnergy(specWith(), charged(140)).inService).toBe('not asked');
    const low = storedEnergy(specWith(), charged(140), { systemPressure: bar(100), temperature: celsius(-20) });
    expect(low.worse).toBe('charged');
    expect(low.energy_J).toBe(low.charged.energy_J);
  });
});

test('energy grows with pressure, and with volume in proportion', () => {
  fc.assert(
    fc.property(evenly(5, 400), evenly(0, 60), (p, t) => {
      const one = storedEnergy(vessel, charged(p, t));
      const more = storedEnergy(vessel, charged(p + 1, t));
      expect(more.charged.pcc2_J).toBeGreaterThan(one.charged.pcc2_J);
      expect(more.charged.realGas.energy_J).toBeGreaterThan(one.charged.realGas.energy_J);
      const twice = storedEnergy({ ...vessel, gasVolume: volume(10, 'L') }, charged(p, t));
      expect(relativeError(twice.energy_J, 2 * one.energy_J)).toBeLessThan(1e-12);
    }),
    { numRuns: 60 },
  );
});

test('the cautions: no safe distance follows, and codes decide', () => {
  const { cautions } = storedEnergy(vessel, charged(150));
  expect(cautions.map(({ code }) => code)).toEqual(['stored energy', 'stored pressure', 'maker decides']);
  expect(new Set(cautions.map(({ cause }) => cause))).toEqual(new Set(['stored energy']));
});

describe('what is refused', () => {
  test.each([
    [
      'an empty space',
      { ...vessel, gasVolume: volume(0, 'L') },
      charged(150),
      undefined,
      'vessel.gasVolume',
      'not positive',
    ],
    ['no gas', { gasVolume: volume(5, 'L') }, charged(150), undefined, 'vessel.gas', 'wrong kind'],
    ['no pressure', vessel, charged(0), undefined, 'charged.pressure', 'not positive'],
    ['no reading', vessel, null, undefined, 'charged.temperature', 'wrong kind'],
    [
      'a system without pressure',
      vessel,
      charged(150),
      { systemPressure: bar(0), temperature: celsius(20) },
      'inService.systemPressure',
      'not positive',
    ],
    [
      'a system without temperature',
      vessel,
      charged(150),
      { systemPressure: bar(10) },
      'inService.temperature',
      'wrong kind',
    ],
    [
      'too much',
      vessel,
      { ...charged(2500), temperature: temperature(20, '°C') },
      undefined,
      'charged.pressure',
      'outside the model',
    ],
  ])('%s', (_, of, read, system, path, code) => {
    expect(problemOf(() => storedEnergy(of as never, read as never, system as never))).toMatchObject({ path, code });
  });
});
