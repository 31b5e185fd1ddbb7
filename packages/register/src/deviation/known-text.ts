import type { Source, Trust } from "../specification/specification";
import type { Origin } from "../state/state";

/** How a figure is known: the part of a state value that says so. */
export interface Known {
  readonly origin?: Origin;
  readonly source: Source;
  /** Since when, as the record says it; a day is shown as written. */
  readonly since?: string;
}

const originWords: Readonly<Record<Origin, string>> = {
  specification: "as specified",
  asBuilt: "as built",
  modification: "modified",
  reading: "seen or measured",
};

/** How far a statement is trusted, in words. */
export const trustWords: Readonly<Record<Trust, string>> = {
  documented: "documented",
  stated: "stated",
  inferred: "inferred",
  unknown: "origin not known",
};

/** Title and place of a source: "Works' build book, p. 12". */
export function sourceText({ title, locus }: Source): string {
  return [title, locus].filter((part) => part !== undefined && part !== "").join(", ");
}

/** One line: "Seen or measured since 12 April 2026: setting sheet, p. 2 (documented)". */
export function knownText({ origin, source, since }: Known): string {
  const how = [origin === undefined ? undefined : originWords[origin], since].filter(
    (part) => part !== undefined,
  );
  const line = `${how.length > 0 ? `${how.join(" ")}: ` : ""}${sourceText(source)} (${trustWords[source.trust]})`;
  return line.charAt(0).toUpperCase() + line.slice(1);
}
