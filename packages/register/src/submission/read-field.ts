import { NotationError, parseDesignation, parseQuantity } from "@trunnion/calc";
import type { Characteristic } from "../characteristic/characteristic";
import type { FieldProblem } from "../refusal/invalid";
import { stateKey } from "../state/key";
import type { State } from "../state/state";
import { type ParsedValue, parseValue } from "../value/parse";
import type { UnitSystem } from "../value/print";

/** Takes what is wrong at a field. */
export type Tell = (field: string, message: string) => void;

/** Gathers problems by field. */
export function problemList(): { readonly problems: FieldProblem[]; readonly tell: Tell } {
  const problems: FieldProblem[] = [];
  return { problems, tell: (field, message) => problems.push({ field, message }) };
}

/** Nominal rim diameter (m) of an axle's wheels by a state; `undefined` where it is not known. */
export function rimDiameterIn(state: State, axle: "front" | "rear"): number | undefined {
  const value = state.get(stateKey(`wheels.${axle}.size`, "whole"))?.value;
  if (value?.kind !== "designation") return undefined;
  return parseDesignation("wheel", value.canonical).rimDiameter;
}

const axleOf = (key: string) => (key.startsWith("rear.") ? "rear" : "front");

/**
 * Reads an entry in the owner's units: a bare number is in his, toe in millimetres is taken across the rim the car has.
 * `rims` is the state that says which.
 */
export function readEntered(
  characteristic: Characteristic,
  entered: string,
  { units, rims }: { readonly units: UnitSystem; readonly rims: State },
): ParsedValue {
  if (characteristic.kind !== "quantity") return parseValue(characteristic, entered);
  const rimDiameter =
    characteristic.notation === "toe" ? rimDiameterIn(rims, axleOf(characteristic.key)) : undefined;
  const unit = characteristic.units[units];
  // Where the unit is no more than a mark (a plain ratio), the number stands alone anyway.
  const options = unit === "" || unit.startsWith(":") ? {} : { defaultUnit: unit };
  return parseValue(characteristic, entered, {
    ...options,
    ...(rimDiameter === undefined ? {} : { rimDiameter }),
  });
}

const sentence = (text: string) =>
  `${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? "" : "."}`;

/** A length in SI from an entry that may leave the unit out; nothing for an empty one. */
export function readLength(
  entered: string,
  { field, unit, tell }: { readonly field: string; readonly unit: string; readonly tell: Tell },
): number | null {
  if (entered.trim() === "") return null;
  try {
    const { si } = parseQuantity(entered.trim().replace(/(?<=\d)[ ,](?=\d{3}\b)/g, ""), "length", {
      defaultUnit: unit,
    });
    if (si >= 0) return si;
    tell(field, `"${entered}" is below nought: write a figure above it.`);
  } catch (error) {
    if (!(error instanceof NotationError)) throw error;
    tell(field, sentence(error.message));
  }
  return null;
}

/** A designation in its canonical form; nothing for an empty entry. */
export function readDesignation(
  kind: "thread" | "grade",
  entered: string,
  { field, tell }: { readonly field: string; readonly tell: Tell },
): string | null {
  if (entered.trim() === "") return null;
  try {
    return parseDesignation(kind, entered.trim()).canonical;
  } catch (error) {
    if (!(error instanceof NotationError)) throw error;
    tell(field, sentence(error.message));
    return null;
  }
}
