import type { Database } from "@trunnion/db";
import { clubOfSheet } from "@trunnion/db/gate";
import { LAYOUT_VERSION, refused, type SheetChange, type SheetModel, sheetChanges } from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { openMember, openVisitor, type SignedIn } from "../gate";
import { makeSheets } from "./write";

/** How a printed sheet stands against the record of today. */
export type SheetStanding =
  /** The record says what the sheet says. */
  | "asPrinted"
  /** The record says something else than the sheet does. */
  | "changed"
  /** The entry was withdrawn, or the sheet is of an earlier layout: nothing can be compared. */
  | "notComparable";

/** What anybody who holds the paper may see: no name, and nothing of the car but its number at that event. */
export interface SheetFace {
  readonly code: string;
  readonly club: string;
  readonly event: string;
  readonly number: string;
  /** ISO instant. */
  readonly printedAt: string;
  readonly standing: SheetStanding;
  /** What changed, for a member of the club; missing for anybody else. */
  readonly changes?: readonly SheetChange[];
}

/** A printed sheet beside the record of today. */
export interface PrintedSheetNow {
  readonly id: string;
  readonly entryId: string;
  readonly event: { readonly slug: string; readonly name: string };
  /** As it was printed. */
  readonly model: SheetModel;
  readonly printedAt: Date;
  readonly standing: SheetStanding;
  readonly changes: readonly SheetChange[];
}

/** A code as written by hand: spaces and hyphens left out, letters that stand for figures read as these. */
export const readCode = (typed: string): string =>
  typed.toUpperCase().replace(/[\s-]/g, "").replace(/O/g, "0").replace(/[IL]/g, "1");

/** A printed sheet of this club by its code; undefined where there is none. */
export async function printedSheetNow(ctx: Context, code: string): Promise<PrintedSheetNow | undefined> {
  const printed = await ctx.db.printedSheet.findUnique({
    where: { code: readCode(code) },
    include: { entry: { include: { event: true } } },
  });
  if (!printed) return undefined;
  const { entry, id, entryId, printedAt } = printed;
  const model = printed.model as unknown as SheetModel;
  const known = { id, entryId, printedAt, model, event: { slug: entry.event.slug, name: entry.event.name } };
  if (entry.withdrawnAt !== null || printed.layoutVersion !== LAYOUT_VERSION)
    return { ...known, standing: "notComparable", changes: [] };
  const [made] = await makeSheets(ctx, {
    event: entry.event.slug,
    number: entry.runningNumber,
    book: await bookOf(ctx),
  });
  const changes = made === undefined ? [] : sheetChanges(model, made.sheet);
  return { ...known, standing: changes.length > 0 ? "changed" : "asPrinted", changes };
}

/**
 * Whether the record has moved on since a sheet was printed, for whoever holds the paper.
 *
 * @throws Refusal SHEET_CODE_UNKNOWN
 */
export async function sheetFace(
  database: Database,
  typed: string,
  signedIn: SignedIn | undefined,
): Promise<SheetFace> {
  const code = readCode(typed);
  const club = /^[0-9A-Z]{8}$/.test(code) ? await clubOfSheet(database, code) : null;
  if (!club) throw refused("SHEET_CODE_UNKNOWN", { code: code.slice(0, 20) });
  const face = await openVisitor(database, club.slug, async (ctx) => {
    const now = ctx && (await printedSheetNow(ctx, code));
    if (!now) throw refused("SHEET_CODE_UNKNOWN", { code });
    const { model, event, printedAt, standing, changes } = now;
    const number = model.entry.runningNumber;
    const told = { code, club: ctx.club.name, event: event.name, number, standing };
    return { face: { ...told, printedAt: printedAt.toISOString() }, changes };
  });
  const member = signedIn && (await isMember(database, signedIn, club.slug));
  return member ? { ...face.face, changes: face.changes } : face.face;
}

async function isMember(database: Database, signedIn: SignedIn, club: string): Promise<boolean> {
  try {
    return await openMember(database, signedIn, club, async () => true);
  } catch (error) {
    if (error instanceof Error && "code" in error && error.code === "NOT_A_MEMBER") return false;
    throw error;
  }
}
