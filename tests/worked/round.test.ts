import { describe, expect, test } from 'vitest';
import { valueIn, write, gauge } from 'isochore';
import { LIBRARY_VERSION, reportRound, reportRoundText, type Round, type RoundReport } from 'isochore/record';
import {
  documentHtml,
  documentLatex,
  documentMarkdown,
  documentText,
  english,
  german,
  roundDocument,
  type Language,
  type RoundDocumentGiven,
} from 'isochore/worked';
import { problemOf } from '../support/problem.js';
import { formulasOf, renderedFormula, tablesOfMarkdown, wrongWithHtml } from '../support/renderings.js';
import { exampleRound, put, refusalOf, reportRest } from '../support/round.js';

const report = reportRest(exampleRound());
const given: RoundDocumentGiven = { language: english, working: 'left out' };
const textOf = (of: RoundReport, language: Language = english): string =>
  documentText(roundDocument(of, { ...given, language }), { width: 1000 });
const linesOf = (of: RoundReport, language: Language = english): string[] => textOf(of, language).split('\n');

describe('the summary', () => {
  test('counts what the report counts', () => {
    const lines = linesOf(report);
    const found = Object.entries(report.counts).map(([outcome, count]) => `${count} ${outcome}`);
    expect(lines).toContain(
      `Accumulators judged: ${report.accumulators.length}; not judged: 0. As found: ${found.join(', ')}.`,
    );
    const decided = Object.entries(report.decisions ?? {}).map(([outcome, count]) => `${count} ${outcome}`);
    expect(lines).toContain(
      'With the uncertainty of the instruments, by guarded acceptance (risk at most 5 % below the band, 10 % above it): ' +
        `${decided.join(', ')}.`,
    );
    expect(lines).toContain('The whole round was judged.');
  });

  test('says of a partial report that it is partial, what was wrong, and what was not judged', () => {
    const round = exampleRound() as { groups: { accumulators: { visit: { pressure: { unit: string } }[] }[] }[] };
    const [reading] = round.groups[0]?.accumulators[1]?.visit ?? [];
    if (reading !== undefined) reading.pressure.unit = 'bars';
    const partial = reportRest(round);
    const lines = linesOf(partial);
    expect(lines).toContain('DANGER: PART OF THE ROUND COULD NOT BE JUDGED.');
    expect(lines).toContain('Wrong in the document (1)');
    expect(lines.some((line) => line.startsWith('- $.groups[0].accumulators[1].visit[0].pressure.unit'))).toBe(true);
    expect(lines).toContain('- Not judged: Exhaust valves / EV 2 ($.groups[0].accumulators[1])');
    expect(lines).toContain('- Of the judged part alone.');
    expect(linesOf(partial, german)).toContain('GEFAHR: EIN TEIL DER RUNDE KONNTE NICHT BEURTEILT WERDEN.');
  });
});

describe('what was found', () => {
  const tables = tablesOfMarkdown(documentMarkdown(roundDocument(report, given)));
  const rows = tables.slice(0, 2).flatMap((table) => table.slice(1));

  test('stands in one table a group, a row for each accumulator, in the order of the round', () => {
    expect(rows.map(([name]) => name)).toEqual(report.accumulators.map(({ name }) => name));
  });

  test.each(report.accumulators.map((one, i) => [one.name, one, rows[i] ?? []] as const))(
    '%s has the numbers of the report',
    (_, { unitServed, asFound, asLeft, state }, row) => {
      const { reading, target, band, offTarget } = asFound;
      expect(row[1]).toBe(unitServed);
      expect(row[2]).toBe(`${reading.pressure.value} ${reading.pressure.unit}`);
      expect(row[3]?.replace(' *', '')).toBe(`${reading.temperature.value} ${reading.temperature.unit}`);
      expect(row[3]?.includes('*')).toBe(reading.stated.temperature === 'for the group');
      // To a tenth of a decade below the step of the gauge.
      const shown = Number(row[4]?.split(' ')[0]);
      expect(Math.abs(shown - Number(target.value))).toBeLessThanOrEqual(Number(reading.gaugeStep.value) / 20 + 1e-9);
      if (typeof band.onGauge === 'string') expect(row[5]).toBe('no mark');
      else expect(row[5]).toBe(`${band.onGauge.lower.value} to ${band.onGauge.upper.value} ${band.onGauge.upper.unit}`);
      if (offTarget === undefined || asFound.outcome === 'gas side empty') expect(row[6]).toBe('–');
      else
        expect(Math.abs(Number.parseFloat(row[6] ?? '') - Number(offTarget.value))).toBeLessThanOrEqual(
          Number(reading.gaugeStep.value) / 20 + 1e-9,
        );
      const outcome = asFound.decision?.outcome === 'inconclusive' ? 'inconclusive' : asFound.outcome;
      expect(row[7]?.replace(' †', '')).toBe(outcome);
      expect(row[8]).toBe(asLeft === 'not read' ? state : `${state} (as left)`);
    },
  );

  test('is not known by less than the interval of the report', () => {
    for (const [i, { asFound }] of report.accumulators.entries()) {
      if (asFound.uncertainty?.outcome !== 'stated' || asFound.offTarget === undefined) continue;
      if (asFound.outcome === 'gas side empty') continue;
      const { lower, upper } = asFound.uncertainty.interval;
      const half = Number(/± ([\d.]+)/.exec(rows[i]?.[6] ?? '')?.[1]);
      expect(half).toBeGreaterThanOrEqual((Number(upper.value) - Number(lower.value)) / 2 - 1e-9);
    }
  });
});

describe('what to do', () => {
  test('says of every accumulator that is not in order why, and what comes next', () => {
    const lines = linesOf(report);
    for (const { name, asFound, state } of report.accumulators) {
      if (asFound.outcome === 'within' && state === 'in order') continue;
      const at = lines.indexOf(name);
      expect(at).toBeGreaterThan(0);
      const why = `${asFound.why.slice(0, 1).toUpperCase()}${asFound.why.slice(1)}.`;
      expect(lines.slice(at, at + 4)).toContain(why);
      if (!('gas' in asFound.charge)) continue;
      const { action, gas, stop } = asFound.charge;
      const how = `- ${action === 'add' ? 'Add' : 'Vent'} ${gas.rounded.mass} of nitrogen (${gas.rounded.normalVolume}).`;
      const said = lines.slice(at).find((line) => line.startsWith(how));
      expect(said).toBeDefined();
      if (stop.action === 'stop' && typeof stop.mark !== 'string')
        expect(said).toContain(`Stop at ${stop.mark.value} ${stop.mark.unit} gauge, close, wait`);
    }
  });

  test('says nothing of a round that is in order, but that it is', () => {
    const round = exampleRound();
    const [group] = round.groups;
    const first = group?.accumulators.filter(({ name }) => name === 'EV 1') ?? [];
    const sound = reportRest({ ...round, groups: group === undefined ? [] : [{ ...group, accumulators: first }] });
    expect(linesOf(sound)).toContain('Nothing: every accumulator judged is in order.');
  });

  test('says the gas that the report says', () => {
    const { asFound, stillToAdd } = report.gasToAdd;
    const lines = linesOf(report);
    for (const [what, sum] of [
      ['To add as found', asFound],
      ['Still to add after the work', stillToAdd],
    ] as const)
      expect(lines).toContain(
        `- ${what}: ${sum.gas?.rounded.mass ?? ''} (${sum.gas?.rounded.normalVolume ?? ''}); accumulators: ${sum.accumulators}.`,
      );
  });
});

describe('filling and safety numbers', () => {
  const lines = linesOf(report);

  test('stand as the report has them, in its order', () => {
    const { filling } = report;
    if (filling === undefined) throw new Error('no filling');
    const steps = lines.filter((line) => /^\d+\. .* on .*settled/.test(line));
    expect(steps.map((line) => /^\d+\. (.+?) on (.+?): /.exec(line)?.slice(1))).toEqual(
      filling.steps.map(({ bottle, name }) => [bottle, name]),
    );
    for (const [i, { moved, vented }] of filling.steps.entries())
      expect(steps[i]).toContain(`${moved.rounded.mass} of nitrogen, and ${vented.rounded.mass} vented from the kit`);
    const [table] = tablesOfMarkdown(documentMarkdown(roundDocument(report, given))).filter(
      ([head]) => head?.[0] === 'bottle',
    );
    expect(table?.slice(1).map(([name, , , usable, use]) => [name, usable, use])).toEqual(
      filling.bottles.map(({ name, aboveResidual, use }) => [name, aboveResidual.rounded.mass, use]),
    );
    expect(lines.indexOf('Filling, step by step')).toBeLessThan(lines.indexOf('Safety numbers'));
  });

  test('say where bleeding stops, from low to high, and what a check cost most', () => {
    const { filling } = report;
    const [bled] = filling?.bleeding ?? [];
    const stops = typeof bled?.stops === 'string' ? undefined : bled?.stops.steps[0];
    const line = lines.find((one) =>
      one.startsWith(`- ${bled?.name ?? ''}, to be bled: Stop at ${stops?.mark.value ?? ''} `),
    );
    const [, low, high] = /it settles at ([\d.]+) bar gauge to ([\d.]+) bar gauge/.exec(line ?? '') ?? [];
    expect(Number(low)).toBeLessThan(Number(high));
    expect(Number(high)).toBeCloseTo(Number(stops?.settled.adiabatic.value), 1);
    // FI 7 has the lowest pressure of those that still have gas.
    expect(lines.filter((one) => one.startsWith('- A check itself costs gas. It took most from '))).toEqual([
      '- A check itself costs gas. It took most from FI 7, 0.003 kg: before the kit was connected it held 10.09 MPa gauge, 0.20 MPa more than was read.',
    ]);
  });

  test('say what a leak test shows and what purging leaves', () => {
    const said = (start: string): string[] => lines.filter((one) => one.startsWith(start));
    for (const { specification, leakTest, purge } of report.safety?.specifications ?? []) {
      const tests = said(`- ${specification}: leak test for the loss that matters: `);
      expect(tests).toHaveLength(2);
      expect(tests[0]).toMatch(/with liquid, a bubble every [\d.]+ min, which shows it\.$/);
      expect(tests[1]).toMatch(/the gauge falls by [\d.]+ (bar|MPa), which does NOT show it; 0\.\d+ K of cooling does/);
      expect([leakTest?.bubbles.against, leakTest?.gauge.against]).toEqual(['shows it', 'does not show it']);
      const [, percent] = /after 3 fillings ([\d.]+) % of it are left/.exec(said(`- ${specification}: gas that is not`)[0] ?? '') ?? []; // prettier-ignore
      expect(Number(percent)).toBeGreaterThanOrEqual(100 * (purge?.left.at(-1) ?? Number.NaN));
      expect(Number(percent)).toBeLessThan(100 * (purge?.left.at(-1) ?? Number.NaN) + 0.0101);
    }
  });

  test('are rounded to the side that does not make them smaller', () => {
    const { safety } = report;
    if (safety === undefined) throw new Error('no safety numbers');
    for (const { specification, hot, energy } of safety.specifications) {
      const [, shown, most] =
        new RegExp(`^- ${specification}: gas at its upper limit comes to ([\\d.]+) .* pressure of ([\\d.]+) `).exec(
          lines.find((line) => line.startsWith(`- ${specification}: gas at its`)) ?? '',
        ) ?? [];
      expect(Number(shown)).toBeGreaterThanOrEqual(Number(hot?.pressure.value) - 1e-9);
      expect(Number(most)).toBeLessThanOrEqual(Number(hot?.allowable.value) + 1e-9);
      const charged = /stored energy (\d+) kJ/.exec(
        lines.find((line) => line.startsWith(`- ${specification}: stored`)) ?? '',
      );
      expect(1000 * Number(charged?.[1])).toBeGreaterThanOrEqual(energy?.charged.value ?? Number.NaN);
    }
    for (const { name, lowest } of safety.releases) {
      const percent = /released: ([\d.]+) %/.exec(lines.find((line) => line.includes(`(${name}) released`)) ?? '')?.[1];
      expect(Number(percent)).toBeLessThanOrEqual(100 * lowest.fraction);
      expect(Number(percent)).toBeGreaterThan(100 * lowest.fraction - 0.11);
    }
    expect(lines).toContain('They clear nothing: the maker, local codes and licensed practice decide.');
  });
});

test('each caution names the accumulators that it belongs to', () => {
  const lines = linesOf(report);
  for (const { code, severity, text } of report.cautions) {
    const whose = report.accumulators.filter(({ asFound, asLeft }) =>
      [asFound, asLeft].some((one) => one !== 'not read' && one.cautions.includes(code)),
    );
    const at = whose.length === 0 ? '' : `At ${whose.map(({ name }) => name).join(', ')}. `;
    expect(lines).toContain(`${severity.toUpperCase()}: ${at}${text}`);
  }
});

test('an instrument past due is named, and marked among the instruments', () => {
  const round = exampleRound();
  put(round, ['instruments', 0, 'due'], '2026-01-31');
  const lines = linesOf(reportRest(round));
  expect(lines.some((line) => /^CAUTION: At EV 1, .*, by gauge A\. The certificate of an instrument/.test(line))).toBe(true); // prettier-ignore
  expect(lines.filter((line) => line.includes('2026-01-31: past due when read'))).toHaveLength(1);
  expect(linesOf(report).filter((line) => line.includes('past due when read'))).toEqual([]);
});

test('a reading that may be a slip has no gas in it, neither in what to do nor in the plan nor in the working', () => {
  const at = ['groups', 0, 'accumulators', 0, 'visit', 0];
  const round = exampleRound();
  put(round, [...at, 'pressure', 'value'], 152);
  put(round, [...at, 'temperature', 'value'], 104);
  const page = (of: Round, language: Language): string =>
    documentText(roundDocument(reportRest(of), { language, working: 'steps' }), { width: 1000 });
  const ofEv1 = (text: string, head: string): string => text.slice(text.indexOf(head)).split('EV 2')[0] ?? '';
  const text = page(round, english);
  const lines = text.split('\n');
  expect(lines).toContain('- Neither add nor vent; read number, unit and basis again, on gauge and thermometer.');
  expect(lines.some((line) => line.startsWith('- Look at the instrument again: the number 104 was stated in °C') && line.endsWith('; the reading would then lie within its band.'))).toBe(true); // prettier-ignore
  expect(lines.some((line) => /^CAUTION: At EV 1\b.*In another unit or basis the reading would be right/.test(line))).toBe(true); // prettier-ignore
  expect(lines.some((line) => line.startsWith('- EV 1, not planned: in another unit or basis'))).toBe(true);
  expect(ofEv1(text, 'EV 1, as found')).not.toMatch(/kg\b/);
  expect(page(round, german)).toContain('- Weder nachfüllen noch ablassen; Zahl, Einheit und Bezug an Manometer');
  put(round, [...at, 'possibleSlip'], 'read again and ruled out');
  const stands = page(round, english);
  expect(stands).toContain('min at rest; read again, a slip ruled out');
  expect(stands).not.toContain('EV 1, not planned');
});

describe('a common shift', () => {
  test('is said before any single accumulator, with what may be behind it', () => {
    const round = exampleRound();
    // Twelve readings of one gauge, all of them off by the same.
    const [group] = round.groups;
    const [one] = group?.accumulators ?? [];
    if (group === undefined || one === undefined) throw new Error('no accumulator');
    const accumulators = Array.from({ length: 12 }, (_, i) => ({
      ...one,
      name: `EV ${i + 1}`,
      visit: one.visit.slice(0, 1).map((reading) => ({
        ...reading,
        pressure: { ...reading.pressure, value: 147 + (i % 3) / 10 },
      })),
    }));
    const off = reportRest({ ...round, groups: [{ ...group, accumulators }] });
    expect(off.together?.[0]?.outcome).toBe('common shift');
    const lines = linesOf(off);
    const at = lines.findIndex((line) =>
      line.startsWith('CAUTION: gauge A, thermometer 1: the readings are off together'),
    );
    expect(at).toBeGreaterThan(0);
    expect(at).toBeLessThan(lines.indexOf('What was found'));
    expect(lines).toContain('- Compare gauge and thermometer with others before any single accumulator is worked on.');
    const shift = off.together?.[0];
    if (shift === undefined || !('shift' in shift)) throw new Error('no shift');
    const said = Number(/off together by (-[\d.]+) bar/.exec(lines[at] ?? '')?.[1]);
    expect(Math.abs(said - Number(shift.shift.difference.value.value))).toBeLessThan(0.05);
  });
});

describe('a language', () => {
  test('says the same numbers', () => {
    const numbers = (text: string): string[] =>
      (text.match(/\d+([.,]\d+)?/g) ?? []).map((one) => one.replace(',', '.'));
    const [inEnglish, inGerman] = [tablesIn(english), tablesIn(german)];
    expect(inGerman.flat(2).map(numbers)).toEqual(inEnglish.flat(2).map(numbers));
  });

  const tablesIn = (language: Language): string[][][] =>
    tablesOfMarkdown(documentMarkdown(roundDocument(report, { ...given, language })));

  test('says every sentence, whatever the words of the report', () => {
    const inGerman = reportRound(exampleRound(), { problems: 'report the rest', words: german.words });
    const head = (text: string): string => text.split('SHA-256')[0] ?? '';
    expect(head(textOf(inGerman))).toBe(head(textOf(report)));
    expect(head(textOf(report, german))).toBe(head(textOf(inGerman, german)));
    expect(textOf(report, german)).not.toMatch(/ gauge read|undercharged| wanted/);
  });
});

describe('where it comes from', () => {
  test('is the report, its digest, its model and the version', () => {
    const lines = linesOf(report);
    expect(lines).toContain(`- SHA-256 of the report: ${report.digest}`);
    expect(lines).toContain(`- Judged by isochore ${LIBRARY_VERSION}; report version 1.`);
    expect(lines).toContain(`- Judged again for this document by isochore ${LIBRARY_VERSION}, with the same results.`);
    expect(lines.some((line) => line.startsWith(`- Gas model ${report.models[0]?.id ?? ''}: `))).toBe(true);
  });

  test('is doubted of a report that was altered, at its head, and its own words stay', () => {
    const altered = structuredClone(report);
    const [first] = altered.accumulators;
    if (first !== undefined) first.asFound.outcome = 'overcharged';
    const lines = linesOf(altered);
    expect(lines[3]).toMatch(/^DANGER: Not to be relied upon as it is: the digest does not match/);
    expect(linesOf(altered, german)[3]).toMatch(
      /^GEFAHR: So, wie er ist, nicht zu verwenden: die Prüfsumme stimmt nicht/,
    );
    expect(linesOf(altered, german).join('\n')).toContain('ndercharged by 9.6 bar: 143.0 bar gauge read');
    expect(lines.join('\n')).not.toContain('Judged again');
  });

  test('is said where the report does not carry its round', () => {
    const text = JSON.stringify(exampleRound()).replace('"version":1', '"version":1,"version":1');
    const twice = reportRoundText(text, { problems: 'report the rest' });
    expect(Object.hasOwn(twice, 'input')).toBe(false);
    expect(textOf(twice)).toContain('The report does not carry its round');
    expect(textOf(twice)).not.toContain('Not to be relied upon');
  });
});

describe('the working', () => {
  test('is there for every accumulator that was judged, if it is asked for', () => {
    const page = roundDocument(report, { language: english, working: 'steps' });
    const headings = page.blocks.flatMap((block) =>
      block.kind === 'heading' && block.level === 2 ? [block.text] : [],
    );
    const text = documentText(page, { width: 1000 });
    for (const { name } of report.accumulators) expect(text).toContain(`${name}, as found`);
    expect(headings.length).toBeGreaterThanOrEqual(report.accumulators.length);
    expect(textOf(report)).not.toContain('The working');
  });

  test('is there for the plan of the filling and for each number about what can hurt', () => {
    const page = roundDocument(report, { language: english, working: 'steps' });
    const lines = documentText(page, { width: 1000 }).split('\n');
    const working = lines.slice(lines.indexOf('The working'));
    const { filling, safety } = report;
    const plan = working.slice(working.indexOf('Filling, step by step'));
    expect(filling?.steps.length).toBe(2);
    for (const step of [1, 2]) expect(plan.some((line) => line.includes(`bottle afterwards, step ${step}: gauge pressure`))).toBe(true); // prettier-ignore
    // The pressure that the bottle then has, as the plan has it.
    const after = filling?.steps.at(-1)?.bottleAfter.value;
    expect(plan.join('\n')).toContain(`= ${Number(after).toPrecision(6)} bar`);
    for (const { specification } of safety?.specifications ?? [])
      expect(working).toContain(`${specification}, safety numbers`);
    for (const { name } of safety?.releases ?? []) expect(working).toContain(`${name}, its gas released`);
    // The energy that governs, and the pressure when hot.
    const [first] = safety?.specifications ?? [];
    const own = working.slice(working.indexOf(`${first?.specification ?? ''}, safety numbers`)).join('\n');
    expect(own).toContain(`${Number(first?.hot?.pressure.value).toPrecision(6)} bar`);
    expect(own).toContain((Number(first?.energy?.charged.value) / 1000).toPrecision(3).slice(0, 3));
  });

  test('is left out of a report that its round does not give again', () => {
    const altered = { ...structuredClone(report), complete: 'partial' as const };
    const page = roundDocument(altered, { language: english, working: 'steps' });
    expect(documentText(page, { width: 100 })).not.toContain('The working');
  });
});

describe('in every format', () => {
  test.each([english, german])('it is sound, in $code', async (language) => {
    const page = roundDocument(report, { language, working: 'answer' });
    const html = documentHtml(page);
    expect(await wrongWithHtml(html)).toEqual([]);
    expect(html).not.toContain('<script');
    for (const formula of formulasOf(documentLatex(page))) expect(renderedFormula(formula)).toContain('katex');
    for (const name of report.accumulators.map((one) => one.name))
      for (const text of [html, documentMarkdown(page), documentLatex(page)]) expect(text).toContain(name);
  });

  test('it is sound with hostile names everywhere', async () => {
    const hostile = '</td><script>alert(1)</script>\\input{x} | `a` $b$ \u202E مضخة';
    const bad = JSON.parse(
      JSON.stringify(exampleRound(), (key, value: unknown) =>
        ['name', 'title', 'unitServed', 'readBy', 'verifiedBy', 'remarks', 'kind', 'certificate'].includes(key)
          ? `${String(value)} ${hostile}`
          : ['specification'].includes(key) ||
              (key === 'pressure' && typeof value === 'string') ||
              (key === 'temperature' && typeof value === 'string')
            ? `${String(value)} ${hostile}`
            : value,
      ),
    ) as Round;
    const own = reportRest(bad);
    expect(own.accumulators).toHaveLength(report.accumulators.length);
    const page = roundDocument(own, { language: english, working: 'answer' });
    expect(await wrongWithHtml(documentHtml(page))).toEqual([]);
    expect(documentHtml(page)).not.toContain('<script');
    const [found] = tablesOfMarkdown(documentMarkdown(page));
    expect(found?.[1]?.[0]).toContain('</td><script>alert(1)</script>\\input{x} | `a` $b$ \uFFFD مضخة');
    expect(found?.[1]).toHaveLength(9);
    expect(documentLatex(page)).not.toMatch(/\\input\{/);
  });

  test('it is there for a round without accumulators', async () => {
    const empty = reportRest({ version: 1, specifications: [], groups: [] });
    const page = roundDocument(empty, given);
    expect(documentText(page, { width: 80 })).toContain('No accumulator was judged.');
    expect(await wrongWithHtml(documentHtml(page))).toEqual([]);
  });
});

describe('it is refused', () => {
  test('for what is no report, with the problems of its shape', () => {
    const refused = refusalOf(() => roundDocument({ ...report, counts: 3 } as never, given));
    expect(refused.map(({ path }) => path)).toEqual(['report.counts']);
    expect(problemOf(() => roundDocument(undefined as never, given)).code).toBe('not a report');
  });

  test('for another wish than there is, or no language', () => {
    expect(problemOf(() => roundDocument(report, { language: english, working: 'all' as never })).path).toBe(
      'given.working',
    );
    expect(problemOf(() => roundDocument(report, { working: 'left out' } as never)).path).toBe('language');
    expect(problemOf(() => roundDocument(report, undefined as never)).path).toBe('given');
  });
});

test('numbers are written as the library writes them', () => {
  // The target of the first accumulator, by another way to the same text.
  const { target } = report.accumulators[0]?.asFound ?? {};
  const own = gauge(Number(target?.value), 'bar');
  expect(write(own, { step: 0.1, unit: 'bar' })).toBe(`${valueIn(own, 'bar').toFixed(1)} bar gauge`);
  expect(textOf(report)).toContain(write(own, { step: 0.1, unit: 'bar' }).replace(' gauge', ''));
});
