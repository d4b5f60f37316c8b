/** Where a formula, a constant or a number comes from. */
export interface Source {
  /** The reference as one would print it. */
  readonly citation: string;
  /** Digital object identifier, where the source has one. */
  readonly doi?: string;
}
