import type { ContentWriter } from "../content/content-writer";
import { rule } from "../layout/style";

/** A box to put a cross in. */
export function drawCheckBox(page: ContentWriter, x: number, top: number, side = 12): void {
  page.rect([x, top - side, side, side], { stroke: 0.9 });
}

/** A box to write in: open at the top like a bracket, so that a hand does not feel fenced in. */
export function drawWriteBox(
  page: ContentWriter,
  box: { x: number; top: number; width: number; height: number },
): void {
  const { x, top, width, height } = box;
  page.polyline(
    [
      [x, top],
      [x, top - height],
      [x + width, top - height],
      [x + width, top],
    ],
    { stroke: rule.line },
  );
}

/** The caution sign: a triangle with a stroke and a dot, drawn, since fonts rarely have it. */
export function drawCaution(page: ContentWriter, x: number, baseline: number): void {
  page.polygon(
    [
      [x, baseline - 1.2],
      [x + 5, baseline + 7.6],
      [x + 10, baseline - 1.2],
    ],
    { stroke: 0.9 },
  );
  page.line([x + 5, baseline + 4.8, x + 5, baseline + 1.9], { stroke: 1.1 });
  page.circle([x + 5, baseline + 0.4], 0.65, { fill: "black" });
}
