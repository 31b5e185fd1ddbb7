import type { Side } from "../characteristic/characteristic";
import type { PartialDate } from "../identity/partial-date";

/** One published value of a car. */
export interface ExtractValue {
  readonly characteristic: string;
  readonly label: string;
  readonly side: Side;
  /** As people read it, with its unit. */
  readonly text: string;
  /** SI number and unit, for a quantity. */
  readonly si?: number;
  readonly unit?: string;
}

/** A car as the public sees it: what the club chose, and nothing of any person. What is not published is missing. */
export interface ExtractCar {
  /** How its address names it. */
  readonly reference: string;
  readonly chassis: string;
  readonly marque: string;
  readonly series: string;
  readonly built?: PartialDate;
  readonly firstRegistered?: PartialDate;
  /** Status in words. */
  readonly status?: string;
  readonly numbers?: readonly { readonly kind: string; readonly number: string }[];
  readonly options?: readonly string[];
  readonly asBuilt?: readonly ExtractValue[];
  readonly today?: readonly ExtractValue[];
}
