import { readCondition, type Verdict, withPart, writeCondition } from "@trunnion/register";
import { type FleetQuery, registerPath } from "../../lib/path";

/** Verdicts that count as changed. */
const differing: readonly Verdict[] = ["outsideLimits", "differentPart", "added", "missing"];

/** The cars of those meant on which it differs, with what they have beside; `undefined` where an address has no room. */
export function differingPath(
  club: string,
  key: string,
  { series, where, filter }: FleetQuery,
): string | undefined {
  const asked = where === undefined ? undefined : readCondition(where);
  const before = asked?.ok ? asked.condition : undefined;
  const whole = withPart(before, { op: "verdict", characteristic: key, in: differing });
  const cars = { ...(series === undefined ? {} : { series }), ...(filter === undefined ? {} : { filter }) };
  return whole && registerPath(club, { ...cars, where: writeCondition(whole), col: key });
}
