import type { CarStatus } from "@trunnion/db";
import { type PartialDate, type Problems, sayDay, spanOverlap } from "@trunnion/register";

/** A status of a car over a span, as far as the dates are known: ISO days. */
export interface StatusSpan {
  readonly id: string;
  readonly status: CarStatus;
  readonly fromEarliest?: string;
  readonly fromLatest?: string;
  /** Last day; left out while it is the present one. */
  readonly to?: string;
}

/** A span that somebody wants on the record. */
export interface WantedSpan {
  readonly from: PartialDate | null;
  /** Last day; nothing for the present status. */
  readonly to: string | undefined;
}

const borne = ({ fromEarliest, fromLatest, to }: Omit<StatusSpan, "id" | "status">) => ({
  ...(fromEarliest === undefined ? {} : { fromEarliest }),
  ...(fromLatest === undefined ? {} : { fromLatest }),
  ...(to === undefined ? {} : { toEarliest: to, toLatest: to }),
});

/** The day a status that follows it ends: the latest that the new one may have begun, or today. */
export function endBefore({ from }: WantedSpan, today: string): string {
  return from?.latest ?? today;
}

/**
 * Says what is wrong with a span beside the others: an end before its beginning, an earlier span that surely overlaps
 * another, a present one that begins before the one it would end.
 */
export function checkSpan(
  wanted: WantedSpan,
  {
    others,
    today,
    problems,
  }: { readonly others: readonly StatusSpan[]; readonly today: string; readonly problems: Problems },
): void {
  const { from, to } = wanted;
  if (to !== undefined && to > today)
    problems.add("to", `"${to}" lies in the future: leave the present status open.`);
  if (from && to !== undefined && from.earliest > to) {
    problems.add(
      "to",
      `${sayDay(to)} lies before "${from.text}": the end must not come before the beginning.`,
    );
    return;
  }
  const open = others.find((one) => one.to === undefined);
  const begun = open?.fromEarliest;
  if (to === undefined && begun !== undefined && begun > endBefore(wanted, today)) {
    problems.add(
      "from",
      `This lies before the present status began, ${sayDay(begun)} at the earliest: give the day it ended, or correct the present one.`,
    );
    return;
  }
  const span = {
    ...(from ? { fromEarliest: from.earliest, fromLatest: from.latest } : {}),
    ...(to === undefined ? {} : { to }),
  };
  // The present one is ended by a new present one, so it cannot overlap that.
  const beside = to === undefined ? others.filter((one) => one.to !== undefined) : others;
  const clash = beside.find((one) => {
    const until = one.to === undefined ? { ...one, to: today } : one;
    return spanOverlap(borne({ ...span, to: to ?? today }), borne(until)) === "certain";
  });
  if (clash?.to !== undefined)
    problems.add(
      "from",
      `This surely overlaps a status that ended ${sayDay(clash.to)}: correct one of the two.`,
    );
  else if (clash)
    problems.add(
      "to",
      "This surely overlaps the present status: end it earlier, or correct the present one.",
    );
}
