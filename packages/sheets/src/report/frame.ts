import type { EventReportModel } from "@trunnion/register";
import type { ContentWriter } from "../content/content-writer";
import type { Faces } from "../font/face";
import type { PageBox } from "../layout/paper";
import { rule, type } from "../layout/style";
import { lostText, preparedText } from "../section/footer";
import { shorten } from "../text/wrap";

export const reportStripHeight = 24;

/** Which event a further page belongs to. */
export function drawReportStrip(
  page: ContentWriter,
  box: PageBox,
  { event }: EventReportModel,
  faces: Faces,
): void {
  const { top, left, right } = box;
  const text = shorten(faces.bold, type.body, `Scrutineering of ${event.name}, ${event.on}`, right - left);
  page.text({ face: faces.bold, size: type.body, x: left, y: top - 10, text });
  page.line([left, top - 17, right, top - 17], { stroke: rule.heavy });
}

export interface ReportFooter {
  readonly model: EventReportModel;
  readonly prepared: Date;
  readonly unprintable: number;
  readonly place: string;
}

/** What ties the page to what was found, and when it was printed. */
export function drawReportFooter(
  page: ContentWriter,
  box: PageBox,
  { model, prepared, unprintable, place }: ReportFooter,
  faces: Faces,
): void {
  const { left, right } = box;
  page.line([left, 35, right, 35], { stroke: rule.hair });
  const hash = (model.hash.slice(0, 16).match(/.{1,4}/g) ?? []).join(" ");
  const line = (y: number, text: string) =>
    page.text({ face: faces.regular, size: type.fine, x: left, y, text });
  line(26.5, `Findings ${hash} · prepared ${preparedText(prepared)}`);
  line(18, unprintable > 0 ? lostText(unprintable) : shorten(faces.regular, type.fine, model.club, 300));
  page.text({ face: faces.bold, size: type.body, x: right, y: 21, text: place, align: "right" });
}
