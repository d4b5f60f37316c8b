// What a record needs beside the results: instruments, remarks, signatures.
import type { Block, Column, Line } from '../document/block.js';
import { given } from '../document/given.js';
import { joined, lineOf } from '../document/line.js';
import { nameOf, pastDue, type About } from './about.js';

export function instruments({ report, language }: About): readonly Block[] {
  if (report.instruments.length === 0) return [];
  const words = language.document.round;
  const stated = (text: string | undefined): Line => (text === undefined ? '–' : [given(text)]);
  const late = pastDue(report);
  return [
    { kind: 'heading', level: 1, text: words.instrumentsHeading },
    {
      kind: 'table',
      columns: [words.instrument, words.kind, words.certificate, words.due].map((heading): Column => ({
        heading,
        align: 'left',
      })),
      rows: report.instruments.map(({ name, kind, certificate, due }) => [
        stated(name),
        stated(kind),
        stated(certificate),
        due !== undefined && late.has(name) ? lineOf(words.pastDue, { due: [given(due)] }) : stated(due),
      ]),
    },
  ];
}

/** What people wrote beside the numbers. */
export function remarks(about: About): readonly Block[] {
  const { report, language } = about;
  const words = language.document.round;
  const remark = (name: Line, text: string | undefined): readonly Line[] =>
    text === undefined || text === '' ? [] : [joined([name, [given(text)]], ': ')];
  const items = [
    ...report.groups.flatMap(({ name, remarks }) => remark([given(name)], remarks)),
    ...report.accumulators.flatMap((one): readonly Line[] => {
      const { remarks, deviationPermit, partsRenewed = [] } = one;
      const name = nameOf(one, about);
      const parts = joined(
        partsRenewed.map((part) => [given(part)]),
        ', ',
      );
      return [
        ...remark(name, remarks),
        ...(partsRenewed.length === 0 ? [] : [lineOf(words.parts, { name, parts })]),
        ...(deviationPermit === undefined ? [] : [lineOf(words.permit, { name, permit: [given(deviationPermit)] })]),
      ];
    }),
  ];
  if (items.length === 0) return [];
  return [
    { kind: 'heading', level: 1, text: words.remarksHeading },
    { kind: 'list', marks: 'plain', items },
  ];
}

/** A line to sign on for each who read and each who verified, and one where nobody is named. */
export function signatures({ report, language }: About): readonly Block[] {
  const words = language.document.round;
  const lines = (role: string, names: readonly (string | undefined)[]): readonly Line[] => {
    const named = [...new Set(names.filter((name) => name !== undefined))];
    return named.length === 0 ? [role] : named.map((name) => [role, ': ', given(name)]);
  };
  const all = report.accumulators;
  return [
    { kind: 'heading', level: 1, text: words.signaturesHeading },
    {
      kind: 'signatures',
      who: [
        ...lines(
          words.readBy,
          all.map(({ readBy }) => readBy),
        ),
        ...lines(
          words.verifiedBy,
          all.map(({ verifiedBy }) => verifiedBy),
        ),
      ],
      fields: words.fields,
    },
  ];
}
