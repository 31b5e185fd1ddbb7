import { Prisma } from "@trunnion/db";

const sql = Prisma.sql;

/** That a row `v` of current values differs from factory. */
export const differsSql = sql`v.verdict IN ('outsideLimits', 'differentPart', 'added', 'missing')`;

/**
 * How a value stands against factory, in the four ways a drawing can keep apart: as it should be, differing, accepted or
 * not to be told, and compared with nothing.
 */
export const standingSql = sql`CASE WHEN v.verdict IN ('asSpecified', 'insideLimits') THEN 'asSpecified'
  WHEN ${differsSql} THEN 'differs' WHEN v.verdict = 'notRecorded' THEN 'notCompared' ELSE 'accepted' END`;
