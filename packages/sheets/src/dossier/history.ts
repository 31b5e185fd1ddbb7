import { drawHeading } from "../layout/heading";
import { block, drawRow } from "../layout/row";
import { type } from "../layout/style";
import type { DossierContext } from "./dossier-context";

const dateWidth = 96;

/** What became of the car, as the model orders it. */
export function drawHistory(context: DossierContext): void {
  const { model, flow, faces } = context;
  const { box } = flow;
  flow.ensure(50);
  drawHeading(context, { title: "History", note: "dates as far as they are known" });
  flow.onContinue = () => drawHeading(context, { title: "History", note: "continued" });
  const width = box.right - box.left - dateWidth;
  for (const { on, title, text, changes, known } of model.history) {
    const body = [
      ...block(faces.bold, type.body, title, width),
      ...(text === "" ? [] : block(faces.regular, type.body, text, width)),
      ...changes.flatMap((change) => block(faces.regular, type.body, change, width)),
      ...(known === "" ? [] : block(faces.regular, type.fine, known, width)),
    ];
    drawRow(flow, {
      padding: 2.5,
      cells: [
        {
          x: box.left,
          lines: block(faces.regular, type.body, on === "" ? "date not known" : on, dateWidth - 8),
        },
        { x: box.left + dateWidth, lines: body },
      ],
    });
  }
  if (model.history.length === 0) {
    drawRow(flow, {
      cells: [{ x: box.left, lines: block(faces.regular, type.body, "Nothing is recorded.", width) }],
    });
  }
  flow.onContinue = undefined;
  flow.y -= 8;
}
