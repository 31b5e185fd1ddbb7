import { eventReportPdf, requestOf } from "@trunnion/api";
import { withoutControls } from "../../../../../../../lib/address";
import { fileAnswer } from "../../../../../../../lib/file-answer";
import { service } from "../../../../../../../lib/service";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly event: string }>;
}

/** What became of an event, as PDF. */
export async function GET(request: Request, { params }: Segments): Promise<Response> {
  const { club, event: named } = await params;
  const event = withoutControls(named);
  const paper = new URL(request.url).searchParams.get("paper") === "Letter" ? "Letter" : "A4";
  return fileAnswer({
    type: "application/pdf",
    name: `${event}-report.pdf`,
    inline: true,
    place: "report.pdf",
    make: async () => eventReportPdf(await requestOf(service(), request.headers), { club, event, paper }),
  });
}
