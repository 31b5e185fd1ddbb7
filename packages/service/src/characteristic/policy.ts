import { designationKinds, dimensions } from "@trunnion/calc";
import {
  assemblies,
  type Characteristic,
  characteristicClashes,
  characteristicLimits,
  characteristicSchema,
  foldName,
  Invalid,
  Problems,
  parseLimit,
  type UsualRange,
} from "@trunnion/register";
import { z } from "zod";
import { lineInput, proseInput } from "../entry-input";

const tick = z.enum(["yes", "no"]).default("no");

/** What a form says of a characteristic; parts that its kind does not have are passed over. */
export const characteristicFields = {
  label: lineInput(characteristicLimits.label).min(1, "name it as people do"),
  assembly: z.enum(assemblies),
  kind: z.enum(["quantity", "choice", "designation", "text", "date"]),
  sided: tick,
  setting: tick,
  removable: tick,
  help: proseInput(characteristicLimits.help).pipe(
    z.string().min(1, "say what is meant, and how to see or measure it"),
  ),
  /** Other names, parted by commas. */
  also: lineInput(characteristicLimits.also * characteristicLimits.label).default(""),
  dimension: z.enum(dimensions).default("length"),
  metric: lineInput(40).default(""),
  imperial: lineInput(40).default(""),
  /** Least and most that can be believed, in notation. */
  minimum: lineInput(40).default(""),
  maximum: lineInput(40).default(""),
  /** Lowest and highest that are usual, in notation: both or neither. */
  usualLowest: lineInput(40).default(""),
  usualHighest: lineInput(40).default(""),
  toe: tick,
  designation: z.enum(designationKinds).default("thread"),
  maximumLength: lineInput(6).default(""),
  choices: z
    .array(
      z.object({
        code: lineInput(40).default(""),
        label: lineInput(characteristicLimits.label).default(""),
        also: lineInput(400).default(""),
      }),
    )
    .max(characteristicLimits.choices * 2)
    .default([]),
} as const;
export type CharacteristicFields = z.infer<z.ZodObject<typeof characteristicFields>>;

const listOf = (text: string) =>
  text
    .split(/[,;]/)
    .map((word) => word.trim())
    .filter((word) => word !== "");

/** A code made of words: "Two pieces, steel" → "twoPiecesSteel". */
export function codeOf(label: string): string {
  const words = foldName(label)
    .split(/[^a-z0-9]+/)
    .filter((word) => word !== "");
  const code = words.map((word, index) =>
    index === 0 ? word : word.charAt(0).toUpperCase() + word.slice(1),
  );
  return code.join("").slice(0, 40);
}

function choicesOf(fields: CharacteristicFields) {
  return fields.choices
    .filter(({ code, label }) => code !== "" || label !== "")
    .map(({ code, label, also }) => ({
      code: code === "" ? codeOf(label) : code,
      label,
      ...(also === "" ? {} : { also: listOf(also) }),
    }));
}

/** The least or most that can be believed, SI, read in the notation of the quantity it is for. */
function boundOf(
  characteristic: Characteristic,
  { field, text }: { readonly field: string; readonly text: string },
  problems: Problems,
) {
  if (text === "") return {};
  const read = parseLimit(characteristic, text);
  if (read.ok) return { [field]: read.si };
  problems.add(field, read.problem.message);
  return {};
}

function particularsOf(fields: CharacteristicFields): Record<string, unknown> {
  const { kind, dimension, metric, imperial, toe, designation, maximumLength } = fields;
  switch (kind) {
    case "quantity":
      return { dimension, units: { metric, imperial }, ...(toe === "yes" ? { notation: "toe" } : {}) };
    case "choice":
      return { choices: choicesOf(fields) };
    case "designation":
      return { designation };
    case "text":
      return { maximumLength: maximumLength === "" ? 120 : Number(maximumLength) };
    case "date":
      return {};
  }
}

const formFields: Readonly<Record<string, string>> = {
  "units.metric": "metric",
  "units.imperial": "imperial",
  notation: "toe",
  usual: "usualHighest",
};

function told(problems: Problems, { issues }: z.ZodError): void {
  for (const { path, message } of issues) {
    const place = path.join(".");
    // What is wrong with a list in a form is told at the list.
    const field = place.replace(/^(choices\.\d+)$/, "$1.label").replace(/^also\..*/, "also");
    problems.add(formFields[field] ?? field, message);
  }
}

function usualOf(
  characteristic: Characteristic,
  { usualLowest, usualHighest }: CharacteristicFields,
  problems: Problems,
): { readonly usual?: UsualRange } {
  if (usualLowest === "" && usualHighest === "") return {};
  const [lowest, highest] = [
    parseLimit(characteristic, usualLowest),
    parseLimit(characteristic, usualHighest),
  ];
  if (!lowest.ok) problems.add("usualLowest", lowest.problem.message);
  if (!highest.ok) problems.add("usualHighest", highest.problem.message);
  return lowest.ok && highest.ok ? { usual: { lowest: lowest.si, highest: highest.si } } : {};
}

/**
 * Reads the form of a characteristic.
 *
 * @throws Invalid with everything that is wrong, field by field
 */
export function readCharacteristic(key: string, fields: CharacteristicFields): Characteristic {
  const problems = new Problems();
  const { label, assembly, kind, help, also, minimum, maximum } = fields;
  const yes = (answer: "yes" | "no") => answer === "yes";
  const candidate = {
    key,
    label,
    assembly,
    kind,
    help,
    sided: yes(fields.sided),
    setting: yes(fields.setting),
    removable: yes(fields.removable),
    ...(also === "" ? {} : { also: listOf(also) }),
    ...particularsOf(fields),
  };
  const read = characteristicSchema.safeParse(candidate);
  if (!read.success) {
    told(problems, read.error);
    problems.throwIfAny();
    throw read.error;
  }
  if (kind !== "quantity") return read.data;
  const bounds = {
    ...boundOf(read.data, { field: "minimum", text: minimum }, problems),
    ...boundOf(read.data, { field: "maximum", text: maximum }, problems),
  };
  const usual = usualOf(read.data, fields, problems);
  const whole = characteristicSchema.safeParse({ ...candidate, ...bounds, ...usual });
  if (!whole.success) told(problems, whole.error);
  problems.throwIfAny();
  return whole.success ? whole.data : read.data;
}

/** Refuses a characteristic whose key or name another has, the built-in ones included. */
export function refuseClash(wanted: Characteristic, others: readonly Characteristic[]): void {
  const clash = characteristicClashes([...others, wanted]).find(({ claimant }) => claimant === wanted.key);
  if (!clash) return;
  const { kind, claimed, holder } = clash;
  const field =
    kind === "key" ? "key" : claimed === wanted.label || claimed === wanted.key ? "label" : "also";
  throw new Invalid([{ field, message: `"${claimed}" is taken by ${holder}; give it another` }]);
}

/** Parts of a characteristic on which the reading of its values depends, by what people call them. */
const structure: Readonly<Record<string, string>> = {
  kind: "kind",
  sided: "being on each side",
  setting: "being a setting",
  removable: "being left off",
  dimension: "dimension",
  notation: "notation",
  designation: "designation",
};

/** What of a characteristic could not change without making its values read otherwise; in words. */
export function structuralChange(before: Characteristic, after: Characteristic): string | undefined {
  const [was, is] = [before, after].map((one) => one as unknown as Readonly<Record<string, unknown>>);
  const part = Object.keys(structure).find((name) => was?.[name] !== is?.[name]);
  return part === undefined ? undefined : structure[part];
}

/** Choices that are in use and would be gone, as codes. */
export function choicesGone(
  after: Characteristic,
  used: Readonly<Record<string, number>>,
): readonly string[] {
  const kept = new Set(after.kind === "choice" ? after.choices.map(({ code }) => code) : []);
  return Object.keys(used).filter((code) => !kept.has(code));
}

/** The columns a characteristic is kept in. */
export function characteristicColumns(characteristic: Characteristic) {
  const { key, label, assembly, sided, kind, help, setting, removable, ...definition } = characteristic;
  return { columns: { key, label, assembly, sided, kind, help, setting, removable }, definition };
}
