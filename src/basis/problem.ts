// The words of everything that can be wrong with an input, one entry a code: what is accepted in that place, and what to
// do about it. {name} is filled in where the problem is found. Single constants, so that a bundler keeps only those in
// use. A code is stable and has one text; the text may be reworded or translated.

/** What is said of one kind of problem. */
export interface ProblemText {
  /** What is accepted in that place, with bounds and their unit. */
  readonly wanted: string;
  /** What to do about it. */
  readonly remedy: string;
}

/** One kind of problem: its stable code and its text. */
export interface ProblemKind extends ProblemText {
  readonly code: string;
}

// Quantities

export const wrongKind = {
  code: 'wrong kind',
  wanted: '{kind}',
  remedy: 'use {maker}',
} as const;

export const gaugeForAbsolute = {
  code: 'gauge for absolute',
  wanted: 'an absolute pressure',
  remedy: 'toAbsolute(pressure, ambient) converts it',
} as const;

export const absoluteForGauge = {
  code: 'absolute for gauge',
  wanted: 'a gauge pressure',
  remedy: 'toGauge(pressure, ambient) converts it',
} as const;

export const uncheckedCopy = {
  code: 'unchecked copy',
  wanted: '{kind}',
  remedy: 'a copy by spread, JSON or structuredClone has lost its check: readmit(copy) brings it back',
} as const;

export const uncheckedSpecification = {
  code: 'unchecked specification',
  wanted: 'a specification',
  remedy: 'a copy has lost its check: make it again with specification(given)',
} as const;

export const operatorOnQuantity = {
  code: 'operator on a quantity',
  wanted: 'a function that knows the kind',
  remedy:
    'use difference(), shift(), compare() or ratio(), and sort(compare) for a list; write() or JSON.stringify() gives a text, valueIn(quantity, unit) a bare number',
} as const;

export const notANumber = {
  code: 'not a number',
  wanted: 'a finite number',
  remedy: 'give the value as read; if there is none, leave the reading out',
} as const;

export const textForANumber = {
  code: 'text for a number',
  wanted: 'a finite number',
  remedy: 'a text goes through read(kind, text), which checks it',
} as const;

export const beyondDouble = {
  code: 'beyond double',
  wanted: 'a size that a double holds in {unit}',
  remedy: 'check the value; no such quantity exists',
} as const;

export const notADecimal = {
  code: 'not a decimal',
  wanted: 'a decimal number such as 141.3, of at most {most} characters',
  remedy: 'write digits, a decimal point (not a comma) with digits on both sides, no grouping; an exponent is allowed',
} as const;

export const notAQuantity = {
  code: 'not a quantity',
  wanted: '{form}, for {kind}',
  remedy: 'write these and nothing else, separated by spaces',
} as const;

export const unknownUnit = {
  code: 'unknown unit',
  wanted: 'one of {units}',
  remedy: 'spell the unit exactly so, without gauge or absolute in it: the basis is said separately',
} as const;

export const belowAbsoluteZero = {
  code: 'below absolute zero',
  wanted: 'at least -273.15 °C (0 K)',
  remedy: 'check the sign and the unit: °C, K or °F',
} as const;

export const belowVacuumAbsolute = {
  code: 'below vacuum',
  wanted: 'at least 0 Pa absolute',
  remedy: 'an absolute pressure counts from vacuum; if this is a gauge pressure, say so',
} as const;

export const belowVacuumGauge = {
  code: 'gauge below vacuum',
  wanted: 'at least {least} gauge (vacuum, at an ambient of {ambient} absolute)',
  remedy: 'check the sign, the unit and the ambient',
} as const;

export const notPositive = {
  code: 'not positive',
  wanted: 'more than zero',
  remedy: 'check the value, its sign and its unit; where there is none, nothing can be said in its place',
} as const;

export const negative = {
  code: 'negative',
  wanted: 'zero or more',
  remedy: 'give a size, not a signed value',
} as const;

export const ratioToZero = {
  code: 'ratio to zero',
  wanted: 'more than zero',
  remedy: 'a ratio to zero has no value',
} as const;

export const notAStep = {
  code: 'not a step',
  wanted: 'a finite number greater than zero',
  remedy: 'give the smallest division of the scale, such as 1, 0.5 or 0.1',
} as const;

export const stepTooFine = {
  code: 'step too fine',
  wanted: 'a value of fewer than 10^12 steps',
  remedy: 'check the unit of the step',
} as const;

export const unknownWord = {
  code: 'unknown word',
  wanted: '{words}',
  remedy: 'state what was decided or established, in exactly one of these words',
} as const;

export const notACopy = {
  code: 'not a copy of a quantity',
  wanted: 'the kind and the SI value of a quantity, as JSON.stringify writes it',
  remedy: 'pass what JSON.parse, structuredClone or a spread made of a quantity, with nothing added',
} as const;

// Gas

export const outsideModel = {
  code: 'outside the model',
  wanted: '{range}, where the model {model} is valid',
  remedy: 'check value and unit; the model ends there because {reason}',
} as const;

export const liquid = {
  code: 'liquid',
  wanted: 'gas: {range}',
  remedy: 'it is liquid there, or frozen: check value and unit; this library answers for gas alone',
} as const;

export const twoPhases = {
  code: 'two phases',
  wanted: 'gas: {range}',
  remedy: 'liquid and vapour stand side by side there; this library answers for gas alone',
} as const;

export const noSolution = {
  code: 'no solution',
  wanted: 'a state that the model {model} can solve',
  remedy: 'this should not happen inside the limits of the model: please report it with these numbers',
} as const;

export const noSaturation = {
  code: 'no saturation',
  wanted: 'a temperature at which the model has liquid and vapour, below {critical} K',
  remedy: 'at and above the critical temperature there is one fluid, and no boundary between liquid and vapour',
} as const;

export const noPhases = {
  code: 'model without saturation',
  wanted: 'a model that knows liquid and vapour',
  remedy: 'use nitrogen, the reference equation',
} as const;

export const notAPair = {
  code: 'not a pair of properties',
  wanted: '{pairs}',
  remedy: 'name a state by exactly two of its properties, in one of these pairs',
} as const;

export const emptySpace = {
  code: 'empty space',
  wanted: 'more than zero, from {least} on',
  remedy: 'an empty space has no state of the gas; a mass density is divided by the molar mass first',
} as const;

export const notAReferenceState = {
  code: 'not a reference state',
  wanted: 'a pressure above vacuum and a temperature above absolute zero',
  remedy: 'a volume has no size elsewhere; normalConditions is one reference state',
} as const;

// Reading

export const notMinutesAtRest = {
  code: 'not minutes at rest',
  wanted: "minutes, zero or more, or 'not known'",
  remedy: 'count from when oil or gas last moved',
} as const;

// Specification and band

export const notAmbient = {
  code: 'not an ambient pressure',
  wanted: '{least} hPa to {most} hPa absolute',
  remedy: 'give the barometer reading in its own unit (hPa and mbar are the same): about 1013 hPa at sea level',
} as const;

export const outsideTable = {
  code: 'outside the table',
  wanted: '{first} to {last}, the rows of the table',
  remedy: 'read at a temperature that the table covers, or have the specification say what holds beyond it',
} as const;

export const referenceOutsideTable = {
  code: 'reference outside the table',
  wanted: '{first} to {last}, the rows of the table',
  remedy: 'the reference temperature is one at which the table states a pressure',
} as const;

export const rowsOutOfOrder = {
  code: 'rows out of order',
  wanted: 'temperatures and pressures that both increase from row to row',
  remedy: 'sort the rows, decide what is given twice, and check this row and the one before it for a misprint',
} as const;

export const tooFewRows = {
  code: 'too few rows',
  wanted: 'two rows or more',
  remedy: 'one row is a reference point, not a table',
} as const;

export const unknownColumn = {
  code: 'unknown column',
  wanted: 'one of the columns {columns}, each named once',
  remedy: 'name the column exactly as the table does',
} as const;

export const cellsLeftOut = {
  code: 'cells left out',
  wanted: '{count}, one for each {other}',
  remedy: 'check the table for a cell left out or read twice',
} as const;

export const limitsCrossed = {
  code: 'limits crossed',
  wanted: 'limits that enclose the target',
  remedy: 'check which is the minimum and which the maximum, their units, and the tables against the manual',
} as const;

export const bandReachesZero = {
  code: 'band reaches zero',
  wanted: 'a lower limit above zero gauge',
  remedy: 'check temperature and tolerance and their units: an empty accumulator must never count as charged',
} as const;

export const notAPercentage = {
  code: 'not a percentage',
  wanted: 'a percentage above 0 and below 100',
  remedy: 'give the percentage itself: 2 for ± 2 %',
} as const;

export const bandWithoutWidth = {
  code: 'band without width',
  wanted: 'a tolerance of more than zero to at least one side',
  remedy: 'give the tolerance of the manual; no gauge can meet a band without width',
} as const;

export const notATolerance = {
  code: 'not a tolerance',
  wanted: 'plusMinus, or below and above, or plusMinusPercentOfGauge, or minimum and maximum',
  remedy: 'state the band in exactly one of these ways',
} as const;

export const nominalWithoutTable = {
  code: 'nominal without a table',
  wanted: 'a nominal point only beside a table',
  remedy: 'a specification without a table states its one point as precharge',
} as const;

export const aboveAllowable = {
  code: 'above allowable',
  wanted: 'at most the allowable pressure, {allowable} gauge',
  remedy: 'check both against the manual and the name plate; do not fill before they agree',
} as const;

export const tooManyRows = {
  code: 'too many rows',
  wanted: 'at most {most} rows',
  remedy: 'take a larger step or a smaller range',
} as const;

export const rangeBackwards = {
  code: 'range runs backwards',
  wanted: 'at least {from}, where the range begins',
  remedy: 'give the range from the lower to the higher temperature',
} as const;

export const rowsAlike = {
  code: 'rows alike',
  wanted: 'rows that differ as written',
  remedy: 'write temperatures to a finer step, or take a larger one from row to row',
} as const;

// Documents

export const missing = {
  code: 'missing',
  wanted: '{wanted}',
  remedy: 'state it; nothing is assumed in its place',
} as const;

export const basisMissing = {
  code: 'basis missing',
  wanted: '{words}',
  remedy: 'say the basis that the instrument or the manual states; it is never assumed',
} as const;

export const wrongBasis = {
  code: 'wrong basis',
  wanted: '{words}',
  remedy: 'this place takes that basis only: a reading is gauge, an ambient absolute, a tolerance a difference',
} as const;

export const unknownField = {
  code: 'unknown field',
  wanted: 'no field of this name here',
  remedy: 'check its spelling and place; nothing is read past a field that is not understood',
} as const;

export const forbiddenKey = {
  code: 'forbidden key',
  wanted: 'no field of this name anywhere',
  remedy: 'check what wrote it: this name means something else to JavaScript',
} as const;

export const unknownVersion = {
  code: 'unknown version',
  wanted: '{words}',
  remedy: 'this library reads that version',
} as const;

export const notAnObject = {
  code: 'not an object',
  wanted: 'an object',
  remedy: 'see A round as JSON in the README',
} as const;

export const notAList = { code: 'not a list', wanted: 'a list', remedy: 'see A round as JSON in the README' } as const;

export const notAText = {
  code: 'not a text',
  wanted: 'a text',
  remedy: 'write it between quotes, without half a surrogate pair',
} as const;

export const notATime = {
  code: 'not a time',
  wanted: 'a date and time with seconds and offset, such as 2026-03-14T09:40:00+02:00 (RFC 3339)',
  remedy: 'write it in this form; without its offset from UTC a time on a ship is not known',
} as const;

export const notADate = {
  code: 'not a date',
  wanted: 'a date, such as 2026-03-14 (RFC 3339)',
  remedy: 'write it in this form',
} as const;

export const tooShort = {
  code: 'too short',
  wanted: 'at least {least} {what}',
  remedy: 'give what is meant, or leave the field out where that is allowed',
} as const;

export const tooLong = {
  code: 'too long',
  wanted: 'at most {most} {what}',
  remedy: 'shorten it, or split it',
} as const;

export const wrongShape = {
  code: 'wrong shape',
  wanted: '{wanted}',
  remedy: 'see A round as JSON in the README',
} as const;

export const statedNowhere = {
  code: 'stated nowhere',
  wanted: 'the {field} of the reading',
  remedy: 'state it for the reading, or once for the group',
} as const;

export const notAStatement = {
  code: 'neither point nor table',
  wanted: 'pressure with temperature, or table with column',
  remedy: 'state a point, or name a column of one of the tables of this document',
} as const;

export const duplicateName = {
  code: 'duplicate name',
  wanted: 'a name that no other {what} beside it has',
  remedy: 'name each one apart; two of one name cannot be told apart, and neither is judged',
} as const;

export const duplicateKey = {
  code: 'duplicate key',
  wanted: 'each key once in an object',
  remedy: 'keep the one that is meant; what holds both is not judged',
} as const;

export const unknownSpecification = {
  code: 'unknown specification',
  wanted: 'the name of one of the specifications of this document',
  remedy: 'check the spelling, or add the specification',
} as const;

export const unknownTable = {
  code: 'unknown table',
  wanted: 'the name of one of the tables of this document',
  remedy: 'check the spelling, or add the table',
} as const;

export const unknownInstrument = {
  code: 'unknown instrument',
  wanted: 'the name of one of the instruments of this document',
  remedy: 'check the spelling, or add the instrument',
} as const;

export const otherInstrument = {
  code: 'instrument of another kind',
  wanted: 'the name of a {kind}',
  remedy: 'name the instrument that showed this value',
} as const;

export const mixedUnits = {
  code: 'mixed units',
  wanted: '{first}, the unit of the first row',
  remedy: 'write the table in the one unit in which it is printed',
} as const;

export const otherAmbient = {
  code: 'other ambient',
  wanted: '{ambient} hPa absolute, the ambient of the specification',
  remedy: 'a table and the specification that uses it are meant at one ambient',
} as const;

export const orderOfReadings = {
  code: 'order of readings',
  wanted: "'as found' first and only there, 'as left' last and only there",
  remedy: 'put the readings in the order in which they were taken; a second visit is another document',
} as const;

export const timesBackwards = {
  code: 'times run backwards',
  wanted: 'not earlier than the reading before it, {before}',
  remedy: 'put the readings in the order in which they were taken, and check the offsets from UTC',
} as const;

export const daysBackwards = {
  code: 'days run backwards',
  wanted: 'a day not before {from}',
  remedy: 'give the first day, and then the last',
} as const;

export const restContradicts = {
  code: 'rest contradicts readings',
  wanted: 'at most {most} min, by the times of draining and of the readings, and the work between them',
  remedy: 'check the times and when oil or gas last moved',
} as const;

export const notJson = {
  code: 'not JSON',
  wanted: 'JSON data, such as JSON.parse gives: finite numbers, well-formed texts, true, false, null',
  remedy: 'give plain data: a report could not carry this, and nobody could judge it again',
} as const;

export const inheritedByAll = {
  code: 'inherited by all objects',
  wanted: 'nothing of this name on Object.prototype',
  remedy: 'find what puts it there, and mend that',
} as const;

export const notJsonText = {
  code: 'not a JSON text',
  wanted: 'a JSON text (RFC 8259)',
  remedy: 'mend the text, or what wrote it; data that is parsed already goes to reportRound',
} as const;

export const tooDeep = {
  code: 'too deep',
  wanted: 'at most {most} levels',
  remedy: 'check what wrote it, and for data that contains itself',
} as const;

export const tooMuch = {
  code: 'too large',
  wanted: 'at most {most} {what} in a document',
  remedy: 'split the document; what is beyond was not read',
} as const;

export const problemsCutShort = {
  code: 'more problems',
  wanted: 'at most {most} to be listed',
  remedy: 'mend those listed first; the rest will be listed then',
} as const;

export const notAReport = {
  code: 'not a report',
  wanted: 'a report as JSON data',
  remedy: 'give what JSON.parse makes of it, as it was made',
} as const;

export const wordsUnsound = {
  code: 'words not sound',
  wanted: '{wanted}',
  remedy: 'give words under the codes of the library, with none but the names in braces that its own words have',
} as const;

// Instruments

export const notOneOf = {
  code: 'not one of several',
  wanted: 'exactly one of {words}',
  remedy: 'state it in one of these ways; two would have to agree, and none says nothing',
} as const;

export const notAnAccuracyClass = {
  code: 'not an accuracy class',
  wanted: 'one of the accuracy classes {classes} of EN 837-1',
  remedy: 'read the class on the dial; an accuracy that is none of these is given as an explicit limit of error',
} as const;

export const correctedTwice = {
  code: 'corrected twice',
  wanted: 'the correction of a gauge once',
  remedy: 'give the pressure as the gauge showed it, and leave correctionIncluded out: its certificate corrects it',
} as const;

export const outsideBounds = {
  code: 'outside bounds',
  wanted: '{bounds}',
  remedy: 'check the value, its sign and its unit against where it was read',
} as const;

export const notACount = {
  code: 'not a count',
  wanted: 'a whole number from {least} to {most}',
  remedy: 'give a whole number; it is counted, not measured',
} as const;

// Table audit

export const tooFewRowsToAudit = {
  code: 'too few rows to audit',
  wanted: 'two rows or more; three for a wrong cell to be suspected, six for it to be named',
  remedy: 'one row fits every gas: give more rows of the table',
} as const;

// Supply

export const notEachOnce = {
  code: 'not each once',
  wanted: 'each of these once: {words}',
  remedy: 'put all of them in the order that is meant, and no others',
} as const;

// Filling and settling

export const stopNotBeyond = {
  code: 'stop not beyond',
  wanted: 'a pressure {side} the one before, {before} gauge',
  remedy: 'gas that is added raises the pressure, and gas that is let out lowers it: check which is meant',
} as const;

export const leavesModel = {
  code: 'leaves the model',
  wanted: 'gas throughout, inside the model {model}',
  remedy: 'check pressures, temperatures and volumes, or take a smaller change; the model ends there because {reason}',
} as const;

export const tooFewTimed = {
  code: 'too few readings',
  wanted: '{least} readings or more',
  remedy: 'read again, at a time at which the pressure has moved by more than the step of the gauge',
} as const;

export const minutesOutOfOrder = {
  code: 'minutes out of order',
  wanted: 'more than {before} min, the time of the reading before it, by a millionth of a minute or more',
  remedy: 'put the readings in the order in which they were taken, each at a time of its own',
} as const;

// Safety and work

export const notTheHottest = {
  code: 'not the hottest',
  wanted: 'at least {from}, at which the gas is already known',
  remedy: 'give the hottest temperature that the gas may reach, in service or laid up; it is never below one that was',
} as const;

export const pressuresCrossed = {
  code: 'pressures crossed',
  wanted: 'less than {high} absolute, to which it is filled',
  remedy: 'gas is filled to the higher pressure and vented to the lower one',
} as const;

export const moreThanThereIs = {
  code: 'more than there is',
  wanted: 'less than {contents}, which is all the gas there is',
  remedy: 'check amount, volume and time, and their units; no vessel loses more than it holds',
} as const;

export const notSigned = {
  code: 'step not signed',
  wanted: 'who did it and when, or who left it out, when and why',
  remedy: 'do the step and sign it; what is left out is stated, and stays in the record',
} as const;

export const leftOutSilently = {
  code: 'protection left out',
  wanted: 'what protected people instead, beside who left the step out, when and why',
  remedy:
    'do the step; it protects people. If it cannot be done, stop, and let who is responsible decide what replaces it',
} as const;

export const signedTooEarly = {
  code: 'signed out of order',
  wanted: 'not earlier than {before}, when the step before it was signed',
  remedy: 'check the times and their offsets from UTC; the steps are in the order in which they protect people',
} as const;
