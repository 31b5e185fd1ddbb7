import type { Prisma } from "@trunnion/db";
import {
  type FieldDifference,
  type PartialDate,
  type Problems,
  parsePartialDate,
  refused,
} from "@trunnion/register";
import type { CarRecord } from "../record";

/** Reads a date as far as it is known; nothing for an empty entry. Tells what is wrong at the field. */
export function readDate(
  entered: string,
  { field, today, problems }: { readonly field: string; readonly today: string; readonly problems: Problems },
): PartialDate | null {
  if (entered.trim() === "") return null;
  const parsed = parsePartialDate(entered, { today });
  if (parsed.ok) return parsed.date;
  const { message, expected } = parsed.problem;
  problems.add(field, `${message[0]?.toUpperCase()}${message.slice(1)}: write ${expected}.`);
  return null;
}

/** A field of a form as the record has it and as somebody wants it, both as text. */
export interface WantedField {
  readonly field: string;
  readonly label: string;
  readonly now: string;
  readonly wanted: string;
}

/** What was in a field at a version, from the journal; the present text where the journal does not tell. */
export type FieldBefore = (field: string) => string | undefined;

/**
 * Refuses to write over a change that the form did not know of.
 *
 * @throws Refusal CHANGED_MEANWHILE with every field that differs, when the versions differ
 */
export function requireVersion(
  { version }: Pick<CarRecord, "version">,
  opened: number,
  fields: readonly WantedField[],
  before: FieldBefore = () => undefined,
): void {
  if (version === opened) return;
  const differences = fields
    .filter(({ now, wanted }) => now !== wanted)
    .map(
      ({ field, label, now, wanted }): FieldDifference => ({
        field,
        label,
        was: before(field) ?? "",
        theirs: now,
        yours: wanted,
      }),
    );
  throw refused("CHANGED_MEANWHILE", { what: "this car", version, differences });
}

/** The fields that differ, before and after, as the journal keeps them; nothing when none do. */
export function changedFields(
  fields: readonly WantedField[],
): { readonly before: Prisma.InputJsonObject; readonly after: Prisma.InputJsonObject } | undefined {
  const changed = fields.filter(({ now, wanted }) => now !== wanted);
  if (changed.length === 0) return undefined;
  return {
    before: Object.fromEntries(changed.map(({ field, now }) => [field, now])),
    after: Object.fromEntries(changed.map(({ field, wanted }) => [field, wanted])),
  };
}
