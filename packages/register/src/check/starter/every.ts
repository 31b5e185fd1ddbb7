import type { Check } from "../check";

type Line = Omit<Check, "when" | "criterion"> & Partial<Pick<Check, "criterion">>;

/** A check that every car gets; seen where no criterion is given. */
export const every = (line: Line): Check => ({
  criterion: { kind: "seen" },
  ...line,
  when: { op: "always" },
});
