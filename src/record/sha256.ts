// SHA-256 (FIPS 180-4) of a text in UTF-8: synchronous, because a report is made in one call, and browsers offer only an
// asynchronous one. Symbols as in the standard.

// FIPS 180-4, 4.2.2: the first 32 bits of the fractional parts of the cube roots of the first 64 primes.
// prettier-ignore
const K = /* @__PURE__ */ Int32Array.of(
  0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
  0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
  0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
  0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
  0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
  0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
  0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
  0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2,
);

/** Bytes of a block. */
const BLOCK = 64;
/** Bytes that are gathered before their blocks are worked off: long enough to stay in one loop, and in the cache. */
const GATHERED = 256 * BLOCK;
/** Most bytes that one code point takes in UTF-8. */
const POINT = 4;

/** A hash that is fed piece by piece: a report may be longer than the longest text that an engine can hold. */
export interface Hash {
  /** Takes a well-formed text; no piece may end between the two halves of a surrogate pair. */
  readonly take: (text: string) => void;
  /** The hash of all that was taken, in lower-case hexadecimal digits. To be asked once. */
  readonly hex: () => string;
}

export function startSha256(): Hash {
  // FIPS 180-4, 5.3.3: of the square roots of the first eight primes.
  // prettier-ignore
  const H = Int32Array.of(
    0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19,
  );
  const W = new Int32Array(64);
  const bytes = new Uint8Array(GATHERED);
  const view = new DataView(bytes.buffer);
  let filled = 0;
  let worked = 0;

  /** Works off the whole blocks, and keeps what is left of the last one. */
  const work = (): void => {
    const whole = filled - (filled % BLOCK);
    for (let i = 0; i < whole; i += BLOCK) compress(H, W, view, i);
    bytes.copyWithin(0, whole, filled);
    filled -= whole;
    worked += whole;
  };
  const take = (text: string): void => {
    const { length } = text;
    let n = filled; // in a local, which an engine keeps in a register
    for (let i = 0; i < length; i += 1) {
      if (n > GATHERED - POINT) {
        filled = n;
        work();
        n = filled;
      }
      const unit = text.charCodeAt(i);
      if (unit < 0x80) bytes[n++] = unit;
      else if (unit < 0x800) {
        bytes[n++] = 0xc0 | (unit >> 6);
        bytes[n++] = 0x80 | (unit & 0x3f);
      } else if (unit < 0xd800 || unit > 0xdfff) {
        bytes[n++] = 0xe0 | (unit >> 12);
        bytes[n++] = 0x80 | ((unit >> 6) & 0x3f);
        bytes[n++] = 0x80 | (unit & 0x3f);
      } else {
        const point = text.codePointAt(i) ?? 0;
        i += 1;
        bytes[n++] = 0xf0 | (point >> 18);
        bytes[n++] = 0x80 | ((point >> 12) & 0x3f);
        bytes[n++] = 0x80 | ((point >> 6) & 0x3f);
        bytes[n++] = 0x80 | (point & 0x3f);
      }
    }
    filled = n;
  };
  const hex = (): string => {
    work();
    // 5.1.1: a bit, zeros, and the length in bits as 64 bits; bytes · 8 needs more than 32 of them.
    const length = worked + filled;
    const end = filled < BLOCK - 8 ? BLOCK : 2 * BLOCK;
    bytes.fill(0, filled, end);
    bytes[filled] = 0x80;
    view.setUint32(end - 8, Math.floor(length / 0x2000_0000));
    view.setUint32(end - 4, length * 8);
    filled = end;
    work();
    return Array.from(H, (word) => (word >>> 0).toString(16).padStart(8, '0')).join('');
  };
  return { take, hex };
}

/** FIPS 180-4, 6.2.2, of the block that begins at a byte. Sums are cut to 32 bits early: that is what engines are fast at. */
function compress(H: Int32Array, W: Int32Array, view: DataView, start: number): void {
  for (let t = 0; t < 16; t += 1) W[t] = view.getInt32(start + 4 * t);
  for (let t = 16; t < 64; t += 1) {
    const x = at(W, t - 15);
    const y = at(W, t - 2);
    const s0 = rotr(x, 7) ^ rotr(x, 18) ^ (x >>> 3);
    const s1 = rotr(y, 17) ^ rotr(y, 19) ^ (y >>> 10);
    W[t] = ((s1 + at(W, t - 7)) | 0) + ((s0 + at(W, t - 16)) | 0);
  }
  let a = at(H, 0);
  let b = at(H, 1);
  let c = at(H, 2);
  let d = at(H, 3);
  let e = at(H, 4);
  let f = at(H, 5);
  let g = at(H, 6);
  let h = at(H, 7);
  for (let t = 0; t < 64; t += 1) {
    const S1 = rotr(e, 6) ^ rotr(e, 11) ^ rotr(e, 25);
    const T1 = (((h + S1) | 0) + ((e & f) ^ (~e & g)) + ((at(K, t) + at(W, t)) | 0)) | 0;
    const S0 = rotr(a, 2) ^ rotr(a, 13) ^ rotr(a, 22);
    const T2 = (S0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    h = g;
    g = f;
    f = e;
    e = (d + T1) | 0;
    d = c;
    c = b;
    b = a;
    a = (T1 + T2) | 0;
  }
  // Stored as 32 bits, so that what is beyond them is lost as it should be.
  H[0] = at(H, 0) + a;
  H[1] = at(H, 1) + b;
  H[2] = at(H, 2) + c;
  H[3] = at(H, 3) + d;
  H[4] = at(H, 4) + e;
  H[5] = at(H, 5) + f;
  H[6] = at(H, 6) + g;
  H[7] = at(H, 7) + h;
}

function at(words: Int32Array, i: number): number {
  return words[i] ?? 0;
}

function rotr(x: number, n: number): number {
  return (x >>> n) | (x << (32 - n));
}
