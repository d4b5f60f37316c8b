// The words for what is wrong with a stored report, in a file that needs no zod: a language has them without a report.
import { LIBRARY_VERSION } from './version.js';

export const WHY = {
  'not a report': 'this is no report of the shape that this library writes',
  'digest does not match': 'the digest does not match: the report was altered after it was made',
  'other schema version': 'the report is of another schema version than this library writes',
  'other library version': `another version of the library judged; this is ${LIBRARY_VERSION}`,
  'other model': 'another gas model was used',
  'no input': 'the report does not carry its round, so that it cannot be judged again',
  'another result': 'the same input gives another result with the same version and model: a forged digest, or a defect',
} as const;
