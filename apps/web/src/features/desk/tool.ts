import { extractSettingsPath } from "../../lib/path";

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
