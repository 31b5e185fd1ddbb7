import type { Condition } from "../../condition/condition";
import type { Verdict } from "../../deviation/deviation";
import type { Check } from "../check";

const seen = { kind: "seen" } as const;
type Line = Omit<Check, "criterion"> & Partial<Pick<Check, "criterion">>;
/** A check that follows from this car; seen where no criterion is given. */
export const check = (line: Line): Check => ({ criterion: seen, ...line });

const different: readonly Verdict[] = ["differentPart", "added", "acceptedSubstitute", "periodOption"];
/** Has one of these choices or designations. */
export const code = (characteristic: string, ...codes: string[]): Condition => ({
  op: "code",
  characteristic,
  in: codes,
});
/** Compared with the specification, it came out as one of these. */
export const verdict = (characteristic: string, ...wanted: Verdict[]): Condition => ({
  op: "verdict",
  characteristic,
  in: wanted,
});
/** Is another part than specified, whether allowed or not. */
export const changed = (characteristic: string): Condition => verdict(characteristic, ...different);
export const any = (...of: Condition[]): Condition => ({ op: "any", of });
/** Every one of the conditions. */
export const all = (...of: Condition[]): Condition => ({ op: "all", of });
/** Ended before the day: an item is good through its last day, as its label says. */
export const expiredOn = (characteristic: string): Condition => ({
  op: "date",
  characteristic,
  is: "lt",
  date: "eventDay",
});
export const above = (characteristic: string, si: number): Condition => ({
  op: "number",
  characteristic,
  is: "gt",
  si,
});
/** More than 2 % over the nominal. */
export const thicker = (characteristic: string): Condition => ({
  op: "against",
  characteristic,
  measure: "ratio",
  is: "gt",
  si: 1.02,
});
