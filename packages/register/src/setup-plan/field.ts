import type { MeasuredDimension } from "@trunnion/calc";
import type { CharacteristicBook } from "../characteristic/book";
import { BindingTable } from "../consequence/binding-table";
import { Solver } from "../consequence/solve";
import { bindings } from "../consequence/table";
import { wheelRadius } from "../consequence/table/feed";
import { stateKey } from "../state/key";
import type { State } from "../state/state";
import { type PlanAxle, type PlannedLayout, plannedLayouts, whyNotPlanned } from "./layout";

/** The wheel a plan is made for; y is counted outboard on both sides, so that one geometry serves both. */
export type PlanSide = "left" | "right";

export interface PlanWheel {
  readonly axle: PlanAxle;
  readonly side: PlanSide;
}

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
  /** What the specification says: of a setting no reading, of a part not measured on this car. */
  readonly specified?: string;
  /** Of a hardpoint, not of the wheel. */
  readonly point?: true;
}

/** How the wheel is guided, as far as that is known, and what follows for a plan. */
export type PlanLayout =
  | { readonly known: "planned"; readonly code: string; readonly label: string; readonly typed: boolean }
  | { readonly known: "notPlanned"; readonly label: string; readonly why: string }
  /** The record does not say; one of these may be said for the day. */
  | {
      readonly known: "unknown";
      readonly choices: readonly { readonly code: string; readonly label: string }[];
    };

const planAxes = ["x", "y", "z"] as const;

/** The layout planned with. @returns `undefined` for one that cannot be planned with */
export const layoutOf = (axle: PlanAxle, code: string): PlannedLayout | undefined =>
  plannedLayouts.find((one) => one.axle === axle && one.code === code);

function choicesOf(book: CharacteristicBook, axle: PlanAxle) {
  const one = book.find(`${axle}.layout`);
  return one?.kind === "choice" ? one.choices : [];
}

/** How an axle's wheels are guided: as the record says, else as was said in the form, and never taken for granted. */
export function planLayout(
  state: State,
  book: CharacteristicBook,
  { axle, said }: { readonly axle: PlanAxle; readonly said: string },
): PlanLayout {
  const choices = choicesOf(book, axle);
  const value = state.get(stateKey(`${axle}.layout`, "whole"))?.value;
  const recorded = value?.kind === "choice" ? value.code : undefined;
  const code = recorded ?? said;
  const choice = choices.find((one) => one.code === code);
  if (choice === undefined)
    return { known: "unknown", choices: choices.filter((one) => layoutOf(axle, one.code) !== undefined) };
  const { label } = choice;
  if (layoutOf(axle, code) === undefined)
    return { known: "notPlanned", label, why: whyNotPlanned(axle, code) };
  return { known: "planned", code, label, typed: recorded === undefined };
}

interface Own {
  readonly name: string;
  readonly label: string;
  /** Without its axle. */
  readonly key: string;
  readonly dimension: MeasuredDimension;
  readonly unit: string;
  readonly toe?: true;
  readonly sided: boolean;
}

/**
 * What the record gives for a figure. A setting is only what was read: what the specification asks for is told, and never
 * taken for where the wheel stands now.
 */
function given(state: State, at: string, setting: boolean): Pick<PlanField, "si" | "from" | "specified"> {
  const known = state.get(at);
  if (known?.value.kind !== "quantity") return {};
  const { si, entered } = known.value;
  if (known.origin !== "specification") return { si, from: entered };
  return setting ? { specified: entered } : { si, from: entered, specified: entered };
}

const own: readonly Own[] = [
  { name: "track", label: "Track", key: "track", dimension: "length", unit: "mm", sided: false },
  { name: "camber", label: "Camber now", key: "camber", dimension: "angle", unit: "°", sided: true },
  {
    name: "toe",
    label: "Toe of this wheel now",
    key: "toe",
    dimension: "angle",
    unit: "'",
    toe: true,
    sided: true,
  },
];

function pointFields(
  state: State,
  book: CharacteristicBook,
  { axle, side, points }: PlanWheel & Pick<PlannedLayout, "points">,
): readonly PlanField[] {
  return points.flatMap((name) =>
    planAxes.map((axis): PlanField => {
      const key = `${axle}.hardpoint.${name}.${axis}`;
      return {
        name: `${name}-${axis}`,
        label: book.find(key)?.label ?? key,
        dimension: "length",
        unit: "mm",
        point: true,
        ...given(state, stateKey(key, side), false),
      };
    }),
  );
}

/** The geometry a plan needs, as far as the record of a car says it. Nothing is assumed. */
export function planFields(
  state: State,
  book: CharacteristicBook,
  { axle, side, code }: PlanWheel & { readonly code: string },
): readonly PlanField[] {
  const layout = layoutOf(axle, code);
  if (layout === undefined) return [];
  const radius = new Solver(state, book, new BindingTable(bindings)).read(wheelRadius(axle), "radius");
  const wheel: PlanField = {
    name: "radius",
    label: "Height of the wheel centre over the ground",
    dimension: "length",
    unit: "mm",
    ...(radius.ok && typeof radius.raw === "number"
      ? { si: radius.raw, from: radius.inputs[0]?.label ?? "" }
      : {}),
  };
  const values = own.map(
    ({ key, sided, ...base }): PlanField => ({
      ...base,
      ...given(state, stateKey(`${axle}.${key}`, sided ? side : "whole"), sided),
    }),
  );
  return [...values, wheel, ...pointFields(state, book, { axle, side, points: layout.points })];
}

/** What the record says of how the wheel can be adjusted, in its own words; empty where it says nothing. */
export interface RecordedAdjustment {
  readonly key: string;
  readonly label: string;
  readonly code: string;
  readonly words: string;
}

/** What the record says of the adjusters that a layout may have. */
export function adjustmentsOnRecord(
  state: State,
  book: CharacteristicBook,
  { adjusters }: Pick<PlannedLayout, "adjusters">,
): readonly RecordedAdjustment[] {
  const keys = new Set(adjusters.flatMap(({ recorded }) => (recorded === undefined ? [] : [recorded.key])));
  return [...keys].map((key) => {
    const value = state.get(stateKey(key, "whole"))?.value;
    const one = book.find(key);
    const base = { key, label: one?.label ?? key, code: "", words: "" };
    if (value?.kind !== "choice" || one?.kind !== "choice") return base;
    const words = one.choices.find(({ code }) => code === value.code)?.label ?? value.entered;
    return { ...base, code: value.code, words };
  });
}
