import { fail, quote } from '../basis/fault.js';
import { notADate, notANumber, notPositive } from '../basis/problem.js';
import { need, wrongKind } from '../quantity/kind.js';
import { isObject } from '../target/table.js';
import { all, needBetween, needOfInstrument, needPositive, type Difference } from './checks.js';

/** What a calibration certificate states of an instrument at, or near, the value that was read. */
export interface Certificate<Difference> {
  /** To be added to what the instrument shows; minus the error of indication. */
  readonly correction: Difference;
  /** As printed, with its coverage factor. More than zero. */
  readonly expandedUncertainty: Difference;
  /** The k beside the expanded uncertainty, usually 2. More than zero. */
  readonly coverageFactor: number;
  /** Last day on which the certificate holds, as an RFC 3339 date. Past it there is a caution. */
  readonly due: string;
}

// No certificate states a factor outside these.
const [LEAST_FACTOR, MOST_FACTOR] = [0.1, 100];

export function needCertificate(certificate: Certificate<Difference>, kind: Difference['kind']): void {
  if (!isObject(certificate))
    wrongKind('certificate: correction, expandedUncertainty, coverageFactor and due', certificate, '');
  const { correction, expandedUncertainty, coverageFactor, due } = certificate;
  all(
    [
      'correction',
      () => {
        need<string>(kind, correction, '');
        needOfInstrument(correction);
      },
    ],
    ['expandedUncertainty', () => needPositive(kind, expandedUncertainty)],
    [
      'coverageFactor',
      () => {
        if (!Number.isFinite(coverageFactor)) fail(notANumber, '', quote(coverageFactor));
        if (!(coverageFactor > 0)) fail(notPositive, '', String(coverageFactor));
        needBetween(coverageFactor, LEAST_FACTOR, MOST_FACTOR, '');
      },
    ],
    ['due', () => needDate(due)],
  );
}

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Refuses what is no day of the calendar, written as RFC 3339 has it. */
export function needDate(date: string): void {
  const parts = typeof date === 'string' ? /^(\d{4})-(\d\d)-(\d\d)$/.exec(date) : null;
  const [year, month, day] = [Number(parts?.[1]), Number(parts?.[2]), Number(parts?.[3])];
  const leap = month === 2 && year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 1 : 0;
  if (parts !== null && day >= 1 && day <= (DAYS[month - 1] ?? 0) + leap) return;
  fail(notADate, '', quote(date));
}
