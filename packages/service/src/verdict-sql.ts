import { Prisma } from "@trunnion/db";
import type { Verdict } from "@trunnion/register";

const sql = Prisma.sql;

/**
 * How a value stands against factory, in the four ways a drawing can keep apart: as it should be, differing, accepted or
 * not to be told, and compared with nothing.
 */
export const standingOf: Readonly<Record<Verdict, "asSpecified" | "differs" | "accepted" | "notCompared">> = {
  asSpecified: "asSpecified",
  insideLimits: "asSpecified",
  outsideLimits: "differs",
  differentPart: "differs",
  added: "differs",
  missing: "differs",
  cannotTell: "accepted",
  acceptedSubstitute: "accepted",
  periodOption: "accepted",
  notRecorded: "notCompared",
};

/** The verdicts that stand so, by name, for an IN: the text is ours, never bound. */
export function verdictsThat(standing: (typeof standingOf)[Verdict]): Prisma.Sql {
  const names = Object.entries(standingOf).filter(([, one]) => one === standing);
  return Prisma.raw(`(${names.map(([verdict]) => `'${verdict}'`).join(", ")})`);
}

/** That a row `v` of current values differs from factory. */
export const differsSql = sql`v.verdict IN ${verdictsThat("differs")}`;

/** That it is known of a row `v` whether it differs. */
export const toldSql = sql`v.verdict NOT IN ('notRecorded', 'cannotTell')`;
