import { eventReportCsv, requestOf } from "@trunnion/api";
import { withoutControls } from "../../../../../../../lib/address";
import { fileAnswer } from "../../../../../../../lib/file-answer";
import { service } from "../../../../../../../lib/service";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly event: string }>;
}

/** What became of an event, as CSV: one line for each decision, point and figure. */
export async function GET(request: Request, { params }: Segments): Promise<Response> {
  const { club, event: named } = await params;
  const event = withoutControls(named);
  return fileAnswer({
    type: "text/csv; charset=utf-8",
    name: `${event}-report.csv`,
    place: "report.csv",
    make: async () => eventReportCsv(await requestOf(service(), request.headers), { club, event }),
  });
}
