import { dossierPdf, requestOf } from "@trunnion/api";
import { fromSegment } from "../../../../../../../lib/address";
import { fileAnswer } from "../../../../../../../lib/file-answer";
import { service } from "../../../../../../../lib/service";
import { store } from "../../../../../../../lib/store";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly car: string }>;
}

/** Everything the register holds of one car, as PDF; keepers only where asked for. */
export async function GET(request: Request, { params }: Segments): Promise<Response> {
  const { club, car: asked } = await params;
  const car = fromSegment(asked);
  const query = new URL(request.url).searchParams;
  const keepers = query.get("keepers") === "yes";
  const paper = query.get("paper") === "Letter" ? "Letter" : "A4";
  return fileAnswer({
    type: "application/pdf",
    name: `${car}-dossier.pdf`,
    inline: true,
    place: "dossier.pdf",
    make: async () =>
      dossierPdf(await requestOf(service(), request.headers), await store(), { club, car, keepers, paper }),
  });
}
