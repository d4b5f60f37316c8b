/*! @license exp, log and sin after fdlibm 5.3, e_exp.c, e_log.c, k_sin.c, k_cos.c and e_rem_pio2.c.
 * Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
 * Permission to use, copy, modify, and distribute this software is freely granted, provided that this notice is preserved. */

// Exponential, logarithm and sine by + − × ÷ alone, so that every engine gives the same bits: the ones built into engines
// differ in the last place in a tenth of the arguments, and a report would be judged differently by another browser. All
// are within one unit in the last place of the exact value.

// Tuples for the compiler, which cannot know how long a typed array is.
const bits = /* @__PURE__ */ new Float64Array(1) as Float64Array & { 0: number };
const words = /* @__PURE__ */ wordsOf(bits);
/** Where the word with sign and exponent stands: last on all machines of today. */
const HIGH = /* @__PURE__ */ highWord();
const LOW = HIGH === 1 ? 0 : 1;

const LN2_HI = 6.9314718036912381649e-1;
const LN2_LO = 1.90821492927058770002e-10;
const INVERSE_LN2 = 1.4426950408889634;

function wordsOf({ buffer }: Float64Array): Uint32Array & { 0: number; 1: number } {
  return new Uint32Array(buffer) as Uint32Array & { 0: number; 1: number };
}

function highWord(): 0 | 1 {
  return new Uint8Array(new Uint16Array([1]).buffer)[0] === 1 ? 1 : 0;
}

/** e to the power of x. */
export function exp(x: number): number {
  if (x > 709.782712893384) return Infinity;
  if (x < -745.1332191019411) return 0;
  let hi = x;
  let lo = 0;
  let k = 0;
  const size = x < 0 ? -x : x;
  if (size > 0.34657359027997264) {
    // x = k ln 2 + r with |r| up to half of ln 2
    k = size < 1.0397207708399179 ? (x < 0 ? -1 : 1) : (INVERSE_LN2 * x + (x < 0 ? -0.5 : 0.5)) | 0;
    hi = x - k * LN2_HI;
    lo = k * LN2_LO;
  } else if (size < 3.725290298461914e-9) return 1 + x;
  const r = hi - lo;
  const t = r * r;
  const c =
    r -
    t *
      (1.66666666666666019037e-1 +
        t *
          (-2.77777777770155933842e-3 +
            t * (6.61375632143793436117e-5 + t * (-1.6533902205465251539e-6 + t * 4.13813679705723846039e-8))));
  if (k === 0) return 1 - ((r * c) / (c - 2) - r);
  const y = 1 - (lo - (r * c) / (2 - c) - hi);
  if (k < -1021) return y * powerOfTwo(k + 1000) * 9.332636185032189e-302; // 2 to the −1000: into the subnormals
  return k === 1024 ? y * 2 * powerOfTwo(1023) : y * powerOfTwo(k);
}

function powerOfTwo(k: number): number {
  words[LOW] = 0;
  words[HIGH] = (1023 + k) << 20;
  return bits[0];
}

/** The natural logarithm of x; NaN below zero, −Infinity at zero. */
export function log(x: number): number {
  if (!(x > 0)) return x === 0 ? -Infinity : NaN;
  if (x === Infinity) return x;
  if (x < 2.2250738585072014e-308) return log(x * 18014398509481984) - 54 * LN2_LO - 54 * LN2_HI; // subnormal
  bits[0] = x;
  let h = words[HIGH];
  let k = (h >> 20) - 1023;
  h &= 0xfffff;
  const up = (h + 0x95f64) & 0x100000;
  words[HIGH] = h | (up ^ 0x3ff00000); // x = 2^k (1 + f) with 1 + f between the roots of 1/2 and 2
  k += up >> 20;
  const f = bits[0] - 1;
  if ((0xfffff & (2 + h)) < 3) {
    if (f === 0) return k === 0 ? 0 : k * LN2_HI + k * LN2_LO;
    const R = f * f * (0.5 - 0.3333333333333333 * f);
    return k === 0 ? f - R : k * LN2_HI - (R - k * LN2_LO - f);
  }
  const s = f / (2 + f);
  const z = s * s;
  const w = z * z;
  const even = w * (3.999999999940941908e-1 + w * (2.222219843214978396e-1 + w * 1.531383769920937332e-1));
  const odd =
    z *
    (6.66666666666673513e-1 +
      w * (2.857142874366239149e-1 + w * (1.818357216161805012e-1 + w * 1.479819860511658591e-1)));
  const R = odd + even;
  if (((h - 0x6147a) | (0x6b851 - h)) > 0) {
    const half = 0.5 * f * f;
    return k === 0 ? f - (half - s * (half + R)) : k * LN2_HI - (half - (s * (half + R) + k * LN2_LO) - f);
  }
  return k === 0 ? f - s * (f - R) : k * LN2_HI - (s * (f - R) - k * LN2_LO - f);
}

// π/2 in three parts, the first two of 33 bits: their products with a whole number below 2^20 are exact.
const HALF_PI_1 = 1.57079632673412561417;
const HALF_PI_2 = 6.0771005063039659766e-11;
const HALF_PI_3 = 2.02226624879595063154e-21;
const TWO_BY_PI = 6.36619772367581382433e-1;
/** Largest size of an angle that {@link sin} takes, rad: beyond it π/2 would need more parts. */
const MOST_ANGLE = 800_000;

/** The sine of x, which is in rad; NaN beyond 800 000 either way. */
export function sin(x: number): number {
  if (!(x >= -MOST_ANGLE && x <= MOST_ANGLE)) return NaN;
  const quarters = Math.round(x * TWO_BY_PI);
  // x = quarters π/2 + (high + low), with |high| up to π/4
  const first = x - quarters * HALF_PI_1;
  const second = quarters * HALF_PI_2;
  const r = first - second;
  const rest = quarters * HALF_PI_3 - (first - r - second);
  const high = r - rest;
  const low = r - high - rest;
  switch (quarters & 3) {
    case 0:
      return sineOf(high, low);
    case 1:
      return cosineOf(high, low);
    case 2:
      return -sineOf(high, low);
    default:
      return -cosineOf(high, low);
  }
}

/** sin(x + y), |x| up to π/4 and y its tail. */
function sineOf(x: number, y: number): number {
  const z = x * x;
  const v = z * x;
  const r =
    8.33333333332248946124e-3 +
    z *
      (-1.98412698298579493134e-4 +
        z * (2.75573137070700676789e-6 + z * (-2.50507602534068634195e-8 + z * 1.58969099521155010221e-10)));
  return x - (z * (0.5 * y - v * r) - y + v * 1.66666666666666324348e-1);
}

/** cos(x + y), |x| up to π/4 and y its tail. */
function cosineOf(x: number, y: number): number {
  const z = x * x;
  const r =
    z *
    (4.16666666666666019037e-2 +
      z *
        (-1.38888888888741095749e-3 +
          z *
            (2.48015872894767294178e-5 +
              z * (-2.75573143513906633035e-7 + z * (2.0875723212981748279e-9 + z * -1.13596475577881948265e-11)))));
  const half = 0.5 * z;
  const w = 1 - half;
  return w + (1 - w - half + (z * r - x * y));
}
