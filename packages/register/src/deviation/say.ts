import type { CharacteristicBook } from "../characteristic/book";
import type { AlternativeRole } from "../specification/specification";
import type { UnitSystem } from "../value/print";
import type { Deviation } from "./deviation";
import { deviationLine, verdictWords } from "./line";

const roleWords: Readonly<Record<AlternativeRole, string>> = {
  periodOption: "period option",
  acceptedSubstitute: "accepted substitute",
  serviceReplacement: "service replacement",
};

const baselineWords = { factory: "was specified", asBuilt: "left the works", rules: "is asked for" } as const;

/** What follows the comparison: the role of an alternative, or the verdict where the figures do not tell it. */
function remark({ verdict, alternative }: Deviation): string {
  if (alternative) return `, ${roleWords[alternative.role]}`;
  return verdict === "outsideLimits" || verdict === "insideLimits" || verdict === "cannotTell"
    ? `, ${verdictWords[verdict]}`
    : "";
}

/**
 * A deviation as one clause, without the characteristic's label: "20 mm where 16 mm was specified: +4 mm, × 1.25".
 * Values stand as they were entered, the difference in the club's units.
 */
export function sayDeviation(deviation: Deviation, book: CharacteristicBook, system: UnitSystem): string {
  const { actual, specified, difference } = deviationLine(deviation, book, system);
  const was = `${specified} ${baselineWords[deviation.baseline]}`;
  const wanted = specified === "" || deviation.nominal?.kind === "absent" ? "" : was;
  switch (deviation.verdict) {
    case "notRecorded":
      return wanted === "" ? "not recorded" : `not recorded; ${wanted}`;
    case "missing":
      return wanted === "" ? "not fitted" : `not fitted where ${wanted}`;
    case "added":
      return `${actual} where none ${baselineWords[deviation.baseline]}`;
    case "asSpecified":
      return `${actual}, ${deviation.baseline === "asBuilt" ? "as built" : verdictWords.asSpecified}`;
    default: {
      const compared = difference === "" ? "" : `: ${difference}`;
      const beside = wanted === "" ? actual : `${actual} where ${wanted}`;
      return `${beside}${compared}${remark(deviation)}`;
    }
  }
}
