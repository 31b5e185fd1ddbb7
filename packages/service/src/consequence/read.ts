import { computationNamed, type RunResult, runComputation } from "@trunnion/calc";
import {
  type Consequence,
  consequencesOf,
  entriesFor,
  lackingFor,
  refused,
  stateOn,
} from "@trunnion/register";
import { assess } from "../assessment";
import { findCar } from "../car";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { currentSpecifications } from "../specification";

/** What a car's differences from factory do to it, and what is missing to say more. */
export interface CarConsequences {
  readonly consequences: readonly Consequence[];
  /** Characteristics whose recording would let something be worked out, with what; most telling first. */
  readonly lacking: readonly {
    readonly characteristic: string;
    readonly label: string;
    readonly adds: readonly string[];
  }[];
}

async function sidesOf(ctx: Context, reference: string) {
  const record = await findCar(ctx, reference);
  const book = await bookOf(ctx);
  const specifications = await currentSpecifications(ctx, record.series === null ? [] : [record.series.id]);
  const specification = record.series === null ? undefined : specifications.get(record.series.id);
  const { state } = assess(record, specification, book, ctx.today);
  const entries = entriesFor(specification, record.basis, book);
  const factory = stateOn(ctx.today, { entries, asBuilt: [], modifications: [], readings: [] });
  return { record, book, factory, now: state };
}

/** Only what moved, or cannot be worked out: what the differences leave alone is no news. */
const isNews = ({ moved, missing, refused: because }: Consequence) =>
  moved || missing.length > 0 || because !== undefined;

/**
 * What the differences of a car from its specification do, today.
 *
 * @throws Refusal CAR_NOT_FOUND
 */
export async function carConsequences(ctx: Context, reference: string): Promise<CarConsequences> {
  const { book, factory, now } = await sidesOf(ctx, reference);
  const lacking = [...lackingFor(now, book)].map(([characteristic, adds]) => ({
    characteristic,
    label: book.find(characteristic)?.label ?? characteristic,
    adds,
  }));
  return {
    consequences: consequencesOf(factory, now, book).filter(isNews),
    lacking: lacking.sort((a, b) => b.adds.length - a.adds.length || a.label.localeCompare(b.label, "en")),
  };
}

/** One consequence with its working on both sides. */
export interface WorkedConsequence extends Consequence {
  readonly car: { readonly reference: string; readonly chassis: string };
  readonly working: { readonly before?: RunResult; readonly after?: RunResult };
  readonly computationTitle: string;
  readonly validity: string;
  readonly source: readonly { readonly title: string; readonly locus?: string; readonly status: string }[];
}

/**
 * One consequence with its working: formulas, inputs and where each came from, validity, source.
 *
 * @throws Refusal CAR_NOT_FOUND; CONSEQUENCE_NOT_FOUND where the car's differences do not reach it
 */
export async function carConsequence(
  ctx: Context,
  { car, id }: { readonly car: string; readonly id: string },
): Promise<WorkedConsequence> {
  const { record, book, factory, now } = await sidesOf(ctx, car);
  const all = consequencesOf(factory, now, book);
  const found = all.find((one) => one.id === id);
  if (!found) throw refused("CONSEQUENCE_NOT_FOUND", { id, known: all.map((one) => one.id) });
  const computation = computationNamed(found.computation);
  const run = (raw: unknown) => (raw === undefined ? undefined : runComputation(computation, raw));
  const [before, after] = [run(found.rawBefore), run(found.raw)];
  return {
    ...found,
    car: { reference: record.reference, chassis: record.chassis },
    working: { ...(before ? { before } : {}), ...(after ? { after } : {}) },
    computationTitle: computation.title,
    validity: computation.validity,
    source: computation.source,
  };
}
