import {
  addCarPath,
  characteristicsPath,
  exportPath,
  extractSettingsPath,
  garagePath,
  importsPath,
  instrumentsPath,
  journalPath,
  noticesPath,
  numbersPath,
  ownContactPath,
  partsPath,
  reviewPath,
  ruleSetsPath,
  specificationsPath,
} from "../../lib/path";

/** One thing to work with, and who may. */
export interface Tool {
  readonly href: string;
  readonly title: string;
  readonly text: string;
}

type Declared = Omit<Tool, "href"> & {
  readonly href: (club: string) => string;
  /** Roles that may; left out: every member. */
  readonly for?: readonly string[];
};

const keepers = ["registrar", "fleetManager"];

const tools: readonly Declared[] = [
  {
    href: (club) => reviewPath(club),
    title: "Review",
    text: "Changes that owners handed in: what each does, with its photos; accept, decline or ask.",
    for: keepers,
  },
  {
    href: garagePath,
    title: "My garage",
    text: "The cars you keep: hand in a change, see what falls due and what the scrutineer will look at.",
  },
  {
    href: noticesPath,
    title: "Messages",
    text: "What members were told about submissions, and whether it went out.",
  },
  {
    href: (club) => importsPath(club),
    title: "Read in a list of cars",
    text: "From a spreadsheet or CSV file: settle its columns, see what would change, then do it; each can be undone.",
    for: keepers,
  },
  {
    href: (club) => addCarPath(club),
    title: "Add a car",
    text: "Put a car on the register by its number, with what is known of it.",
    for: keepers,
  },
  {
    href: numbersPath,
    title: "Numbers",
    text: "Numbers that do not fit, that several cars claim, and dates out of order, each with the way to settle it.",
    for: keepers,
  },
  {
    href: specificationsPath,
    title: "Specifications",
    text: "What the works specified for each series, version by version, and what a change would move.",
  },
  {
    href: characteristicsPath,
    title: "Characteristics",
    text: "Everything that can be recorded of a car, the club's own included.",
  },
  {
    href: (club) => partsPath(club),
    title: "Parts",
    text: "Donor parts and substitutes: what fits what and what differs, who has them, where one was last found.",
  },
  {
    href: instrumentsPath,
    title: "Instruments",
    text: "What the club measures with and how well each tells, what was read with it, and which are out of use.",
  },
  {
    href: ruleSetsPath,
    title: "Rule sets",
    text: "What a scrutineer looks at, limits and classes: copied from year to year, with the differences shown.",
  },
  {
    href: exportPath,
    title: "Take out",
    text: "The whole club as an archive that outlives this program, and lists as CSV or spreadsheet.",
    for: keepers,
  },
  {
    href: ownContactPath,
    title: "Your contact data",
    text: "What the register holds of you as a keeper: correct it, or take it with you.",
  },
  {
    href: (club) => journalPath(club),
    title: "Journal",
    text: "Who changed what, when and why, before and after; and whether its chain holds.",
  },
  {
    href: extractSettingsPath,
    title: "Public extract",
    text: "Choose what everybody may see of the club's cars, without personal data.",
    for: keepers,
  },
];

/** The tools somebody with these roles may use. */
export function toolsFor(club: string, roles: readonly string[]): readonly Tool[] {
  return tools
    .filter(({ for: needed }) => needed === undefined || needed.some((role) => roles.includes(role)))
    .map(({ href, title, text }) => ({ href: href(club), title, text }));
}
