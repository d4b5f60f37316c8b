// Numbers about what can hurt as plain JSON data: pressures in the unit of the gauge of the first that follows.
import type { CautionCode } from '../basis/caution.js';
import type { Amount } from '../quantity/kind.js';
import type { PressureUnit } from '../quantity/unit.js';
import type { Hot } from '../safety/hot.js';
import type { LeakShown } from '../safety/leak.js';
import type { Purged } from '../safety/purge.js';
import type { Ratings } from '../safety/ratings.js';
import type { StoredEnergy } from '../safety/stored-energy.js';
import { differenceJson, gaugeJson, temperatureDifferenceJson, temperatureJson } from './quantities.js';
import type { SafetyJson } from './safety-shape.js';
import { gasJson } from './write.js';

export function codesOf(
  found: { readonly cautions: readonly { readonly code: CautionCode }[] } | undefined,
): CautionCode[] {
  return found === undefined ? [] : found.cautions.map(({ code }) => code);
}

type BySpecification = SafetyJson['specifications'][number];

export function hotJson(hot: Hot, unit: PressureUnit): NonNullable<BySpecification['hot']> {
  const { outcome, pressure, allowable, belowAllowable, mostNow } = hot;
  return {
    outcome,
    pressure: gaugeJson(pressure, unit),
    allowable: gaugeJson(allowable, unit),
    belowAllowable: differenceJson(belowAllowable, unit),
    mostNow: { pressure: gaugeJson(mostNow.pressure, unit), temperature: temperatureJson(mostNow.temperature, '°C') },
    cautions: codesOf(hot),
  };
}

export function energyJson(found: StoredEnergy): NonNullable<BySpecification['energy']> {
  const { charged, inService, worse, tnt } = found;
  const of = worse === 'in service' && inService !== 'not asked' ? inService : charged;
  return {
    charged: { value: charged.energy_J, unit: 'J' },
    ...(inService === 'not asked' ? {} : { inService: { value: inService.energy_J, unit: 'J' } }),
    worse,
    governs: of.governs,
    tnt: { value: tnt.kilograms, unit: 'kg' },
    cautions: codesOf(found),
  };
}

export function ratingsJson(found: Ratings, unit: PressureUnit): NonNullable<BySpecification['ratings']> {
  return {
    outcome: found.outcome,
    problems: found.problems.map(({ code, part, limit, pressure }) => ({
      code,
      part,
      limit: gaugeJson(limit, unit),
      pressure: gaugeJson(pressure, unit),
    })),
    cautions: codesOf(found),
  };
}

export function leakJson(found: LeakShown, unit: PressureUnit): NonNullable<BySpecification['leakTest']> {
  const { lossPerYear, bubbles, gauge } = found;
  return {
    lossPerYear: molesJson(lossPerYear),
    bubbles: {
      against: bubbles.against,
      minutesApart: bubbles.minutesApart,
      smallestPerYear: molesJson(bubbles.smallestPerYear),
    },
    gauge: {
      against: gauge.against,
      fall: differenceJson(gauge.fall, unit),
      sameAsCoolingBy: temperatureDifferenceJson(gauge.sameAsCoolingBy, 'K'),
      smallestPerYear: molesJson(gauge.smallestPerYear),
    },
    cautions: codesOf(found),
  };
}

export function purgeJson(found: Purged): NonNullable<BySpecification['purge']> {
  const { outcome, fillings, left, gas } = found;
  return { outcome, fillings, left: [...left], gas: gasJson(gas), cautions: codesOf(found) };
}

function molesJson({ moles }: Amount): { value: number; unit: 'mol' } {
  return { value: moles, unit: 'mol' };
}
