import type { SheetModel } from "@trunnion/register";
import type { ContentWriter } from "./content/content-writer";
import type { Faces } from "./font/face";
import { PageFlow } from "./layout/page-flow";
import type { PageBox } from "./layout/paper";
import { drawCautions } from "./section/caution";
import { drawChecks } from "./section/check";
import { drawDifferences } from "./section/difference";
import { drawFooter } from "./section/footer";
import { drawIdentity } from "./section/identity";
import { drawPlanBlock } from "./section/plan-block";
import { drawResult } from "./section/result";
import { drawSettings } from "./section/setting";
import { drawStrip, stripHeight } from "./section/strip";
import { printableModel } from "./text/printable";

export interface SheetPlace {
  readonly box: PageBox;
  readonly faces: Faces;
  readonly prepared: Date;
}

/** Draws one car's sheet, layout 1; its pages in order. */
export function drawSheet(given: SheetModel, { box, faces, prepared }: SheetPlace): readonly ContentWriter[] {
  const { model, unprintable } = printableModel(
    given,
    faces,
    `sheet of No. ${given.entry.runningNumber.slice(0, 20)}`,
  );
  const flow = new PageFlow(box, { height: stripHeight, draw: (page) => drawStrip(page, box, model, faces) });
  const context = { model, flow, faces };
  drawIdentity(context);
  drawPlanBlock(context);
  drawDifferences(context);
  drawSettings(context);
  drawCautions(context);
  drawChecks(context);
  drawResult(context);
  const { pages } = flow;
  pages.forEach((page, at) => {
    drawFooter(page, box, { model, prepared, unprintable, page: at + 1, pages: pages.length }, faces);
  });
  return pages;
}
