/** ISO day of an instant, in UTC. */
export function dayOf(instant: Date): string {
  return instant.toISOString().slice(0, 10);
}

/** The instant a `date` column carries for an ISO day: midnight UTC. */
export function dayColumn(day: string): Date {
  return new Date(`${day}T00:00:00.000Z`);
}

/** ISO day of a nullable `date` column. */
export function dayOrNothing(column: Date | null): string | undefined {
  return column === null ? undefined : dayOf(column);
}
