import type { SheetModel } from "@trunnion/register";
import type { ContentWriter } from "../content/content-writer";
import { type Faces, textWidth } from "../font/face";
import type { PageBox } from "../layout/paper";
import { rule, type } from "../layout/style";
import { drawSmallPlate } from "../mark/plate";
import { fitSize, shorten } from "../text/wrap";

export const stripHeight = 32;

/** Which car a further page belongs to: a page that came loose must find its way back. */
export function drawStrip(page: ContentWriter, box: PageBox, model: SheetModel, faces: Faces): void {
  const { top, left, right } = box;
  const { entry, car, event } = model;
  const size = fitSize(faces.bold, entry.runningNumber, { width: 92, largest: 28, smallest: 10 });
  const number = shorten(faces.bold, size, entry.runningNumber, 92);
  page.text({ face: faces.bold, size, x: left, y: top - 11 - size * 0.33, text: number });
  const plateX = left + Math.max(64, textWidth(faces.bold, size, number) + 12);
  drawSmallPlate(page, { x: plateX, top: top - 2, width: 132 }, car.chassis, faces);
  const x = plateX + 144;
  const room = (right - x) * 0.56;
  const words = (text: string, bold: boolean, y: number) => {
    const face = bold ? faces.bold : faces.regular;
    page.text({ face, size: type.body, x, y, text: shorten(face, type.body, text, room) });
  };
  words(entry.driver, true, top - 9);
  words(`${car.marque} ${car.series}`.trim(), false, top - 19.5);
  const side = right - x - room - 10;
  const end = (text: string, y: number) =>
    page.text({
      face: faces.regular,
      size: type.body,
      x: right,
      y,
      text: shorten(faces.regular, type.body, text, side),
      align: "right",
    });
  end(event.name, top - 9);
  end(event.on, top - 19.5);
  page.line([left, top - 26, right, top - 26], { stroke: rule.heavy });
}
