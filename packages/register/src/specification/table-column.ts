import { foldName } from "../characteristic/fold-name";
import { type AlternativeRole, alternativeRoles } from "./specification";

/** What an alternative's columns hold. */
export const alternativeParts = ["value", "note", "source", "locus", "trust"] as const;
export type AlternativePart = (typeof alternativeParts)[number];

export type PlainColumn =
  | "characteristic"
  | "label"
  | "side"
  | "nominal"
  | "lower"
  | "upper"
  | "serialFrom"
  | "serialTo"
  | "builtFrom"
  | "builtTo"
  | "option"
  | "source"
  | "sourceKind"
  | "sourceEdition"
  | "locus"
  | "trust"
  | "note";

/** Column of a specification's table. */
export type SpecificationColumn = PlainColumn | `${AlternativeRole}.${AlternativePart}`;

/** Headings, ours first, then others that people write. */
const plain: Readonly<Record<PlainColumn, readonly string[]>> = {
  characteristic: ["Characteristic", "Key"],
  // For whoever reads the table; what counts is the key.
  label: ["Label", "Name"],
  side: ["Side"],
  nominal: ["Nominal", "Value", "Specified"],
  lower: ["Lower", "Lower limit", "Minimum", "Min"],
  upper: ["Upper", "Upper limit", "Maximum", "Max"],
  serialFrom: ["Chassis from", "Number from", "From chassis"],
  serialTo: ["Chassis to", "Number to", "To chassis"],
  builtFrom: ["Built from"],
  builtTo: ["Built to"],
  option: ["Option", "Option code"],
  source: ["Source"],
  sourceKind: ["Source kind", "Kind of source"],
  sourceEdition: ["Source edition", "Edition"],
  locus: ["Page", "Locus", "Section"],
  trust: ["Trust"],
  note: ["Note", "Notes", "Remark", "Remarks"],
};

const roleNames: Readonly<Record<AlternativeRole, readonly (readonly [many: string, one: string])[]>> = {
  periodOption: [["Period options", "Period option"]],
  acceptedSubstitute: [
    ["Substitutes", "Substitute"],
    ["Accepted substitutes", "Accepted substitute"],
  ],
  serviceReplacement: [
    ["Replacements", "Replacement"],
    ["Service replacements", "Service replacement"],
    ["Later service replacements", "Later service replacement"],
  ],
};

function headingsOf(role: AlternativeRole, part: AlternativePart): readonly string[] {
  return roleNames[role].flatMap(([many, one]) => {
    if (part === "value") return [many, one];
    if (part === "trust") return [`${one} trust`];
    return [`${one} ${part === "locus" ? "page" : part}s`, `${one} ${part === "locus" ? "page" : part}`];
  });
}

const all: readonly (readonly [SpecificationColumn, readonly string[]])[] = [
  ...(Object.entries(plain) as [PlainColumn, readonly string[]][]),
  ...alternativeRoles.flatMap((role) =>
    alternativeParts.map((part) => [`${role}.${part}` as const, headingsOf(role, part)] as const),
  ),
];

const byName = new Map(
  all.flatMap(([column, names]) => names.map((name) => [foldName(name), column] as const)),
);
const ours = new Map(all.map(([column, [heading = ""]]) => [column, heading]));

/** The column a heading names, however it is capitalised or hyphenated; `undefined` for one that is none. */
export function columnNamed(heading: string): SpecificationColumn | undefined {
  return byName.get(foldName(heading));
}

/** The heading a column is written under. */
export function headingOf(column: SpecificationColumn): string {
  return ours.get(column) ?? column;
}

/** Every heading there is, ours only, for telling what would be right. */
export const specificationHeadings: readonly string[] = [...ours.values()];
