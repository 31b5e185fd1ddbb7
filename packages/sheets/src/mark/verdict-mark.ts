import type { Verdict } from "@trunnion/register";
import type { ContentWriter, Points } from "../content/content-writer";

type Centre = readonly [x: number, y: number];

const line = 0.8;
const radius = 4;

function ring([x, y]: Centre, corners: number, size: number, turn = 0): Points {
  return Array.from({ length: corners }, (_, at) => {
    const angle = Math.PI / 2 + turn + (2 * Math.PI * at) / corners;
    return [x + size * Math.cos(angle), y + size * Math.sin(angle)];
  });
}
const diamond = (centre: Centre) => ring(centre, 4, radius + 0.6);
const square = ([x, y]: Centre) => [x - 3.6, y - 3.6, 7.2, 7.2] as const;
const dot = (page: ContentWriter, centre: Centre) => page.circle(centre, 1.2, { fill: "black" });

/**
 * One mark a verdict, told apart by form and by how much ink it carries: solid wants attention, open is in
 * order, broken is not known. Squares are parts that are there or not, diamonds a choice of part, round ones a
 * measured value, the triangle a limit that is broken.
 */
const marks: Record<Verdict, (page: ContentWriter, centre: Centre) => void> = {
  outsideLimits: (page, [x, y]) => page.polygon(ring([x, y - 0.8], 3, radius + 1.1), { fill: "red" }),
  missing: (page, centre) => {
    const [x, y] = centre;
    page.rect(square(centre), { stroke: line + 0.3 });
    page.line([x - 3.6, y - 3.6, x + 3.6, y + 3.6], { stroke: line + 0.3 });
    page.line([x - 3.6, y + 3.6, x + 3.6, y - 3.6], { stroke: line + 0.3 });
  },
  added: (page, centre) => {
    const [x, y] = centre;
    page.rect([x - 4, y - 4, 8, 8], { fill: "red" });
    page.line([x - 2.6, y, x + 2.6, y], { stroke: 1.3, ink: "paper" });
    page.line([x, y - 2.6, x, y + 2.6], { stroke: 1.3, ink: "paper" });
  },
  differentPart: (page, centre) => page.polygon(diamond(centre), { fill: "red" }),
  cannotTell: (page, [x, y]) => {
    page.circle([x, y], radius - 0.2, { stroke: line });
    const r = radius - 0.2;
    const k = r * 0.5523;
    const left = [x, y + r, x - k, y + r, x - r, y + k, x - r, y, x - r, y - k, x - k, y - r, x, y - r];
    const [a, b, ...arcs] = left.map((value) => Math.round(value * 100) / 100);
    page.path(`${a} ${b} m ${arcs.slice(0, 6).join(" ")} c ${arcs.slice(6).join(" ")} c h`, {
      fill: "black",
    });
  },
  acceptedSubstitute: (page, centre) => {
    page.polygon(diamond(centre), { stroke: line });
    dot(page, centre);
  },
  periodOption: (page, centre) => page.polygon(diamond(centre), { stroke: line }),
  insideLimits: (page, centre) => {
    page.circle(centre, radius - 0.2, { stroke: line });
    dot(page, centre);
  },
  asSpecified: (page, centre) => page.circle(centre, radius - 0.2, { stroke: line }),
  notRecorded: (page, centre) => page.circle(centre, radius - 0.2, { stroke: line, dash: "1.2 1.3" }),
};

export function drawVerdictMark(page: ContentWriter, centre: Centre, verdict: Verdict): void {
  marks[verdict](page, centre);
}
