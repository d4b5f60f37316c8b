import { ratings, type ChargingLine, type RatingCode } from 'isochore';
import { describe, expect, test } from 'vitest';
import { bar } from '../support/accumulator.js';
import { neighbour } from '../support/exact.js';
import { problemOf } from '../support/problem.js';
import { gauge } from 'isochore';

const LINE: ChargingLine = {
  bottle: { rating: bar(300), pressure: bar(220) },
  regulator: { inlet: bar(300), outlet: bar(300), setTo: bar(154) },
  relief: 'none',
  hose: { rating: bar(400) },
  gauge: { fullScale: bar(250) },
  vessel: { allowable: bar(230), pressure: bar(154) },
};
const line = (changed: Partial<ChargingLine> = {}): ChargingLine => ({ ...LINE, ...changed });
const found = (changed: Partial<ChargingLine>): [RatingCode, string][] =>
  ratings(line(changed)).problems.map(({ code, part }) => [code, part]);

describe('a line whose parts all take what the bottle has', () => {
  test('nothing is found, and that is no approval', () => {
    const result = ratings(line());
    expect(result).toMatchObject({ outcome: 'nothing found', problems: [], worstCase: bar(220) });
    expect(result.cautions.map(({ code }) => code)).toEqual(['stored pressure', 'maker decides']);
  });
  test('the weakest part: three quarters of the scale of the gauge, EN 837-2 from memory', () => {
    expect(ratings(line()).weakest).toEqual({ part: 'gauge', takes: bar(187.5) });
    expect(ratings(line({ gauge: { fullScale: bar(400) } })).weakest).toEqual({ part: 'vessel', takes: bar(230) });
    expect(ratings(line({ hose: { rating: bar(150) } })).weakest).toEqual({ part: 'hose', takes: bar(150) });
    const weak = { inlet: bar(300), outlet: bar(160), setTo: bar(154) };
    expect(ratings(line({ regulator: weak })).weakest).toEqual({ part: 'regulator outlet', takes: bar(160) });
  });
});

describe('problems, each with the part that limits', () => {
  const regulator = { inlet: bar(300), outlet: bar(300), setTo: bar(154) };
  test.each<[string, Partial<ChargingLine>, [RatingCode, string][]]>([
    [
      'a bottle filled above its stamp',
      { bottle: { rating: bar(200), pressure: bar(220) } },
      [['above its rating', 'bottle']],
    ],
    [
      'the inlet of the regulator',
      { regulator: { ...regulator, inlet: bar(200) } },
      [['above its rating', 'regulator inlet']],
    ],
    [
      'its outlet, as set',
      { regulator: { ...regulator, outlet: bar(150) } },
      [['above its rating', 'regulator outlet']],
    ],
    [
      'its outlet, if it passes',
      { regulator: { ...regulator, outlet: bar(200) } },
      [['above its rating if the pressure is not reduced', 'regulator outlet']],
    ],
    [
      'set too low',
      { regulator: { ...regulator, setTo: bar(150) } },
      [['regulator set below the pressure wanted', 'regulator outlet']],
    ],
    ['the hose', { hose: { rating: bar(150) } }, [['above its rating', 'hose']]],
    [
      'the hose, if the regulator passes',
      { hose: { rating: bar(210) } },
      [['above its rating if the pressure is not reduced', 'hose']],
    ],
    ['the gauge, off its scale', { gauge: { fullScale: bar(150) } }, [['above its rating', 'gauge']]],
    [
      'the gauge, above three quarters and off its scale if the regulator passes',
      { gauge: { fullScale: bar(200) } },
      [
        ['above its rating if the pressure is not reduced', 'gauge'],
        ['above three quarters of its scale', 'gauge'],
      ],
    ],
    [
      'the vessel, as set',
      { regulator: { ...regulator, setTo: bar(240) }, gauge: { fullScale: bar(400) } },
      [['above its rating', 'vessel']],
    ],
    [
      'the vessel, if the regulator passes',
      { vessel: { allowable: bar(210), pressure: bar(154) } },
      [['above its rating if the pressure is not reduced', 'vessel']],
    ],
    [
      'a relief valve too low',
      { relief: { opens: bar(150) } },
      [['relief valve opens below the pressure wanted', 'vessel']],
    ],
    [
      'by hand, the bottle on the hose',
      { regulator: 'none', hose: { rating: bar(210) } },
      [['above its rating', 'hose']],
    ],
  ])('%s', (_, changed, problems) => {
    expect(found(changed)).toEqual(problems);
    expect(ratings(line(changed)).outcome).toBe('problems found');
  });

  test('a relief valve protects what takes more than it', () => {
    const vessel = { allowable: bar(210), pressure: bar(154) };
    expect(found({ vessel, relief: { opens: bar(210) } })).toEqual([]);
    expect(found({ vessel, relief: { opens: gauge(neighbour(21_000_000, 1), 'Pa') } })).toHaveLength(1);
    expect(ratings(line({ relief: { opens: bar(205) } })).worstCase).toEqual(bar(205));
  });

  test('a rating is allowed to be reached', () => {
    const bottle = { rating: bar(220), pressure: bar(220) };
    expect(found({ bottle, relief: { opens: bar(154) }, hose: { rating: bar(154) } })).toEqual([]);
  });

  test('by hand nothing but the hand closes the bottle', () => {
    const vessel = { allowable: bar(210), pressure: bar(154) };
    expect(found({ regulator: 'none', vessel })).toEqual([
      ['above its rating if the pressure is not reduced', 'vessel'],
    ]);
  });

  test('three quarters of the scale are allowed, one bit more is not', () => {
    const vessel = (pascals: number) => ({ allowable: bar(230), pressure: gauge(pascals, 'Pa') });
    const set = { ...regulator, setTo: bar(200) };
    expect(found({ regulator: set, vessel: vessel(18_750_000) })).toEqual([]);
    expect(found({ regulator: set, vessel: vessel(neighbour(18_750_000, 1)) })).toEqual([
      ['above three quarters of its scale', 'gauge'],
    ]);
  });

  test('name limit and pressure, and carry the caution', () => {
    const { problems, cautions } = ratings(line({ hose: { rating: bar(150) } }));
    expect(problems).toEqual([{ code: 'above its rating', part: 'hose', limit: bar(150), pressure: bar(154) }]);
    expect(cautions.map(({ code }) => code)).toContain('rating too low');
  });
});

describe('what is refused', () => {
  test.each([
    ['no line', null, '', 'wrong kind'],
    ['a part left out', { ...LINE, hose: undefined }, 'hose', 'wrong kind'],
    ['another word', line({ regulator: 'no' as never }), 'regulator', 'unknown word'],
    ['a rating of zero', line({ hose: { rating: bar(0) } }), 'hose.rating', 'not positive'],
    ['a bare number', line({ gauge: { fullScale: 250 as never } }), 'gauge.fullScale', 'wrong kind'],
    [
      'half a regulator',
      line({ regulator: { inlet: bar(1), outlet: bar(1) } as never }),
      'regulator.setTo',
      'wrong kind',
    ],
  ])('%s', (_, given, path, code) => {
    expect(problemOf(() => ratings(given as never))).toMatchObject({ path, code });
  });
});
