/**
 * Version of this library, as its reports carry it. A test holds it equal to the version of the package.
 *
 * @example
 * ```ts
 * reportRound(round, { problems: 'refuse the round' }).libraryVersion === LIBRARY_VERSION; // => true
 * ```
 */
export const LIBRARY_VERSION = '0.1.0' as string;
