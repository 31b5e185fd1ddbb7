import { refused } from "@trunnion/register";
import { blankSheet, bookOf, openMember, printSheets, type SheetFace, sheetFace } from "@trunnion/service";
import { drawSheetsAside, type SheetKind } from "@trunnion/sheets";
import type { Request } from "./request";

export interface SheetsInput {
  readonly club: string;
  readonly event: string;
  readonly number?: string;
  readonly paper: "A4" | "Letter";
  /** One sheet without a car instead: the checks every car gets. */
  readonly blank?: boolean;
  /** Plain when left out. */
  readonly kind?: SheetKind;
  /** Where this installation is reached: the printed code leads there. */
  readonly origin?: string;
}

/**
 * The pre-event sheets of an event, or of one entry, as PDF.
 *
 * @throws Refusal NOT_SIGNED_IN, and those of `openMember` and `printSheets`
 */
export async function sheetsPdf(request: Request, input: SheetsInput): Promise<Uint8Array> {
  if (!request.signedIn) throw refused("NOT_SIGNED_IN", {});
  const { club, paper, kind = "plain", event, number, origin } = input;
  const wanted = {
    event,
    ...(number === undefined ? {} : { number }),
    ...(origin === undefined ? {} : { origin }),
  };
  const models = await openMember(request.database, request.signedIn, club, async (ctx) => {
    const book = await bookOf(ctx);
    return input.blank ? [await blankSheet(ctx, { event, book })] : printSheets(ctx, { ...wanted, book });
  });
  return drawSheetsAside(models, { paper, kind });
}

/**
 * Whether the record moved on since a sheet was printed; what changed for a member of its club.
 *
 * @throws Refusal SHEET_CODE_UNKNOWN
 */
export function printedSheetFace({ database, signedIn }: Request, code: string): Promise<SheetFace> {
  return sheetFace(database, code, signedIn ?? undefined);
}
