// What a user of the record writes.
import { reportRound, reportRoundText, RoundShape, reverify, type Round, type RoundReport } from 'isochore/record';

export function namesOf(text: string): readonly string[] {
  const report: RoundReport = reportRoundText(text, { problems: 'report the rest' });
  return report.accumulators.filter(({ state }) => state === 'work needed').map(({ name }) => name);
}

export function titled(data: unknown): Round {
  return RoundShape.parse(data);
}

export function masses(round: Round): readonly number[] {
  return reportRound(round, { problems: 'refuse the round' }).accumulators.flatMap(({ asFound }) =>
    'gas' in asFound.charge ? [asFound.charge.gas.mass.value] : [],
  );
}

export const again = (report: unknown): boolean => reverify(report).outcome === 'same';

// @ts-expect-error What to do about problems is not said.
export const undecided = (text: string): RoundReport => reportRoundText(text);
