import { drawBlock } from "../layout/row";
import type { SheetContext } from "../layout/sheet-context";
import { type } from "../layout/style";
import { drawCaution } from "../mark/box";
import { firstLines } from "./bounded-text";

const indent = 18;
/** Lines all cautions share; a caution that long is read by nobody. */
const mostLines = 6;

/** What can hurt someone, said before the hands go to work, between two rules. */
export function drawCautions({ flow, faces, model }: SheetContext): void {
  if (model.cautions.length === 0) return;
  const { box, page } = flow;
  const lines = firstLines(model.cautions.join(" "), {
    face: faces.bold,
    size: type.text,
    width: box.right - box.left - indent,
    most: mostLines,
  });
  drawCaution(page, box.left + 1, flow.y - 12);
  page.mark("P", () => {
    flow.y = drawBlock(page, lines, box.left + indent, flow.y - 0.5) - 1.5;
  });
}
