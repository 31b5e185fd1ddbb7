import { z } from "zod";
import { computations } from "./all";
import type { AnyComputation, OutputSpec, Source } from "./computation";
import { CalcRefusal } from "./refusal";
import { inputOf, unitOf } from "./run";

/** One output as listed. */
export interface ListedOutput {
  readonly name: string;
  readonly label: string;
  readonly dimension: OutputSpec["dimension"];
  /** Empty for ratios, counts and words. */
  readonly unit: string;
}

/** One computation as listed: everything but the code, as plain JSON. */
export interface ListedComputation {
  readonly name: string;
  readonly title: string;
  readonly summary: string;
  /** JSON Schema (2020-12) of the input as it may be sent: SI numbers or text in trade notation. */
  readonly input: Readonly<Record<string, unknown>>;
  readonly outputs: readonly ListedOutput[];
  readonly source: readonly Source[];
  readonly validity: string;
  readonly caution?: string;
  readonly example: unknown;
}

/** All computations of the catalogue, in its order. */
export function listComputations(): readonly ListedComputation[] {
  return computations.map(listComputation);
}

/** One computation as plain data, for forms and documentation. */
export function listComputation(computation: AnyComputation): ListedComputation {
  const { name, title, summary, source, validity, caution, example } = computation;
  return {
    name,
    title,
    summary,
    input: z.toJSONSchema(inputOf(computation), { io: "input" }),
    outputs: Object.entries(computation.outputs).map(([key, spec]) => listOutput(key, spec)),
    source,
    validity,
    ...(caution === undefined ? {} : { caution }),
    example,
  };
}

function listOutput(name: string, spec: OutputSpec): ListedOutput {
  return { name, label: spec.label, dimension: spec.dimension, unit: unitOf(spec) };
}

/**
 * The computation of that name.
 * @throws CalcRefusal that names those of the same topic, or the topics
 */
export function computationNamed(name: string): AnyComputation {
  const found = computations.find((computation) => computation.name === name);
  if (found !== undefined) return found;
  const topic = name.split(".")[0] ?? "";
  const names = computations.map((computation) => computation.name);
  const near = names.filter((other) => other.startsWith(`${topic}.`));
  const topics = [...new Set(names.map((other) => other.split(".")[0]))];
  const known =
    near.length > 0 ? `of ${topic} there are ${near.join(", ")}` : `topics are ${topics.join(", ")}`;
  throw new CalcRefusal("UNKNOWN_COMPUTATION", `"${name.slice(0, 80)}" is no computation; ${known}`, "name");
}
