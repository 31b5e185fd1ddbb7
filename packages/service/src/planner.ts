import type { Context } from "./context";

/** Cars written at once from which on the planner is told; fewer change no statistics worth the minute's work. */
const LARGE = 1_000;

/**
 * Tells PostgreSQL's planner what the tables of cars' records now hold, where many cars were written. Until its own
 * housekeeping has looked, it would ask a club newly filled along the wrong indexes. In a transaction that ends soon: it
 * keeps other housekeeping off these tables until then.
 *
 * @param cars how many were written; nothing happens below 1,000
 */
export async function tellPlanner({ db }: Context, cars: number): Promise<void> {
  if (cars >= LARGE) await db.$executeRaw`SELECT tell_planner()`;
}
