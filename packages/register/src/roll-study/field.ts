import { type MeasuredDimension, NotationError, parseQuantity } from "@trunnion/calc";
import type { CharacteristicBook } from "../characteristic/book";
import type { Feed } from "../consequence/binding";
import { BindingTable } from "../consequence/binding-table";
import { Solver } from "../consequence/solve";
import { bindings } from "../consequence/table";
import { axleMass, firstOf, of, result, rollCentre, wheelRadius } from "../consequence/table/feed";
import type { FieldProblem } from "../refusal/invalid";
import type { Origin, State } from "../state/state";
import type { StudyAxle, StudyCar } from "./answer";

type Axle = "front" | "rear";

interface Part {
  readonly part: keyof StudyAxle;
  readonly label: string;
  readonly dimension: MeasuredDimension;
  readonly unit: string;
  readonly feed: (axle: Axle) => Feed;
}

const parts: readonly Part[] = [
  { part: "track", label: "track", dimension: "length", unit: "mm", feed: (axle) => of(`${axle}.track`) },
  { part: "mass", label: "axle weight", dimension: "mass", unit: "kg", feed: axleMass },
  {
    part: "unsprungMass",
    label: "unsprung mass of the axle",
    dimension: "mass",
    unit: "kg",
    feed: (axle) => of(`${axle}.unsprungMass`),
  },
  {
    part: "unsprungHeight",
    label: "height of the wheel centres",
    dimension: "length",
    unit: "mm",
    feed: wheelRadius,
  },
  {
    part: "rollCentreHeight",
    label: "roll-centre height",
    dimension: "length",
    unit: "mm",
    feed: (axle) => firstOf(...rollCentre(axle)),
  },
  {
    part: "springRate",
    label: "spring rate",
    dimension: "rate",
    unit: "N/mm",
    feed: (axle) => of(`${axle}.spring.rate`),
  },
  {
    part: "motionRatio",
    label: "spring motion ratio",
    dimension: "ratio",
    unit: "",
    feed: (axle) => of(`${axle}.spring.motionRatio`),
  },
  {
    part: "barWheelRate",
    label: "bar rate at the wheel",
    dimension: "rate",
    unit: "N/mm",
    feed: (axle) => result(`${axle}.bar.rate`, "wheelRate"),
  },
];

/** One figure that a roll study needs: what the record says, or what it lacks to say it. */
export interface StudyField {
  /** Name in the form: "front-track". */
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly dimension: MeasuredDimension;
  /** What the record gives, SI. */
  readonly si?: number;
  /** Where that comes from, in words. */
  readonly from?: string;
  readonly origin?: Origin | "assumed" | "computed";
  /** What would have to be on the record. */
  readonly missing: readonly string[];
}

const table = new BindingTable(bindings);
const axleWords = { front: "Front", rear: "Rear" } as const;

function fieldOf(
  solver: Solver,
  feed: Feed,
  place: Pick<StudyField, "name" | "label" | "unit" | "dimension">,
): StudyField {
  const read = solver.read(feed, place.name);
  if (!read.ok) return { ...place, missing: read.missing.map(({ label }) => label) };
  if (typeof read.raw !== "number") return { ...place, missing: [] };
  const [input] = read.inputs;
  return {
    ...place,
    si: read.raw,
    missing: [],
    ...(input === undefined
      ? {}
      : { from: input.text === "" ? input.label : `${input.label}: ${input.text}`, origin: input.origin }),
  };
}

/** Everything a roll study needs, as far as the record of a car says it. Nothing is assumed. */
export function studyFields(state: State, book: CharacteristicBook): readonly StudyField[] {
  const solver = new Solver(state, book, table);
  const ofAxle = (axle: Axle) =>
    parts.map(({ part, label, dimension, unit, feed }) =>
      fieldOf(solver, feed(axle), {
        name: `${axle}-${part}`,
        label: `${axleWords[axle]} ${label}`,
        unit,
        dimension,
      }),
    );
  const height = fieldOf(solver, of("chassis.centreOfGravityHeight"), {
    name: "cgHeight",
    label: "Height of the centre of gravity",
    unit: "mm",
    dimension: "length",
  });
  return [...ofAxle("front"), ...ofAxle("rear"), height];
}

/** What came of the record and of what was typed. */
export interface StudyReading {
  /** Missing until every figure is there and none is wrong. */
  readonly car?: StudyCar;
  readonly problems: readonly FieldProblem[];
  /** Names of figures that neither the record nor anybody gives. */
  readonly lacking: readonly string[];
}

const mayBeNought = /barWheelRate$/;
const mayBeNegative = /rollCentreHeight$/;

function typedNumber(field: StudyField, typed: string): number {
  const { si } = parseQuantity(typed, field.dimension, field.unit === "" ? {} : { defaultUnit: field.unit });
  if (si < 0 && !mayBeNegative.test(field.name))
    throw new RangeError(`${field.label} must not be below nought.`);
  if (si === 0 && !mayBeNought.test(field.name) && !mayBeNegative.test(field.name))
    throw new RangeError(`${field.label} must be above nought.`);
  return si;
}

/** Puts a car together: what was typed goes before what the record says; what neither says is told as lacking. */
export function readStudy(
  fields: readonly StudyField[],
  typed: Readonly<Record<string, string | undefined>>,
): StudyReading {
  const problems: FieldProblem[] = [];
  const lacking: string[] = [];
  const values = new Map<string, number>();
  for (const field of fields) {
    const entered = typed[field.name]?.trim() ?? "";
    try {
      const si = entered === "" ? field.si : typedNumber(field, entered);
      if (si === undefined) lacking.push(field.name);
      else values.set(field.name, si);
    } catch (error) {
      if (!(error instanceof NotationError || error instanceof RangeError)) throw error;
      problems.push({ field: field.name, message: error.message });
    }
  }
  if (problems.length > 0 || lacking.length > 0) return { problems, lacking };
  const axle = (name: Axle) =>
    Object.fromEntries(
      parts.map(({ part }) => [part, values.get(`${name}-${part}`) ?? Number.NaN]),
    ) as unknown as StudyAxle;
  const car = { front: axle("front"), rear: axle("rear"), cgHeight: values.get("cgHeight") ?? Number.NaN };
  return { car, problems, lacking };
}
