// Filling from a supply that is meant to reach: each way has its end, or the test fails.
import { filling, type Filled, type Filling } from 'isochore';

type Ends = { readonly [Way in keyof Filling]: Filled };

export function fills(...given: Parameters<typeof filling>): Ends {
  const { isothermal, adiabatic, inTime } = filling(...given);
  const ends = { isothermal: reached(isothermal), adiabatic: reached(adiabatic) };
  return inTime === undefined ? ends : { ...ends, inTime: reached(inTime) };
}

function reached(end: Filling['adiabatic']): Filled {
  if (end.outcome !== 'reached') throw new Error(JSON.stringify(end));
  return end;
}
