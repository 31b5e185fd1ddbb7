import { requestOf, type SheetsInput, sheetsPdf } from "@trunnion/api";
import { serviceSettings } from "../../../../../../../env";
import { withoutControls } from "../../../../../../../lib/address";
import { fileAnswer } from "../../../../../../../lib/file-answer";
import { service } from "../../../../../../../lib/service";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly event: string }>;
}

const packs: Readonly<Record<string, NonNullable<SheetsInput["parts"]>>> = {
  lists: ["overview", "sheets", "openPoints"],
  overview: ["overview"],
  stations: ["stations"],
  openPoints: ["openPoints"],
  results: ["results"],
};

/** The pre-event sheets of an event, or of one running number, as PDF. */
export async function GET(request: Request, { params }: Segments): Promise<Response> {
  const { club, event: named } = await params;
  const event = withoutControls(named);
  const query = new URL(request.url).searchParams;
  const number = query.get("number");
  const asked = query.get("kind");
  const kind = asked === "fillable" || asked === "tagged" ? asked : "plain";
  const parts = packs[query.get("parts") ?? query.get("with") ?? ""] ?? ["sheets"];
  const blank = query.get("blank") === "yes";
  const paper = query.get("paper") === "Letter" ? "Letter" : "A4";
  return fileAnswer({
    type: "application/pdf",
    name: number === null ? `${event}.pdf` : `${event}-${number}.pdf`,
    inline: true,
    place: "sheets.pdf",
    make: async () => {
      const who = await requestOf(service(), request.headers);
      const { baseUrl: origin } = serviceSettings();
      return sheetsPdf(who, {
        club,
        event,
        paper,
        kind,
        parts,
        origin,
        blank,
        ...(number === null ? {} : { number }),
      });
    },
  });
}
