import { type EventReportModel, refused, type SheetModel } from "@trunnion/register";
import {
  blankSheet,
  bookOf,
  type Context,
  eventReport,
  openMember,
  printSheets,
  type SheetFace,
  sheetFace,
} from "@trunnion/service";
import { drawSheetsAside, type PackPartName, type SheetKind } from "@trunnion/sheets";
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
  /** What the file holds, in this order; the sheets alone when left out. Of a blank sheet there is nothing else. */
  readonly parts?: readonly PackPartName[];
  /** Where this installation is reached: the printed code leads there. */
  readonly origin?: string;
}

/**
 * The pre-event sheets of an event, or of one entry, as PDF; with the event's lists where they are asked for.
 *
 * @throws Refusal NOT_SIGNED_IN, and those of `openMember` and `printSheets`
 */
export async function sheetsPdf(request: Request, input: SheetsInput): Promise<Uint8Array> {
  if (!request.signedIn) throw refused("NOT_SIGNED_IN", {});
  const { club, paper, kind = "plain", parts = ["sheets"], blank = false } = input;
  const { models, report } = await openMember(request.database, request.signedIn, club, (ctx) =>
    modelsFor(ctx, input),
  );
  const told = blank ? {} : { parts, ...(report === undefined ? {} : { report }) };
  return drawSheetsAside(models, { paper, kind, ...told });
}

interface PackModels {
  readonly models: readonly SheetModel[];
  readonly report?: EventReportModel;
}

async function modelsFor(
  ctx: Context,
  { event, number, origin, blank, parts = [] }: SheetsInput,
): Promise<PackModels> {
  const book = await bookOf(ctx);
  if (blank) return { models: [await blankSheet(ctx, { event, book })] };
  const models = await printSheets(ctx, {
    event,
    book,
    ...(number === undefined ? {} : { number }),
    ...(origin === undefined ? {} : { origin }),
  });
  if (!parts.includes("openPoints") && !parts.includes("results")) return { models };
  return { models, report: await eventReport(ctx, event) };
}

/**
 * Whether the record moved on since a sheet was printed; what changed for a member of its club.
 *
 * @throws Refusal SHEET_CODE_UNKNOWN
 */
export function printedSheetFace({ database, signedIn }: Request, code: string): Promise<SheetFace> {
  return sheetFace(database, code, signedIn ?? undefined);
}
