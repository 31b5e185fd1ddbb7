import type { Prisma } from "@trunnion/db";
import {
  chassisKey,
  type FieldDifference,
  type PartialDate,
  type Problems,
  parsePartialDate,
  refused,
} from "@trunnion/register";

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
  /** May name people: the journal, which cannot be erased, says that it changed and not to what. */
  readonly personal?: boolean;
}

/**
 * Each field that somebody else changed since the form was opened, with what both made of it. Where the form does not
 * say what it was opened with, each that differs from what is wanted.
 */
export function differencesOf(
  fields: readonly WantedField[],
  opened: Readonly<Record<string, string>>,
): readonly FieldDifference[] {
  return fields
    .filter(({ field, now, wanted }) =>
      opened[field] === undefined ? now !== "" && now !== wanted : opened[field] !== now,
    )
    .map(({ field, label, now, wanted }) => ({
      field,
      label,
      was: opened[field] ?? "",
      theirs: now,
      yours: wanted,
    }));
}

/**
 * Lets a form through that was opened with the version that stands.
 *
 * @throws Refusal CHANGED_MEANWHILE with what both made of it
 */
export function requireUnmoved({
  what,
  version,
  input,
  fields,
}: {
  readonly what: string;
  readonly version: number;
  readonly input: { readonly version: number; readonly opened: Readonly<Record<string, string>> };
  readonly fields: readonly WantedField[];
}): void {
  if (input.version === version) return;
  throw refused("CHANGED_MEANWHILE", { what, version, differences: differencesOf(fields, input.opened) });
}

/** The fields that differ, before and after, as the journal keeps them; nothing when none do. */
export function changedFields(
  fields: readonly WantedField[],
): { readonly before: Prisma.InputJsonObject; readonly after: Prisma.InputJsonObject } | undefined {
  const changed = fields.filter(({ now, wanted }) => now !== wanted);
  if (changed.length === 0) return undefined;
  const told = (text: string, { personal }: WantedField) =>
    personal !== true ? text : text === "" ? "" : "not told here";
  return {
    before: Object.fromEntries(changed.map((one) => [one.field, told(one.now, one)])),
    after: Object.fromEntries(changed.map((one) => [one.field, told(one.wanted, one)])),
  };
}

/** The name of a field of the journal in words: "firstRegistered" → "First registered". */
export function sayField(name: string): string {
  const words = name.replace(/([a-z])([A-Z])/g, "$1 $2").toLowerCase();
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

/** One entry of the journal, as far as it says what changed on a car. */
export interface JournalledChange {
  readonly sequence: bigint;
  readonly action: string;
  readonly before: unknown;
  readonly after: unknown;
}

const told = (part: unknown, name: string): string => {
  const value =
    typeof part === "object" && part !== null ? (part as Record<string, unknown>)[name] : undefined;
  if (value === undefined || value === null) return "";
  return typeof value === "string" ? value : JSON.stringify(value);
};

/** What entries of the journal changed, as differences to show beside one's own; at most 40. */
export function journalDifferences(
  entries: readonly JournalledChange[],
  known: ReadonlySet<string>,
): readonly FieldDifference[] {
  return entries
    .flatMap(({ sequence, action, before, after }) => {
      const names = new Set([before, after].flatMap((part) => Object.keys((part ?? {}) as object)));
      const noun = sayField(action.split(".")[0] ?? "");
      return [...names].flatMap((name): FieldDifference[] => {
        const [was, theirs] = [told(before, name), told(after, name)];
        if (was === theirs || known.has(name)) return [];
        const label = `${noun}: ${sayField(name).toLowerCase()}`;
        return [{ field: `journal-${sequence}-${name}`, label, was, theirs, yours: "" }];
      });
    })
    .slice(0, 40);
}

/** Longest number a car is filed under, in characters: an address names the car by it. */
const CHASSIS_LIMIT = 40;
/** Cars that may claim one number: an address names them by one figure. */
export const CLAIM_LIMIT = 9;

/** Why a number cannot be the one a car is filed under; nothing where it can. */
export function chassisProblem(chassis: string): string | undefined {
  if (chassisKey(chassis) === "") return "Write the chassis number: letters or figures.";
  if (chassis.includes("~"))
    return `"${chassis}" has a "~" in it: write the number alone, and tick that another car claims it.`;
  if (chassis.length > CHASSIS_LIMIT)
    return `This has ${chassis.length} characters: write at most ${CHASSIS_LIMIT}.`;
  return undefined;
}

/** A number of the register's that is taken, and the cars that have it. */
export interface TakenNumber {
  readonly references: readonly string[];
  readonly claims: readonly number[];
}

/** The claim a car gets under a number: 1, or the next where somebody says that another car claims it. */
export function nextClaim(
  chassis: string,
  { references, claims }: TakenNumber,
  another: boolean,
): { readonly claim: number } | { readonly problem: string } {
  if (claims.length === 0) return { claim: 1 };
  if (!another) {
    const list = references.join(", ");
    return {
      problem: `${chassis} is on the register already: ${list}. Tick below if this is another car that claims the number.`,
    };
  }
  const claim = Math.max(...claims) + 1;
  if (claim <= CLAIM_LIMIT) return { claim };
  return { problem: `${claims.length} cars claim ${chassis}: settle some of them first.` };
}
