import type { Condition } from "../../condition/condition";
import type { Check } from "../check";
import { equipment } from "./equipment";
import { everyCar } from "./every-car";
import { shorts } from "./short";
import { thisCar } from "./this-car";

/** The starter rule set: what every car gets, then what follows from this car. Data: a club edits and adds. */
export const starterChecks: readonly Check[] = [...everyCar, ...equipment, ...thisCar].map((check) => {
  const short = shorts[check.id];
  return short === undefined ? check : { ...check, short };
});

interface StarterClass {
  readonly code: string;
  readonly name: string;
  readonly eligibility: Condition;
}

/** Classes of the starter rule set. */
export const starterClasses: readonly StarterClass[] = [
  {
    code: "A",
    name: "As built",
    eligibility: {
      op: "all",
      of: [
        {
          op: "verdict",
          characteristic: "wheels.front.size",
          in: ["asSpecified", "periodOption", "acceptedSubstitute"],
        },
        { op: "verdict", characteristic: "front.disc.diameter", in: ["asSpecified", "periodOption"] },
      ],
    },
  },
  {
    code: "B",
    name: "Road modified",
    eligibility: { op: "code", characteristic: "oil.sump", in: ["wet", "baffled"] },
  },
  { code: "C", name: "Open", eligibility: { op: "always" } },
];
