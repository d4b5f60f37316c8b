// The words for filling from bottles and for the numbers about what can hurt, in the report of a round.
import type { RoundReport } from '../../record/report-shape.js';
import type { Hot } from '../../safety/hot.js';
import type { LeakShown } from '../../safety/leak.js';
import type { OxygenAfterRelease, OxygenLeft } from '../../safety/oxygen.js';
import type { Purged } from '../../safety/purge.js';
import type { RatingProblem } from '../../safety/ratings.js';
import type { Objective } from '../../supply/objective.js';
import type { PlannedBottle } from '../../supply/plan.js';
import type { FillingStep } from '../../supply/result.js';

/** Words of a filling plan. */
export interface FillingWords {
  readonly heading: string;
  readonly columns: Readonly<
    Record<'bottle' | 'at15C' | 'state' | 'aboveResidual' | 'use' | 'after' | 'because', string>
  >;
  readonly states: Readonly<Record<PlannedBottle['state'], string>>;
  readonly uses: Readonly<Record<PlannedBottle['use'], string>>;
  readonly nothing: string;
  readonly step: string;
  readonly ended: Readonly<Record<FillingStep['ended'], string>>;
  readonly stop: string;
  readonly again: string;
  readonly notInBand: string;
  readonly noMark: string;
  readonly bleed: string;
  readonly noBleeding: string;
  readonly checked: string;
  readonly undone: string;
  readonly heldBack: string;
  readonly proven: string;
  readonly notProven: string;
  readonly objectives: Readonly<Record<Objective, string>>;
  readonly vented: string;
  readonly orderNone: string;
  readonly order: string;
  readonly fewer: string;
  readonly noOrder: string;
}

/** Words of safety numbers. */
export interface SafetyWords {
  readonly heading: string;
  readonly clearNothing: string;
  readonly hot: Readonly<Record<Hot['outcome'], string>>;
  readonly energy: string;
  readonly energyInService: string;
  readonly ratings: Readonly<Record<RatingProblem['code'], string>>;
  readonly parts: Readonly<Record<RatingProblem['part'], string>>;
  readonly nothingFound: string;
  readonly leak: Readonly<Record<'bubbles' | 'noBubbles' | 'gauge', string>>;
  readonly against: Readonly<Record<LeakShown['gauge']['against'], string>>;
  readonly purged: string;
  readonly notPurged: Readonly<Record<Exclude<Purged['outcome'], 'reached'>, string>>;
  readonly release: Readonly<Record<NonNullable<RoundReport['safety']>['releases'][number]['of'], string>>;
  readonly by: Readonly<Record<OxygenLeft['by'], string>>;
  readonly ventilation: Readonly<Record<OxygenLeft['ventilation'], string>>;
  readonly outcomes: Readonly<Record<OxygenAfterRelease['outcome'], string>>;
}
