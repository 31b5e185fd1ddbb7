/**
 * Parts of a car's record that a club may publish. What could tell of a person is not on offer: keepers, registration
 * marks, remarks, free history, photographs.
 */
export const extractParts = [
  "built",
  "firstRegistered",
  "status",
  "numbers",
  "options",
  "asBuilt",
  "today",
] as const;
export type ExtractPart = (typeof extractParts)[number];

/** What each part is called, and what it holds. */
export const extractPartLabels: Readonly<
  Record<ExtractPart, { readonly label: string; readonly hint: string }>
> = {
  built: { label: "When it was built", hint: "As far as it is known." },
  firstRegistered: { label: "When it was first registered", hint: "The date, not the mark." },
  status: {
    label: "What has become of it",
    hint: "In use, under restoration, dismantled, lost from sight …",
  },
  numbers: { label: "Commission, engine and body numbers", hint: "As they stand on the record now." },
  options: { label: "Options it was built with", hint: "By their codes and names." },
  asBuilt: { label: "As built", hint: "The characteristics ticked below, as they left the works." },
  today: { label: "As it is today", hint: "The characteristics ticked below, as last recorded." },
};
