// Every check against something outside the project, computed from the data that the tests use. docs/validation.md is
// printed from it, and a test holds each row within its allowance.
import type { Step } from './check.js';
import { audits } from './audit.js';
import { charging } from './charging.js';
import { gas } from './gas.js';
import { safety } from './safety.js';
import { cubic, targets } from './target.js';
import { uncertainties } from './uncertainty.js';
import { units } from './units.js';

export const STEPS: readonly Step[] = [
  units(),
  gas(),
  targets(),
  cubic(),
  audits(),
  uncertainties(),
  charging(),
  safety(),
];
