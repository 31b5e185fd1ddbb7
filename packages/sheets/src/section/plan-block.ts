import { blockHeight, drawBlock, runOn } from "../layout/row";
import type { SheetContext } from "../layout/sheet-context";
import { rule, type } from "../layout/style";
import { plan } from "../mark/plan";
import { drawLeaderNumber, drawLeaders } from "../mark/plan-leader";
import { shorten } from "../text/wrap";

/** The plan with its leaders, and the list of assemblies beside it. */
export function drawPlanBlock(context: SheetContext): void {
  const { flow, faces, model } = context;
  const { page, box } = flow;
  const top = flow.y;
  page.line([box.left, top, box.right, top], { stroke: rule.line });
  const x = box.left + plan.width - 2;
  const listed = drawList(context, { x, top: top - 4 });
  const height = Math.max(plan.height + 4, top - listed);
  const origin = [box.left - 4, top - height / 2 - plan.height / 2] as const;
  page.form(plan.name, origin[0], origin[1]);
  drawLeaders(page, origin, model.leaders, faces);
  drawSides(context, origin);
  flow.y = top - height;
  page.line([box.left, flow.y, box.right, flow.y], { stroke: rule.line });
}

/** Which way the car points and which side is which, as settings and deviations name them. */
function drawSides({ flow, faces }: SheetContext, [x, y]: readonly [number, number]): void {
  const middle = y + plan.height / 2;
  const word = (text: string, at: number) =>
    flow.page.text({ face: faces.regular, size: type.fine, x: x + 8, y: at, text });
  word("front", middle + 6);
  flow.page.polyline(
    [
      [x + 14, middle - 4],
      [x + 8, middle],
      [x + 14, middle + 4],
    ],
    { stroke: rule.line },
  );
  word("right", middle + 46);
  word("left", middle - 50);
}

function drawList(context: SheetContext, place: { readonly x: number; readonly top: number }): number {
  const { flow, model } = context;
  const half = Math.ceil(model.leaders.length / 2);
  const width = (flow.box.right - place.x) / 2;
  const columns = [model.leaders.slice(0, half), model.leaders.slice(half)];
  const bottoms = columns.map((leaders, at) =>
    leaders.reduce(
      (top, leader) => drawEntry(context, leader, { x: place.x + at * width, top, width }),
      place.top,
    ),
  );
  return Math.min(place.top, ...bottoms);
}

type Leader = SheetContext["model"]["leaders"][number];

function drawEntry(
  { flow, faces }: SheetContext,
  leader: Leader,
  place: { readonly x: number; readonly top: number; readonly width: number },
): number {
  const { x, top, width } = place;
  const differs = leader.deviations > 0;
  const face = differs ? faces.bold : faces.regular;
  const count = differs ? `${leader.deviations} different` : "";
  const lines = runOn(
    [
      { face, size: type.small, text: `${shorten(face, type.small, leader.label, 2 * (width - 40))} ` },
      { face: faces.regular, size: type.fine, text: count },
    ],
    width - 20,
  );
  const height = Math.max(15.8, blockHeight(lines) + 2);
  drawLeaderNumber(flow.page, [x + 7, top - height / 2], leader, faces);
  drawBlock(flow.page, lines, x + 18, top - (height - blockHeight(lines)) / 2);
  return top - height;
}
