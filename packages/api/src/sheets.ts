import { refused } from "@trunnion/register";
import { bookOf, openMember, printSheets } from "@trunnion/service";
import { drawSheets } from "@trunnion/sheets";
import type { Request } from "./request";

export interface SheetsInput {
  readonly club: string;
  readonly event: string;
  readonly number?: string;
  readonly paper: "A4" | "Letter";
}

/**
 * The pre-event sheets of an event, or of one entry, as PDF.
 *
 * @throws Refusal NOT_SIGNED_IN, and those of `openMember` and `printSheets`
 */
export async function sheetsPdf(request: Request, input: SheetsInput): Promise<Uint8Array> {
  if (!request.signedIn) throw refused("NOT_SIGNED_IN", {});
  const { club, event, number, paper } = input;
  const models = await openMember(request.database, request.signedIn, club, async (ctx) =>
    printSheets(ctx, { event, book: await bookOf(ctx), ...(number === undefined ? {} : { number }) }),
  );
  return drawSheets(models, { paper });
}
