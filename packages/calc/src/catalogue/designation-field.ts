import { z } from "zod";
import { parseDesignation } from "../quantity/designation/designation";
import type { DesignationKind } from "../quantity/designation/kind";
import { readAsField } from "./notation-issue";

/** How a designation field is labelled. */
export interface DesignationOptions {
  /** Sentence case, e.g. "Thread of the bolt". */
  readonly label: string;
  readonly help?: string;
}

const described: Readonly<Record<DesignationKind, string>> = {
  thread: "A thread, e.g. M10x1.25 or 3/8-24 UNF",
  grade: "A strength class, e.g. class 8.8 or grade 8",
  tyre: "A tyre size, e.g. 175/70 R 13 82T or 5.20-13",
  wheel: "A wheel size, e.g. 5½J x 14 ET 20",
};

/**
 * A zod field for one designation: takes its text, however it is written, and yields the typed object of
 * {@link parseDesignation}. Text that cannot be read is a field error that quotes it.
 */
export function designation<K extends DesignationKind>(kind: K, { label, help }: DesignationOptions) {
  return z
    .string({ error: () => `${described[kind]} is wanted` })
    .transform((text, context) => readAsField(() => parseDesignation(kind, text), context) ?? z.NEVER)
    .meta({
      title: label,
      description: `${help === undefined ? "" : `${help}. `}${described[kind]}.`,
      designation: kind,
    });
}
