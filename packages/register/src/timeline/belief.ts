/** When a statement was recorded and when another took its place: ISO instants in UTC. */
export interface Recorded {
  readonly recordedAt: string;
  readonly supersededAt?: string;
}

/**
 * What was believed at an instant: whatever had been recorded by then and nothing had taken the place of. A statement
 * recorded at the very instant counts; one superseded at it no longer does.
 *
 * @param instant ISO instant in UTC, in the form `Date.toISOString` gives
 */
export function believedAt<T extends Recorded>(statements: readonly T[], instant: string): readonly T[] {
  return statements.filter(
    ({ recordedAt, supersededAt }) =>
      recordedAt <= instant && (supersededAt === undefined || supersededAt > instant),
  );
}

/** The last instant of a day in UTC: what was believed "on 3 May" is what stood when that day ended. */
export const endOfDay = (day: string): string => `${day}T23:59:59.999Z`;
