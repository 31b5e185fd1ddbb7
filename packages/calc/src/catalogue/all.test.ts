import { describe, expect, test } from "vitest";
import { ZodError, z } from "zod";
import { compoundNamed, symbolNamed } from "../quantity/compound";
import { dimensions, type MeasuredDimension } from "../quantity/dimension";
import { parseQuantity } from "../quantity/parse";
import { computations } from "./all";
import type { AnyComputation } from "./computation";
import { computationNamed, listComputation, listComputations } from "./list";
import { runComputation } from "./run";

/** A JSON Schema node, as far as these tests look into it. */
interface Node {
  readonly type?: string | readonly string[] | undefined;
  readonly title?: string | undefined;
  readonly description?: string | undefined;
  readonly dimension?: string | undefined;
  readonly unit?: string | undefined;
  readonly properties?: Readonly<Record<string, Node>> | undefined;
  readonly required?: readonly string[] | undefined;
  readonly additionalProperties?: unknown;
  readonly items?: Node | undefined;
  readonly anyOf?: readonly Node[] | undefined;
  readonly oneOf?: readonly Node[] | undefined;
}
const nodeSchema: z.ZodType<Node> = z.lazy(() =>
  z.looseObject({
    type: z.union([z.string(), z.array(z.string())]).optional(),
    title: z.string().optional(),
    description: z.string().optional(),
    dimension: z.string().optional(),
    unit: z.string().optional(),
    properties: z.record(z.string(), nodeSchema).optional(),
    required: z.array(z.string()).optional(),
    items: nodeSchema.optional(),
    anyOf: z.array(nodeSchema).optional(),
    oneOf: z.array(nodeSchema).optional(),
  }),
);
const inputSchema = (computation: AnyComputation) => nodeSchema.parse(listComputation(computation).input);

/** Every field that is no object or list itself, with its path; a list's label holds for what is in it. */
function leaves(node: Node, path: string): readonly (readonly [string, Node])[] {
  const inner = [
    ...Object.entries(node.properties ?? {}).flatMap(([key, child]) => leaves(child, `${path}.${key}`)),
    ...(node.items === undefined
      ? []
      : leaves({ title: node.title ?? node.description, ...node.items }, `${path}[]`)),
    ...[...(node.anyOf ?? []), ...(node.oneOf ?? [])]
      .filter(({ type }) => type === "object" || type === "array")
      .flatMap((child) => leaves(child, path)),
  ];
  return inner.length > 0 ? inner : [[path, node]];
}

function measured(dimension: string): MeasuredDimension {
  const found = dimensions.find((each) => each === dimension);
  if (found === undefined || found === "text") throw new Error(`${dimension} has no units`);
  return found;
}

/** Names of the top-level inputs that are quantities. */
function quantityFields(computation: AnyComputation): readonly string[] {
  const entries = Object.entries(inputSchema(computation).properties ?? {});
  return entries.filter(([, { dimension }]) => dimension !== undefined).map(([name]) => name);
}

test("names are unique and of the form topic.noun", () => {
  const names = computations.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  for (const name of names) expect(name).toMatch(/^[a-z][a-zA-Z]*(?:\.[a-z][a-zA-Z]*)+$/);
});

test("a computation is found by its name, and a wrong name is answered with the right ones", () => {
  for (const computation of computations) expect(computationNamed(computation.name)).toBe(computation);
  expect(() => computationNamed("bar.colour")).toThrow(
    /"bar\.colour" is no computation; of bar there are bar\./,
  );
  expect(() => computationNamed("weather")).toThrow(/"weather" is no computation; topics are .*\bbar\b/);
  expect(() => computationNamed("weather")).toThrow(
    expect.objectContaining({ code: "UNKNOWN_COMPUTATION", place: "name" }),
  );
});

test("the list is plain JSON, one entry per computation in the catalogue's order", () => {
  const listed = listComputations();
  expect(listed.map(({ name }) => name)).toEqual(computations.map(({ name }) => name));
  expect(JSON.parse(JSON.stringify(listed))).toEqual(listed);
});

describe.each(computations.map((computation) => [computation.name, computation] as const))(
  "%s",
  (name, computation) => {
    test("says what it is, where it holds and where it comes from", () => {
      expect(computation.title).toMatch(/^[A-Z0-9]/);
      expect(computation.summary).toMatch(/^[A-Z0-9].*\.$/);
      expect(computation.validity.trim()).not.toBe("");
      expect(computation.source.length).toBeGreaterThan(0);
      for (const { title } of computation.source) expect(title.trim()).not.toBe("");
      if (/^(?:brake|fastener)\./.test(name)) expect(computation.caution).toBeDefined();
      expect(computation.caution).not.toBe("");
    });

    test("its outputs have labels and units that exist", () => {
      const outputs = Object.entries(computation.outputs);
      expect(outputs.length).toBeGreaterThan(0);
      for (const [key, { label, dimension, unit, decimals }] of outputs) {
        expect(label, key).toMatch(/^\S.*\S$/);
        if (dimension === "text" || dimension === "asEntered") expect(unit, key).toBeUndefined();
        else expect(() => symbolNamed(dimension, unit), key).not.toThrow();
        if (decimals !== undefined) expect(Number.isInteger(decimals) && decimals >= 0, key).toBe(true);
      }
    });

    test("its input's JSON Schema is closed, labelled, and names real dimensions and units", () => {
      const { type, properties = {}, required = [], additionalProperties } = inputSchema(computation);
      expect({ type, additionalProperties }).toEqual({ type: "object", additionalProperties: false });
      expect(Object.keys(properties).length).toBeGreaterThan(0);
      for (const key of required) expect(properties).toHaveProperty([key]);
      for (const [path, { title, description, dimension, unit }] of leaves(
        inputSchema(computation),
        "input",
      )) {
        expect(title ?? description, `${path} has neither title nor description`).toBeTruthy();
        if (dimension !== undefined) expect(symbolNamed(measured(dimension), unit), path).toBe(unit);
      }
    });

    test("its example computes: finite, printed with units, with a working, twice the same", () => {
      const result = runComputation(computation, computation.example);
      expect(runComputation(computation, computation.example)).toEqual(result);
      expect(result.working.length).toBeGreaterThan(0);
      for (const step of result.working) {
        expect(step.symbol.trim(), step.label).not.toBe("");
        expect(step.label.trim(), step.symbol).not.toBe("");
        expect(step.text.trim(), step.symbol).not.toBe("");
      }
      for (const [key, { si, unit, text }] of Object.entries(result.outputs)) {
        const { dimension, decimals } = computation.outputs[key] ?? { dimension: "text" };
        expect(text.trim(), key).not.toBe("");
        if (typeof si !== "number") continue;
        expect(dimension, `${key} is a number`).not.toBe("text");
        // Its kind is the input's, which these examples call "dimension".
        const kind = dimension === "asEntered" ? String(computation.example.dimension) : dimension;
        const read = parseQuantity(
          text,
          measured(kind),
          compoundNamed(measured(kind), unit) === undefined ? { defaultUnit: unit } : {},
        );
        const digits = decimals === undefined ? Math.abs(si) * 1e-3 : 0;
        expect(Math.abs(read.si - si), `${key}: ${text}`).toBeLessThanOrEqual(
          read.resolution / 2 + digits + Math.abs(si) * 1e-9,
        );
      }
    });

    test("an entry that is no quantity is a field error at its place, and so is a number that is not finite", () => {
      const example = z.record(z.string(), z.unknown()).parse(computation.example);
      for (const field of quantityFields(computation)) {
        for (const bad of ["sixteen", Number.NaN, Number.POSITIVE_INFINITY]) {
          const run = () => runComputation(computation, { ...example, [field]: bad });
          expect(run, `${field}: ${bad}`).toThrow(ZodError);
          expect(run, `${field}: ${bad}`).toThrow(`"${field}"`);
        }
      }
    });

    test("an input it does not know is refused", () => {
      const example = z.record(z.string(), z.unknown()).parse(computation.example);
      expect(() => runComputation(computation, { ...example, notAnInput: 1 })).toThrow(/notAnInput/);
    });
  },
);
