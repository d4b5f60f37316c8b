// Wrong programs around a check: supply, settling, what can hurt, who did it, uncertainty, the record and documents.
import { missing, mixes, type Wrong } from './wrong.js';

/** A part that an object has which is left out of it. */
const without = (name: string, object: string): string => `const { ${name}: left, ...rest } = ${object};\n`;

export const AROUND: readonly Wrong[] = [
  // Supply.
  {
    title: 'a bottle asked how many it serves, before it is known that there is anything to fill',
    program: "serves(nitrogen, bottle, toFill('A', spec, reading), rig);",
    says: [/'ToFill \| Charge'/, /'ToFill'/],
  },
  {
    title: 'a bottle without its purity',
    program: `${without('purityPercent', 'bottle.label')}serves(nitrogen, { ...bottle, label: rest }, filled, rig);`,
    says: missing('purityPercent'),
  },
  {
    title: 'a bottle judged without a demand on its purity',
    program: 'bottleState(nitrogen, bottle);',
    says: [/Expected 3-4 arguments, but got 2/, /'leastPurityPercent' was not provided/],
  },
  {
    title: 'a rig that does not say whether it has a regulator',
    program: 'serves(nitrogen, bottle, filled, { kit: rig.kit });',
    says: missing('regulator'),
  },
  {
    title: 'a bottle filled to an absolute pressure',
    program: "serves(nitrogen, { ...bottle, label: { ...bottle.label, filling: absolute(200, 'bar') } }, filled, rig);",
    says: mixes('AbsolutePressure', 'GaugePressure'),
  },

  // Settling.
  {
    title: 'steps to a stop before it is known that there are any',
    program: "whereToStop(spec, reading, { computedStop: 'not permitted' }).steps;",
    says: [/Property 'steps' does not exist on type/, /'NoMove'|'Withheld'/],
  },
  {
    title: 'a stop asked for without saying whether it may be computed',
    program: 'whereToStop(spec, reading, {});',
    says: missing('computedStop'),
  },
  {
    title: 'what a stop settles to, which has two bounds, as the pressure of a reading',
    program: 'judge(spec, { ...reading, pressure: stop.settled });',
    says: [/isothermal/, /'GaugePressure'/],
  },
  {
    title: 'the mark of a stop, which is what to read, as a pressure',
    program: 'judge(spec, { ...reading, pressure: stop.mark });',
    says: [/value/, /'GaugePressure'/],
  },

  // Uncertainty and decision.
  {
    title: 'an assessment without a rule',
    program: 'assess(spec, reading, instruments);',
    says: [/Expected 4-5 arguments, but got 3/, /'rule' was not provided/],
  },
  {
    title: 'half a risk',
    program: 'decide(spec, reading, instruments, { ...rule, risk: { below: 0.05 } });',
    says: missing('above'),
  },
  {
    title: 'a way to accept that there is not',
    program: "decide(spec, reading, instruments, { ...rule, acceptance: 'guarded' });",
    says: [/'"guarded"' is not assignable to type 'Acceptance'/],
  },
  {
    title: 'a barometer left out of the instruments',
    program: `${without('barometer', 'instruments')}uncertainty(spec, reading, rest);`,
    says: missing('barometer'),
  },
  {
    title: 'contributions before it is known that there is a budget',
    program: 'uncertainty(spec, reading, instruments).contributions;',
    says: [/Property 'contributions' does not exist on type 'Budget \| NoBudget'/],
  },
  {
    title: 'a probability before it is known that there is a decision',
    program: 'decide(spec, reading, instruments, rule).probability;',
    says: [/Property 'probability' does not exist on type 'Decision'/, /'NotDecided'/],
  },
  {
    title: 'a verdict asked for what only a decision says',
    program: "if (verdict.outcome === 'inconclusive') shown;",
    says: [/"inconclusive"/, /no overlap/],
  },
  {
    title: 'a verdict where an order takes instruments and rule',
    program: 'workOrder(spec, reading, verdict);',
    says: [/'Verdict'|'Compared'|'NotComparable'/, /'Assessed'/],
  },

  // What can hurt, and who did it.
  {
    title: 'oxygen after a release without its limit',
    program: `${without('limit', 'release')}oxygenAfterRelease(rest);`,
    says: missing('limit'),
  },
  {
    title: 'a limit of oxygen without its source',
    program: 'oxygenAfterRelease({ ...release, limit: { fraction: 0.195 } });',
    says: missing('source'),
  },
  {
    title: 'a release without its ventilation',
    program: `${without('ventilation', 'release')}oxygenAfterRelease(rest);`,
    says: missing('ventilation'),
  },
  {
    title: 'a release by its mass',
    program: "oxygenAfterRelease({ ...release, released: mass(1, 'kg') });",
    says: [/in type 'Mass' but required in type 'Amount'/],
  },
  {
    title: 'a room called safe',
    program: "if (oxygenAfterRelease(release).outcome === 'safe') shown;",
    says: [/"safe"/, /"not below the limit by calculation"/, /no overlap/],
  },
  {
    title: 'purging by gauge pressures',
    program: 'purge({ ...purging, high: shown });',
    says: mixes('GaugePressure', 'AbsolutePressure'),
  },
  {
    title: 'a hottest temperature without the ambient beside it',
    program: "pressureWhenHot(spec, 'target', { temperature: temperature(60, '°C') });",
    says: missing('ambient'),
  },
  {
    title: 'the record of an order without a signature for draining',
    program: `${without('drain', 'signatures')}needComplete(workOrder(spec, reading), rest);`,
    says: missing('drain'),
  },

  // The record again, and documents.
  {
    title: 'a recall of one report, not of a list',
    program: 'recall(report, recalling);',
    says: [/'RoundReport'|digest/, /'readonly unknown\[\]'/],
  },
  {
    title: 'a recall with a gauge pressure as the correction',
    program: 'recall([report], { ...recalling, correction: shown });',
    says: [/'GaugePressure' is not assignable/, /PressureDifference/],
  },
  {
    title: 'a document of a round by the name of its language',
    program: "roundDocument(report, { language: 'de', working: 'left out' });",
    says: mixes('string', 'Language'),
  },
  {
    title: 'a document of a round that does not say whether it has the working',
    program: 'roundDocument(report, { language: english });',
    says: missing('working'),
  },
  {
    title: 'a document of a round that is not yet a report',
    program: "roundDocument(parsed, { language: english, working: 'left out' });",
    says: [/libraryVersion|digest|RoundReport/],
  },
  {
    title: 'a document as text of no width',
    program: 'documentText(page);',
    says: [/Expected 2 arguments, but got 1/, /'options' was not provided/],
  },
  {
    title: 'a card that does not name its manual',
    program: `${without('manual', 'onCard')}card(spec, rest);`,
    says: missing('manual'),
  },
];
