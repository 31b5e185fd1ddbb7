import { EVENT_REPORT_LAYOUT, type EventReportModel } from "@trunnion/register";
import { SheetDocument } from "../document/sheet-document";
import { loadFaces } from "../font/face";
import { drawHeading, drawParagraph } from "../layout/heading";
import { PageFlow } from "../layout/page-flow";
import { type Paper, pageBox, papers } from "../layout/paper";
import { block, drawRow } from "../layout/row";
import { type } from "../layout/style";
import { printableModel } from "../text/printable";
import { drawReportEntry } from "./entry";
import { drawReportFooter, drawReportStrip, reportStripHeight } from "./frame";
import type { ReportContext } from "./report-context";

function drawHead({ model, flow, faces }: ReportContext): void {
  const { event, club } = model;
  const width = flow.box.right - flow.box.left;
  const context = { flow, faces };
  drawParagraph(context, block(faces.bold, type.event, `Scrutineering of ${event.name}`, width), 2);
  drawParagraph(context, block(faces.regular, type.body, `${event.on}, ${event.venue}`, width), 2);
  drawParagraph(context, block(faces.regular, type.body, `${club}. Checked by ${event.ruleSet}.`, width), 1);
  flow.y -= 8;
}

function drawTotals(context: ReportContext): void {
  const { model, flow, faces } = context;
  drawHeading(context, { title: "What became of it" });
  const { box } = flow;
  const column = (box.right - box.left) / 3;
  for (let at = 0; at < model.totals.length; at += 3) {
    const cells = model.totals.slice(at, at + 3).flatMap(({ label, value }, place) => {
      const x = box.left + place * column;
      return [
        { x, lines: block(faces.bold, type.body, value, 30) },
        { x: x + 32, lines: block(faces.regular, type.body, label, column - 40) },
      ];
    });
    drawRow(flow, { cells, padding: 3 });
  }
  flow.y -= 8;
}

function drawLines(context: ReportContext, title: string, lines: readonly string[]): void {
  if (lines.length === 0) return;
  const { flow, faces } = context;
  const width = flow.box.right - flow.box.left;
  flow.ensure(40);
  drawHeading(context, { title });
  for (const line of lines) drawParagraph(context, block(faces.bold, type.body, line, width), 4);
  flow.y -= 8;
}

function instantOf({ preparedAt, layoutVersion }: EventReportModel): Date {
  if (layoutVersion !== EVENT_REPORT_LAYOUT)
    throw new RangeError(
      `layout ${layoutVersion} is not known; this program draws layout ${EVENT_REPORT_LAYOUT}`,
    );
  const date = new Date(preparedAt);
  if (!Number.isNaN(date.getTime())) return date;
  throw new RangeError(
    `preparedAt is "${preparedAt}"; it must be an ISO instant such as 2026-05-14T18:30:00Z`,
  );
}

/**
 * What became of an event as PDF: totals, what may be missing, then each car with its decision, open points, advisories
 * and figures. The same model gives the same bytes.
 *
 * @throws RangeError for a layout this version cannot draw, a paper it does not know, a `preparedAt` that is no instant,
 * or a text above 5,000 characters
 */
export async function drawEventReport(
  given: EventReportModel,
  { paper }: { readonly paper: Paper },
): Promise<Uint8Array> {
  if (!papers.includes(paper))
    throw new RangeError(`paper "${paper}" is not known; it must be ${papers.join(" or ")}`);
  const prepared = instantOf(given);
  const faces = loadFaces();
  const box = pageBox(paper);
  const { model, unprintable } = printableModel(given, faces, `report of ${given.event.name.slice(0, 40)}`);
  const title = `Scrutineering of ${model.event.name}, ${model.event.on}`;
  const identity = ["event-report", paper, model.hash, model.preparedAt].join("\n");
  const { width, height } = box;
  const document = new SheetDocument({ title, preparedAt: prepared, identity, width, height }, faces);
  const flow = new PageFlow(box, {
    height: reportStripHeight,
    draw: (page) => drawReportStrip(page, box, model, faces),
  });
  const context: ReportContext = { model, flow, faces };
  drawHead(context);
  drawLines(context, "May be missing", model.missing);
  drawTotals(context);
  drawHeading(context, { title: "Car by car", note: "in running order" });
  flow.onContinue = () => drawHeading(context, { title: "Car by car", note: "continued" });
  for (const entry of model.entries) drawReportEntry(context, entry);
  flow.onContinue = undefined;
  flow.y -= 8;
  drawLines(context, "Read this with it", model.cautions);
  const { pages } = flow;
  pages.forEach((page, at) => {
    const place = `page ${at + 1} of ${pages.length}`;
    drawReportFooter(page, box, { model, prepared, unprintable, place }, faces);
  });
  document.addCar(title, pages);
  return document.bytes();
}
