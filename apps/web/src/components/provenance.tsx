import type { Origin, Source, Trust } from "@trunnion/register";

/** How a figure is known: the part of a state value that says so. */
export interface Known {
  readonly origin?: Origin;
  readonly source: Source;
  /** Since when, as the record says it; a day is shown as written. */
  readonly since?: string;
}

const origins: Readonly<Record<Origin, string>> = {
  specification: "as specified",
  asBuilt: "as built",
  modification: "modified",
  reading: "seen or measured",
};

const trusts: Readonly<Record<Trust, string>> = {
  documented: "documented",
  stated: "stated",
  inferred: "inferred",
  unknown: "origin not known",
};

/** One line: "Measured since 12 April 2026: setting sheet, p. 2 (documented)". */
export function knownText({ origin, source, since }: Known): string {
  const how = [origin === undefined ? undefined : origins[origin], since].filter(
    (part) => part !== undefined,
  );
  const where = [source.title, source.locus].filter((part) => part !== undefined && part !== "").join(", ");
  const line = `${how.length > 0 ? `${how.join(" ")}: ` : ""}${where} (${trusts[source.trust]})`;
  return line.charAt(0).toUpperCase() + line.slice(1);
}

/** The line under a figure that says how it is known. */
export function Provenance({ known }: { readonly known: Known }) {
  return <p className="text-fine text-soft">{knownText(known)}</p>;
}
