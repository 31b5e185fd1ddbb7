import { Prisma } from "@trunnion/db";

/**
 * Which cars count as cars: a record that turned out to be of another car stands in no list, count, condition or extract;
 * its own page stays, and says of which car it is.
 */
export const standingRecord = { mergedIntoId: null } satisfies Prisma.CarWhereInput;

/** The same over a row `c` of `car`. */
export const standingRecordSql = Prisma.sql`c.merged_into_id IS NULL`;
