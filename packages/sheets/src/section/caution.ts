import { block, blockHeight, drawBlock } from "../layout/row";
import type { SheetContext } from "../layout/sheet-context";
import { rule, type } from "../layout/style";
import { drawCaution } from "../mark/box";

/** What can hurt someone, said before the hands go to work, between two rules. */
export function drawCautions({ flow, faces, model }: SheetContext): void {
  if (model.cautions.length === 0) return;
  const { box } = flow;
  const indent = 18;
  const cautions = model.cautions.map((caution) =>
    block(faces.bold, type.body, caution, box.right - box.left - indent),
  );
  flow.ensure(
    Math.min(
      cautions.reduce((height, lines) => height + blockHeight(lines) + 3, 8),
      flow.capacity,
    ),
  );
  flow.page.line([box.left, flow.y, box.right, flow.y], { stroke: rule.line });
  flow.y -= 4;
  for (const lines of cautions) {
    lines.forEach((line, at) => {
      flow.ensure(14);
      if (at === 0) drawCaution(flow.page, box.left + 1, flow.y - 7.6);
      flow.y = drawBlock(flow.page, [line], box.left + indent, flow.y);
    });
    flow.y -= 2.5;
  }
  flow.page.line([box.left, flow.y - 1, box.right, flow.y - 1], { stroke: rule.line });
  flow.y -= 5;
}
