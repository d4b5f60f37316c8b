/** A program that must not compile. */
export interface Wrong {
  readonly title: string;
  /** Follows {@link GIVEN}; its last statement is the wrong one. */
  readonly program: string;
  /** What the compiler's words must hold, so that a reader sees what is wrong without knowing the types. */
  readonly says: readonly RegExp[];
}

/** Two kinds, by the names of their types. */
export const mixes = (found: string, wanted: string): readonly RegExp[] => [
  new RegExp(`'${found}' is not assignable to (parameter of )?type '${wanted}'`),
];
/** A part that is left out, by its name. */
export const missing = (name: string): readonly RegExp[] => [new RegExp(`Property '${name}' is missing|'${name}'`)];
