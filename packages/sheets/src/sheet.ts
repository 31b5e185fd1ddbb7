import type { SheetModel } from "@trunnion/register";
import type { ContentWriter } from "./content/content-writer";
import type { Faces } from "./font/face";
import { PageFlow } from "./layout/page-flow";
import type { PageBox } from "./layout/paper";
import { drawCautions } from "./section/caution";
import { drawChecks } from "./section/check";
import { drawDifferences, drawDifferencesLeft } from "./section/difference";
import { drawFooter } from "./section/footer";
import { drawHead } from "./section/head";
import { drawResult } from "./section/result";
import { drawSettings } from "./section/setting";
import { drawStrip, stripHeight } from "./section/strip";
import { printableModel } from "./text/printable";

export interface SheetPlace {
  readonly box: PageBox;
  readonly faces: Faces;
  readonly prepared: Date;
  /** Whether content is marked with what it is. */
  readonly tagged?: boolean;
}

/** Most height for what differs, points: with all of it taken settings and first checks still stand on that page. */
const differenceRoom = 250;

/** Draws one car's sheet, its pages in order. */
export function drawSheet(
  given: SheetModel,
  { box, faces, prepared, tagged = false }: SheetPlace,
): readonly ContentWriter[] {
  const { model, unprintable } = printableModel(
    given,
    faces,
    `sheet of No. ${given.entry.runningNumber.slice(0, 20)}`,
  );
  const flow = new PageFlow(
    box,
    { height: stripHeight, draw: (page) => drawStrip(page, box, model, faces) },
    tagged,
  );
  const context = { model, flow, faces };
  flow.page.field({
    name: "sheet",
    kind: "hidden",
    boxes: [[0, 0, 0, 0]],
    title: "Sheet",
    value: model.code,
  });
  flow.page.field({
    name: "record",
    kind: "hidden",
    boxes: [[0, 0, 0, 0]],
    title: "Record",
    value: model.recordHash,
  });
  drawHead(context);
  drawCautions(context);
  const left = drawDifferences(context, differenceRoom);
  drawSettings(context);
  drawChecks(context);
  drawResult(context);
  drawDifferencesLeft(context, left);
  const { pages } = flow;
  pages.forEach((page, at) => {
    drawFooter(page, box, { model, prepared, unprintable, page: at + 1, pages: pages.length }, faces);
  });
  return pages;
}
