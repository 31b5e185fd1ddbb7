import {
  type Adjuster,
  type Adjustment,
  CalcRefusal,
  type Corner,
  computationNamed,
  NotationError,
  type Plan,
  parseQuantity,
  parseToe,
  planAdjustment,
  type Settings,
  type Target,
  type Vector,
} from "@trunnion/calc";
import type { FieldProblem } from "../refusal/invalid";
import { type Given, type MoveDirection, moveDirections, type OfferedAdjuster } from "./adjuster";
import type { PlanField } from "./field";
import type { PlannedLayout } from "./layout";

/** What was typed, by field. */
export type PlanTyped = Readonly<Record<string, string | undefined>>;

/** A corner as the solver takes it, with its adjusters and what is wanted. */
export interface ReadPlan {
  readonly assemble: (by: Adjustment<string>) => Corner;
  readonly adjusters: readonly Adjuster<string>[];
  readonly target: Target;
}

/** What came of the record and the form. */
export interface PlanReading {
  /** Missing until nothing lacks and nothing is wrong. */
  readonly plan?: ReadPlan;
  readonly problems: readonly FieldProblem[];
  /** Names of figures that neither the record nor anybody gives. */
  readonly lacking: readonly string[];
  /** Something is wanted: until then the form has just been opened, and nothing is wrong with it. */
  readonly asked: boolean;
}

/** Errors that matter alike, rad: as `adjuster.plan` takes them. Common practice, no source. */
const minute = Math.PI / 180 / 60;
export const planTolerance = { camber: 5 * minute, castor: 15 * minute, toeIn: 2 * minute } as const;

/** The fields of what is wanted. */
export const targetFields: readonly TargetField[] = [
  { name: "wantedCamber", target: "camber", label: "Camber wanted", hint: "-1°00', -0.75°" },
  { name: "wantedCastor", target: "castor", label: "Castor wanted", hint: "4°30'" },
  { name: "wantedToe", target: "toeIn", label: "Toe of this wheel wanted", hint: "toe-in 8' per side" },
];

interface TargetField {
  readonly name: string;
  readonly target: "camber" | "castor" | "toeIn";
  readonly label: string;
  readonly hint: string;
}

/** What can be wanted of a wheel: castor only of one that steers. */
export const targetsOf = ({ steers }: Pick<PlannedLayout, "steers">): readonly TargetField[] =>
  targetFields.filter(({ target }) => steers || target !== "castor");

class Reader {
  readonly problems: FieldProblem[] = [];
  readonly lacking: string[] = [];
  constructor(private readonly typed: PlanTyped) {}

  text(name: string): string {
    return this.typed[name]?.trim() ?? "";
  }

  /** A figure that was typed; nothing where nothing was, or where it cannot be read. */
  figure(field: Pick<PlanField, "name" | "dimension" | "unit" | "toe">): number | undefined {
    const entered = this.text(field.name);
    if (entered === "") return undefined;
    try {
      if (field.toe) return parseToe(entered).perWheel;
      return parseQuantity(entered, field.dimension, field.unit === "" ? {} : { defaultUnit: field.unit }).si;
    } catch (error) {
      if (!(error instanceof NotationError)) throw error;
      this.problems.push({ field: field.name, message: error.message });
      return undefined;
    }
  }

  /** The same, or what the record says; told as lacking where neither is there. */
  needed(field: PlanField): number {
    const typed = this.figure(field);
    const value = typed ?? field.si;
    if (value === undefined && this.text(field.name) === "") this.lacking.push(field.name);
    return value ?? Number.NaN;
  }
}

function directionOf(reader: Reader, { name, title, directed }: OfferedAdjuster): MoveDirection {
  const field = `${name}-direction`;
  const typed = reader.text(field);
  const known = moveDirections.find((one) => one === typed);
  if (known === undefined && directed !== undefined)
    reader.problems.push({ field, message: `${title}: say which way it moves.` });
  return known ?? "inboard";
}

function adjusterOf(
  reader: Reader,
  offered: OfferedAdjuster,
  points: Given["points"],
): readonly Adjuster<string>[] {
  const used = offered.fields.some(({ name }) => reader.text(name) !== "");
  if (!used) return [];
  const figures = Object.fromEntries(
    offered.fields.map((field) => {
      const value = reader.figure(field);
      if (value === undefined && reader.text(field.name) === "")
        reader.problems.push({
          field: field.name,
          message: `${offered.title}: ${field.label.toLowerCase()} is needed too.`,
        });
      return [field.name, value ?? Number.NaN];
    }),
  );
  return [offered.make(figures, { points, direction: directionOf(reader, offered) })];
}

/** Farther from what is set on such a car than this is a slip of the pen, rad. */
const believable = { camber: 8, castor: 15, toeIn: 3 } as const;

function targetOf(reader: Reader, layout: PlannedLayout): Target {
  const wanted = targetsOf(layout).flatMap(({ name, target, label }) => {
    const value = reader.figure(
      target === "toeIn"
        ? { name, dimension: "angle", unit: "'", toe: true }
        : { name, dimension: "angle", unit: "°" },
    );
    if (value === undefined) return [];
    if (Math.abs(value) > (believable[target] * Math.PI) / 180)
      reader.problems.push({
        field: name,
        message: `${label}: "${reader.text(name)}" is too large to be believed; at most ${believable[target]}° either way.`,
      });
    return [[target, value] as const];
  });
  return Object.fromEntries(wanted);
}

/** The form of a wheel's plan: how it is guided, and the figures that this needs. */
export interface PlanForm {
  readonly layout: PlannedLayout;
  readonly fields: readonly PlanField[];
}

function wheelAndPoints(fields: readonly PlanField[], reader: Reader, layout: PlannedLayout) {
  const values = new Map(fields.map((field) => [field.name, reader.needed(field)]));
  const at = (name: string) => values.get(name) ?? Number.NaN;
  const pointAt = (name: string): Vector => ({ x: at(`${name}-x`), y: at(`${name}-y`), z: at(`${name}-z`) });
  const wheel = {
    side: "left" as const,
    wheelCentre: { x: 0, y: at("track") / 2, z: at("radius") },
    loadedRadius: at("radius"),
    camber: at("camber"),
    toeIn: at("toe"),
  };
  return { wheel, points: Object.fromEntries(layout.points.map((name) => [name, pointAt(name)])) };
}

/**
 * Puts a request for the planner together: what was typed goes before what the record says, what neither says is told as
 * lacking, what cannot be read or believed at its field. Nothing is made up.
 */
export function readPlan({ layout, fields }: PlanForm, typed: PlanTyped): PlanReading {
  const reader = new Reader(typed);
  const targets = targetsOf(layout);
  const asked = targets.some(({ name }) => reader.text(name) !== "");
  const { wheel, points } = wheelAndPoints(fields, reader, layout);
  const adjusters = layout.adjusters.flatMap((offered) => adjusterOf(reader, offered, points));
  const target = targetOf(reader, layout);
  if (asked && adjusters.length === 0)
    reader.problems.push({
      field: layout.adjusters[0]?.fields[0]?.name ?? "",
      message: "Fill in at least one adjuster that the car has.",
    });
  const { problems, lacking } = reader;
  const whole = asked && problems.length === 0 && lacking.length === 0;
  const assemble = layout.assemble(wheel, points);
  return { problems, lacking, asked, ...(whole ? { plan: { assemble, adjusters, target } } : {}) };
}

/** One step of a plan: what is done, what the gauge then shows, and how far each angle moved by it. */
export interface PlanStep {
  readonly words: string;
  readonly after: Settings;
  readonly change: { readonly camber: number; readonly castor: number | null; readonly toeIn: number };
}

/** A plan ready to be worked through. */
export interface SetupPlan {
  readonly before: Plan["before"];
  readonly after: Plan["after"];
  readonly steps: readonly PlanStep[];
  readonly withinTolerance: boolean;
  readonly error: Plan["error"];
  readonly held: Plan["held"];
  readonly atLimit: readonly string[];
  readonly caution: string;
}

export type PlanResult =
  | { readonly ok: true; readonly plan: SetupPlan }
  | { readonly ok: false; readonly because: string };

function stepsOf({ moves, before }: Plan): readonly PlanStep[] {
  let last: Settings = before;
  return moves.map(({ words, after }) => {
    const change = {
      camber: after.camber - last.camber,
      castor: after.castor === null || last.castor === null ? null : after.castor - last.castor,
      toeIn: after.toeIn - last.toeIn,
    };
    last = after;
    return { words: words.charAt(0).toUpperCase() + words.slice(1), after, change };
  });
}

/**
 * Turns and shims to a setting, in the order of work, by the calculator's planner. What the calculator refuses (a linkage
 * that cannot be assembled, a shim count that cannot be) is an answer in words.
 */
export function makeSetupPlan({ assemble, adjusters, target }: ReadPlan): PlanResult {
  try {
    const plan = planAdjustment<string>({
      assemble,
      adjusters,
      target,
      tolerance: planTolerance,
    });
    const { before, after, withinTolerance, error, held, atLimit } = plan;
    const caution = computationNamed("adjuster.plan").caution ?? "";
    return {
      ok: true,
      plan: { before, after, steps: stepsOf(plan), withinTolerance, error, held, atLimit, caution },
    };
  } catch (error) {
    if (error instanceof CalcRefusal) return { ok: false, because: error.message };
    throw error;
  }
}
