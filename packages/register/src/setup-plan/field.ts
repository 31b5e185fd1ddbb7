import type { MeasuredDimension } from "@trunnion/calc";
import type { CharacteristicBook } from "../characteristic/book";
import { BindingTable } from "../consequence/binding-table";
import { Solver } from "../consequence/solve";
import { bindings } from "../consequence/table";
import { wheelRadius } from "../consequence/table/feed";
import { stateKey } from "../state/key";
import type { State } from "../state/state";

/** The wheel a plan is made for; y is counted outboard on both sides, so that one geometry serves both. */
export type PlanSide = "left" | "right";

/** One figure of a form: what the record gives, or that it gives none. */
export interface PlanField {
  readonly name: string;
  readonly label: string;
  readonly dimension: MeasuredDimension;
  /** Unit that a bare number is in. */
  readonly unit: string;
  readonly toe?: true;
  /** What the record gives, SI. */
  readonly si?: number;
  /** As entered, with what it is of. */
  readonly from?: string;
  /** Needed for any plan at all. */
  readonly needed: boolean;
}

/** Hardpoints of a double wishbone, in the dictionary's names. */
export const planPoints = [
  "upperArmFront",
  "upperArmRear",
  "upperJoint",
  "lowerArmFront",
  "lowerArmRear",
  "lowerJoint",
  "tieRodInner",
  "tieRodOuter",
] as const;
export const planAxes = ["x", "y", "z"] as const;

const point = (state: State, book: CharacteristicBook, side: PlanSide): PlanField[] =>
  planPoints.flatMap((name) =>
    planAxes.map((axis) => {
      const key = `front.hardpoint.${name}.${axis}`;
      const value = state.get(stateKey(key, side))?.value;
      const base = {
        name: `${name}-${axis}`,
        label: book.find(key)?.label ?? key,
        dimension: "length" as const,
        unit: "mm",
        needed: true,
      };
      return value?.kind === "quantity" ? { ...base, si: value.si, from: value.entered } : base;
    }),
  );

interface Own {
  readonly name: string;
  readonly label: string;
  readonly key: string;
  readonly dimension: MeasuredDimension;
  readonly unit: string;
  readonly toe?: true;
  readonly sided: boolean;
  readonly times?: number;
}

const own: readonly Own[] = [
  { name: "track", label: "Front track", key: "front.track", dimension: "length", unit: "mm", sided: false },
  { name: "camber", label: "Camber now", key: "front.camber", dimension: "angle", unit: "°", sided: true },
  {
    name: "toe",
    label: "Toe of this wheel now",
    key: "front.toe",
    dimension: "angle",
    unit: "'",
    toe: true,
    sided: true,
  },
];

/** The geometry a plan needs, as far as the record of a car says it. Nothing is assumed. */
export function planFields(state: State, book: CharacteristicBook, side: PlanSide): readonly PlanField[] {
  const radius = new Solver(state, book, new BindingTable(bindings)).read(wheelRadius("front"), "radius");
  const wheel: PlanField = {
    name: "radius",
    label: "Height of the wheel centre over the ground",
    dimension: "length",
    unit: "mm",
    needed: true,
    ...(radius.ok && typeof radius.raw === "number"
      ? { si: radius.raw, from: radius.inputs[0]?.label ?? "" }
      : {}),
  };
  const values = own.map(({ key, sided, ...field }): PlanField => {
    const value = state.get(stateKey(key, sided ? side : "whole"))?.value;
    const base = { ...field, needed: true };
    return value?.kind === "quantity" ? { ...base, si: value.si, from: value.entered } : base;
  });
  return [...values, wheel, ...point(state, book, side)];
}

/** What the record says of how the arms can be adjusted, in its own words. */
export function adjustmentsOnRecord(
  state: State,
  book: CharacteristicBook,
): Readonly<Record<"upper" | "lower", string>> {
  const said = (arm: "upper" | "lower") => {
    const key = `front.${arm}Arm.adjustment`;
    const value = state.get(stateKey(key, "whole"))?.value;
    const one = book.find(key);
    if (value?.kind !== "choice" || one?.kind !== "choice") return "";
    return one.choices.find(({ code }) => code === value.code)?.label ?? value.entered;
  };
  return { upper: said("upper"), lower: said("lower") };
}
