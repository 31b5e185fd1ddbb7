/** What kind of thing a source is, as the database names it, in words. */
export const sourceKindWords = {
  worksRecord: "works record",
  publication: "publication",
  letter: "letter",
  photograph: "photograph",
  keeperStatement: "keeper's statement",
  registerFile: "register file",
  inspection: "inspection",
  other: "other",
} as const;

/** What kind of thing a source is. */
export type SourceKindName = keyof typeof sourceKindWords;

export const sourceKindNames = Object.keys(sourceKindWords) as readonly SourceKindName[];
