import type { SheetModel } from "@trunnion/register";
import type { ContentWriter } from "../content/content-writer";
import type { Faces } from "../font/face";
import { rule } from "../layout/style";
import { onCar, plan } from "./plan";

type Edge = "upper" | "lower";

/** Where each assembly's leader points, and the edge and slot its number stands at; slots run nose to tail. */
const places: Readonly<
  Record<string, { readonly at: readonly [x: number, y: number]; readonly edge: Edge; readonly slot: number }>
> = {
  settings: { at: onCar(31, 34), edge: "upper", slot: 0 },
  frontSuspension: { at: onCar(44, 20), edge: "upper", slot: 1 },
  oil: { at: onCar(68, 15.5), edge: "upper", slot: 2 },
  engine: { at: onCar(78, 5), edge: "upper", slot: 3 },
  electrical: { at: onCar(88.5, 24), edge: "upper", slot: 4 },
  safety: { at: onCar(122, 17), edge: "upper", slot: 5 },
  rearSuspension: { at: onCar(166, 18), edge: "upper", slot: 6 },
  fuel: { at: onCar(196, 12), edge: "upper", slot: 7 },
  brakes: { at: onCar(36, -26.4), edge: "lower", slot: 0 },
  steering: { at: onCar(53, -12), edge: "lower", slot: 1 },
  driveline: { at: onCar(100, -4), edge: "lower", slot: 2 },
  chassis: { at: onCar(112, -5.5), edge: "lower", slot: 3 },
  body: { at: onCar(128, -38.8), edge: "lower", slot: 4 },
  wheels: { at: onCar(158, -34), edge: "lower", slot: 5 },
  exhaust: { at: onCar(193, -16), edge: "lower", slot: 6 },
};

/** First slot, and the step to the next, so that leaders lean little and never cross. */
const rows: Record<Edge, { readonly first: number; readonly step: number; readonly y: number }> = {
  upper: { first: 46, step: 29.5, y: plan.height - 8 },
  lower: { first: 64, step: 29.5, y: 8 },
};

type Leader = SheetModel["leaders"][number];

/** Draws the leaders of the assemblies the plan knows; a club's own assembly stands in the list beside it only. */
export function drawLeaders(
  page: ContentWriter,
  origin: readonly [x: number, y: number],
  leaders: readonly Leader[],
  { faces, scale }: { readonly faces: Faces; readonly scale: number },
): void {
  for (const leader of leaders) {
    const place = places[leader.assembly];
    if (place === undefined) continue;
    const row = rows[place.edge];
    const from: readonly [number, number] = [
      origin[0] + scale * (row.first + place.slot * row.step),
      origin[1] + scale * row.y,
    ];
    const to: readonly [number, number] = [origin[0] + scale * place.at[0], origin[1] + scale * place.at[1]];
    const differs = leader.deviations > 0;
    page.line([...from, ...to], { stroke: differs ? 0.9 : rule.hair });
    page.circle(to, differs ? 1.7 : 1.2, { fill: "black" });
    drawLeaderNumber(page, from, leader, faces);
  }
}

/** The number in its ring; filled and bold where something differs. */
export function drawLeaderNumber(
  page: ContentWriter,
  [x, y]: readonly [x: number, y: number],
  { leader, deviations }: Pick<Leader, "leader" | "deviations">,
  { regular, bold }: Faces,
): void {
  const text = String(leader);
  if (deviations > 0) {
    page.circle([x, y], 6, { fill: "red" });
    page.text({ face: bold, size: 8, x, y: y - 2.8, text, align: "centre", ink: "paper" });
    return;
  }
  page.circle([x, y], 6, { stroke: rule.hair, fill: "paper" });
  page.text({ face: regular, size: 7.6, x, y: y - 2.6, text, align: "centre" });
}
