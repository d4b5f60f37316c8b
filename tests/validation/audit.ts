// A maker's table found out: lines of other programs, rounded as a manual prints them, audited.
import { idealNitrogen, nitrogen, type GasModel } from 'isochore';
import { numberRows } from '../support/reference.js';
import { auditOf, fitBy, printed } from '../target/audit-tables.js';
import type { Check, Step } from './check.js';

const REFERENCE_C = 20;
const STEP_bar = 0.5;
const BY = [
  ['p_gauge_span2000_bar', 'reference equation', nitrogen],
  ['p_gauge_ideal_bar', 'ideal-gas law', idealNitrogen],
] as const satisfies readonly (readonly [string, string, GasModel])[];

export function audits(): Step {
  const lines = numberRows('isochore.csv', ['p_ref_gauge_bar', 'T_ref_C', 'T_C', BY[0][0], BY[1][0]]);
  const checks = BY.flatMap(([column, name, model]) =>
    [100, 140, 200, 300].map((p_ref): Check => {
      const rows = lines.filter((row) => row.p_ref_gauge_bar === p_ref && row.T_ref_C === REFERENCE_C);
      const audited = auditOf({
        t_C: rows.map((row) => row.T_C),
        p_bar: rows.map((row) => printed(row[column], STEP_bar)),
        step: STEP_bar,
      });
      const { lower, best, upper } = fitBy(audited, model, 'every cell').referencePressure;
      const text = [lower, best, upper].map(({ pascals }) => (pascals / 1e5).toFixed(2));
      return {
        what: `${name}, ${p_ref} bar at ${REFERENCE_C} °C: ${audited.outcome}`,
        expected: `${p_ref} bar`,
        obtained: `${text[1] ?? ''} bar, from ${text[0] ?? ''} to ${text[2] ?? ''}`,
        deviation: best.pascals / 1e5 - p_ref,
        allowance: STEP_bar / 2,
        unit: 'bar',
      };
    }),
  );
  return {
    title: "A maker's table audited",
    groups: [
      {
        title: 'Reference pressure found from a rounded table',
        source:
          'CoolProp 6.7.0 (Span et al. 2000) and the ideal-gas law: `isochore.csv`, −20 °C to 80 °C, rounded to half a ' +
          'bar. Each must be found to be that model alone; the allowance is half a step.',
        checks,
      },
    ],
  };
}
