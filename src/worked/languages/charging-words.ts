// The words for filling from bottles and for the numbers about what can hurt, in the report of a round.
import type { FillingJson } from '../../record/supply-shape.js';
import type { SafetyJson } from '../../record/safety-shape.js';
import type { Objective } from '../../supply/objective.js';

type Bottle = FillingJson['bottles'][number];
type Rating = NonNullable<SafetyJson['specifications'][number]['ratings']>['problems'][number];
type Release = SafetyJson['releases'][number];

/** Words of a filling plan. */
export interface FillingWords {
  readonly heading: string;
  readonly columns: Readonly<Record<'bottle' | 'at15C' | 'state' | 'usable' | 'use' | 'after' | 'because', string>>;
  readonly states: Readonly<Record<Bottle['state'], string>>;
  readonly uses: Readonly<Record<Bottle['use'], string>>;
  readonly nothing: string;
  readonly step: string;
  readonly ended: Readonly<Record<FillingJson['steps'][number]['ended'], string>>;
  readonly stop: string;
  readonly again: string;
  readonly notInBand: string;
  readonly noMark: string;
  readonly undone: string;
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
  readonly hot: Readonly<Record<NonNullable<SafetyJson['specifications'][number]['hot']>['outcome'], string>>;
  readonly energy: string;
  readonly energyInService: string;
  readonly ratings: Readonly<Record<Rating['code'], string>>;
  readonly parts: Readonly<Record<Rating['part'], string>>;
  readonly nothingFound: string;
  readonly release: Readonly<Record<Release['of'], string>>;
  readonly by: Readonly<Record<Release['lowest']['by'], string>>;
  readonly ventilation: Readonly<Record<Release['lowest']['ventilation'], string>>;
  readonly outcomes: Readonly<Record<Release['outcome'], string>>;
}
