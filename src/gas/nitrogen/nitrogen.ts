import { gasModel, type GasModel } from '../model.js';
import { M, R, SPAN_2000 } from './coefficients.js';
import { NITROGEN_KERNEL } from './kernel.js';

/**
 * Nitrogen by the reference equation of state of Span et al. (2000).
 *
 * Valid here from 64 K to 1000 K and to 200 MPa absolute, for vapour up to saturation and for supercritical fluid; liquid
 * and two phases are recognised and refused by name. The equation itself reaches from the triple point (63.151 K) to
 * 2200 MPa; the paper's uncertainty of density is 0.01 % for 270–350 K below 12 MPa and 0.02 % for 240–523 K below 30 MPa,
 * and nothing as tight elsewhere.
 *
 * @example
 * ```ts
 * nitrogen.validity.temperature_K; // => [64, 1000]
 * ```
 */
export const nitrogen: GasModel = /* @__PURE__ */ gasModel({
  id: 'nitrogen-span-2000',
  gas: 'nitrogen',
  source: SPAN_2000,
  molarMass_kg_mol: M,
  gasConstant_J_molK: R,
  validity: {
    temperature_K: [64, 1000],
    pressure_Pa: [0, 200e6],
    reason:
      'the triple point is at 63.151 K; above 1000 K the equation has no data; 200 MPa is far above any accumulator and ' +
      'below the melting curve',
  },
  uncertainty: [
    { temperature_K: [270, 350], pressure_Pa: [0, 12e6], density: 1e-4 },
    { temperature_K: [240, 523], pressure_Pa: [0, 30e6], density: 2e-4 },
  ],
  '~kernel': NITROGEN_KERNEL,
});
