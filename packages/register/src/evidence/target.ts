/** What a piece of evidence can support: each kind is a table of the record. */
export const evidenceTargetKinds = [
  "car",
  "asBuiltValue",
  "modification",
  "settingSheet",
  "finding",
  "carIdentity",
  "carStatusSpan",
  "historyNote",
  "specificationEntry",
  "numberDecision",
  "submission",
  "part",
] as const;
export type EvidenceTargetKind = (typeof evidenceTargetKinds)[number];

/** One thing of the record that evidence supports. */
export interface EvidenceTarget {
  readonly kind: EvidenceTargetKind;
  readonly id: string;
}

/** Kinds in words, as headings and choices say them. */
export const evidenceTargetWords: Readonly<Record<EvidenceTargetKind, string>> = {
  car: "The car as a whole",
  asBuiltValue: "As built",
  modification: "Modification",
  settingSheet: "Setting sheet",
  finding: "Finding",
  carIdentity: "Number or mark",
  carStatusSpan: "Status",
  historyNote: "History",
  specificationEntry: "Specification",
  numberDecision: "Decision on a number",
  submission: "Handed in, not decided",
  part: "Part",
};

const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/**
 * A target in one word, for addresses and forms.
 * @example evidenceTargetReference({ kind: "car", id: "01900000-0000-7000-8000-000000000001" }) // => "car:01900000-0000-7000-8000-000000000001"
 */
export function evidenceTargetReference({ kind, id }: EvidenceTarget): string {
  return `${kind}:${id}`;
}

/** Reads a target's reference; nothing for a text that is none. */
export function readEvidenceTarget(reference: string): EvidenceTarget | undefined {
  const [word = "", id = "", ...rest] = reference.split(":");
  const kind = evidenceTargetKinds.find((one) => one === word);
  return kind === undefined || rest.length > 0 || !uuid.test(id) ? undefined : { kind, id };
}
