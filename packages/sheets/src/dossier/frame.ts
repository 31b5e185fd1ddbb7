import type { DossierModel } from "@trunnion/register";
import type { ContentWriter } from "../content/content-writer";
import type { Faces } from "../font/face";
import type { PageBox } from "../layout/paper";
import { rule, type } from "../layout/style";
import { drawSmallPlate } from "../mark/plate";
import { lostText, preparedText } from "../section/footer";
import { shorten } from "../text/wrap";

export const stripHeight = 32;

/** Which car a further page belongs to. */
export function drawDossierStrip(page: ContentWriter, box: PageBox, model: DossierModel, faces: Faces): void {
  const { top, left, right } = box;
  drawSmallPlate(page, { x: left, top: top - 2, width: 132 }, model.car.chassis, faces);
  const text = `${model.car.marque} ${model.car.series}`.trim();
  const x = left + 144;
  const room = right - x;
  page.text({
    face: faces.regular,
    size: type.body,
    x,
    y: top - 14,
    text: shorten(faces.regular, type.body, text, room),
  });
  page.line([left, top - 25, right, top - 25], { stroke: rule.heavy });
}

export interface DossierFooter {
  readonly model: DossierModel;
  readonly prepared: Date;
  readonly unprintable: number;
  readonly page: number;
  readonly pages: number;
}

/** What ties the page to its record, and what it is not. */
export function drawDossierFooter(
  page: ContentWriter,
  box: PageBox,
  facts: DossierFooter,
  faces: Faces,
): void {
  const { model, prepared, unprintable } = facts;
  const { left, right } = box;
  const line = (y: number, text: string) =>
    page.text({ face: faces.regular, size: type.fine, x: left, y, text });
  page.line([left, 35, right, 35], { stroke: rule.hair });
  const hash = (model.recordHash.slice(0, 16).match(/.{1,4}/g) ?? []).join(" ");
  line(26.5, `Record ${hash}, version ${model.recordVersion} · prepared ${preparedText(prepared)}`);
  line(18, unprintable > 0 ? lostText(unprintable) : shorten(faces.regular, type.fine, model.club, 300));
  const text = `page ${facts.page} of ${facts.pages}`;
  page.text({ face: faces.bold, size: type.body, x: right, y: 21, text, align: "right" });
}
