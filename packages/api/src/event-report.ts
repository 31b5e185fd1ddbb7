import { refused } from "@trunnion/register";
import { eventReport, openMember, reportCsv } from "@trunnion/service";
import { drawEventReport } from "@trunnion/sheets";
import type { Request } from "./request";

export interface EventReportInput {
  readonly club: string;
  readonly event: string;
}

function reportOf(request: Request, { club, event }: EventReportInput) {
  if (!request.signedIn) throw refused("NOT_SIGNED_IN", {});
  return openMember(request.database, request.signedIn, club, (ctx) => eventReport(ctx, event));
}

/** An event's report as PDF. @throws Refusal NOT_SIGNED_IN, and those of `openMember` and `eventReport` */
export async function eventReportPdf(
  request: Request,
  { paper, ...of }: EventReportInput & { readonly paper: "A4" | "Letter" },
): Promise<Uint8Array> {
  return drawEventReport(await reportOf(request, of), { paper });
}

/** An event's report as CSV. @throws Refusal NOT_SIGNED_IN, and those of `openMember` and `eventReport` */
export async function eventReportCsv(request: Request, of: EventReportInput): Promise<Uint8Array> {
  return new TextEncoder().encode(reportCsv(await reportOf(request, of)));
}
