import { requestOf, setupPlanPdf } from "@trunnion/api";
import { fromSegment } from "../../../../../../../lib/address";
import { fileAnswer } from "../../../../../../../lib/file-answer";
import { service } from "../../../../../../../lib/service";
import { figuresTyped } from "../../../../../../../lib/typed-before";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly car: string }>;
}

/** A set-up plan as one page for the garage; what was typed comes in the address, as for the plan's own page. */
export async function GET(request: Request, { params }: Segments): Promise<Response> {
  const { club, car: asked } = await params;
  const car = fromSegment(asked);
  const query = Object.fromEntries(new URL(request.url).searchParams);
  const { axle, side, paper, ...typed } = figuresTyped(query);
  return fileAnswer({
    type: "application/pdf",
    name: `${car}-plan.pdf`,
    inline: true,
    place: "plan.pdf",
    make: async () =>
      setupPlanPdf(await requestOf(service(), request.headers), {
        club,
        car,
        axle: axle === "rear" ? "rear" : "front",
        side: side === "right" ? "right" : "left",
        paper: paper === "Letter" ? "Letter" : "A4",
        typed,
      }),
  });
}
