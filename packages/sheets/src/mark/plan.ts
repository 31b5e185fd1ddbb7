import { ContentWriter, type Paint, type Points } from "../content/content-writer";
import { type PackedStream, pack } from "../document/stream";
import { rule } from "../layout/style";

/** The plan's own frame, points: leaders' numbers stand along its upper and lower edge. */
export const plan = { width: 300, height: 132, name: "Plan" } as const;

/** Nose of the car and its centre plane; a place on the car is told from here: back, and to the right of it. */
const nose = 46;
const centre = plan.height / 2;

/** A place on the car in the plan's frame. Forward is to the left, so the car's right side is the upper one. */
export function onCar(back: number, right: number): readonly [x: number, y: number] {
  return [nose + back, centre + right];
}

const thin: Paint = { stroke: rule.hair };
const chain: Paint = { stroke: rule.hair, dash: "6 1.6 1 1.6" };
const hidden: Paint = { stroke: rule.hair, dash: "2 1.4" };

let packed: PackedStream | undefined;

/**
 * The plan as a drawing that stands once in a document and is placed on each first page. It begins with a plain
 * graphics state, whatever the page had set before.
 */
export function packedPlan(): PackedStream {
  const plain = Buffer.from("0 g 0 G 1 w [] 0 d\n", "latin1");
  packed ??= pack(
    Buffer.concat([plain, drawPlan().bytes()]),
    `/Type/XObject/Subtype/Form/BBox[0 0 ${plan.width} ${plan.height}]/Resources<<>>`,
  );
  return packed;
}

/**
 * A small two-seat coupé from above, drawn as a drawing office would: outline, wheels, axle lines, what lies
 * inside. It is a key to the car's assemblies and no picture of any car.
 */
function drawPlan(): ContentWriter {
  const page = new ContentWriter();
  drawCentreLines(page);
  drawChassis(page);
  drawSuspension(page);
  drawDriveline(page);
  drawInside(page);
  drawGlass(page);
  drawOutline(page);
  return page;
}

function drawCentreLines(page: ContentWriter): void {
  page.line([...onCar(-12, 0), ...onCar(222, 0)], chain);
  for (const axle of [40, 162]) page.line([...onCar(axle, -49), ...onCar(axle, 49)], chain);
}

/** Curves of one side, nose to tail: two control points and an end each; the other side is its mirror. */
const flank: readonly (readonly number[])[] = [
  [0, 15, 2, 26, 11, 31],
  [20, 36, 30, 41.5, 46, 41.5],
  [66, 41.5, 84, 38.5, 104, 38.5],
  [124, 38.5, 138, 42.5, 160, 42.5],
  [184, 42.5, 198, 39, 204, 31],
  [207.5, 25, 208, 13, 208, 0],
];

function curves(side: 1 | -1, path: readonly (readonly number[])[]): string {
  return path
    .map(([ax = 0, ay = 0, bx = 0, by = 0, x = 0, y = 0]) =>
      [onCar(ax, ay * side), onCar(bx, by * side), onCar(x, y * side)].flat().join(" "),
    )
    .map((points) => `${points} c`)
    .join(" ");
}

function drawOutline(page: ContentWriter): void {
  const start = `${onCar(0, 0).join(" ")} m`;
  for (const side of [1, -1] as const) page.path(`${start} ${curves(side, flank)}`, { stroke: 1.1 });
  for (const side of [1, -1] as const) {
    page.line([...onCar(96, 38.4 * side), ...onCar(99, 32 * side)], thin);
    page.line([...onCar(147, 40.6 * side), ...onCar(147, 33 * side)], thin);
  }
}

function drawGlass(page: ContentWriter): void {
  for (const side of [1, -1] as const) {
    const windscreen = [
      [86, 0, 86, 22, 97, 33],
      [100, 34, 106, 30, 110, 25],
      [104, 16, 103, 8, 103, 0],
    ];
    page.path(`${onCar(86, 0).join(" ")} m ${curves(side, windscreen)}`, hidden);
    const rearWindow = [
      [146, 9, 145, 17, 143, 24],
      [152, 28, 160, 30, 170, 29],
      [175, 20, 176, 9, 176, 0],
    ];
    page.path(`${onCar(146, 0).join(" ")} m ${curves(side, rearWindow)}`, hidden);
    page.line([...onCar(110, 25 * side), ...onCar(143, 24 * side)], hidden);
  }
}

/** The backbone: two rails that spread at both ends to carry the suspension. */
function drawChassis(page: ContentWriter): void {
  for (const side of [1, -1] as const) {
    const rail: Points = [
      [24, 13],
      [52, 13],
      [84, 5.5],
      [144, 5.5],
      [156, 10],
      [180, 10],
    ].map(([back = 0, right = 0]) => onCar(back, right * side));
    page.polyline(rail, { stroke: rule.line });
  }
  for (const [back, half] of [
    [24, 13],
    [180, 10],
  ] as const) {
    page.line([...onCar(back, -half), ...onCar(back, half)], { stroke: rule.line });
  }
}

function drawSuspension(page: ContentWriter): void {
  for (const axle of [40, 162]) {
    for (const side of [1, -1] as const) {
      const [x, y] = onCar(axle - 15, side > 0 ? 29 : -38.5);
      page.rect([x, y, 30, 9.5], { stroke: 0.9, fill: "paper" });
      page.line([...onCar(axle - 8, 26.4 * side), ...onCar(axle + 8, 26.4 * side)], { stroke: 1.6 });
      const legs: Points = [
        onCar(axle - 10, 12 * side),
        onCar(axle, 25.6 * side),
        onCar(axle + 10, 11 * side),
      ];
      page.polyline(legs, thin);
      page.circle(onCar(axle + 5, 19 * side), 2.6, thin);
    }
  }
  // Anti-roll bars, and the steering rack with its rods.
  page.polyline([onCar(38, 21), onCar(19, 20), onCar(19, -20), onCar(38, -21)], { stroke: rule.line });
  page.polyline([onCar(164, 20), onCar(184, 19), onCar(184, -19), onCar(164, -20)], { stroke: rule.line });
  page.rect([onCar(52, 0)[0], onCar(0, -14)[1], 3.4, 28], { ...thin, fill: "paper" });
  for (const side of [1, -1]) page.line([...onCar(53.7, 14 * side), ...onCar(50, 27 * side)], thin);
}

function drawDriveline(page: ContentWriter): void {
  const [x, y] = onCar(57, -9);
  page.rect([x, y, 34, 18], { stroke: rule.line, fill: "paper" });
  for (const back of [62, 70, 78, 86]) page.circle(onCar(back, 0), 3, thin);
  page.polygon([onCar(91, 7), onCar(108, 3.4), onCar(108, -3.4), onCar(91, -7)], { ...thin, fill: "paper" });
  for (const right of [1, -1]) page.line([...onCar(108, right), ...onCar(156, right)], thin);
  for (const side of [1, -1])
    page.line([...onCar(162, 5 * side), ...onCar(162, 26 * side)], { stroke: rule.line });
  page.circle(onCar(162, 0), 6, { stroke: rule.line, fill: "paper" });
  const pipe: Points = [onCar(66, -9), onCar(74, -13.5), onCar(150, -13.5), onCar(160, -16), onCar(186, -16)];
  page.polyline(pipe, { stroke: rule.line });
  page.rect([...onCar(186, -20), 14, 8], { ...thin, fill: "paper" });
  page.line([...onCar(200, -16), ...onCar(212, -16)], { stroke: rule.line });
}

function drawInside(page: ContentWriter): void {
  page.rect([...onCar(9, -17), 4, 34], thin);
  page.line([...onCar(11, -17), ...onCar(11, 17)], thin);
  page.circle(onCar(68, 15.5), 3.6, thin);
  page.rect([...onCar(84, 15), 9, 13], thin);
  page.line([...onCar(88.5, 18), ...onCar(88.5, 25)], thin);
  for (const side of [1, -1] as const) {
    const seat = [
      [111, 8.5, 111, 8.5, 113, 8.5],
      [120, 8.5, 128, 8.5, 130, 8.5],
      [137, 9, 137, 24, 130, 24.5],
    ];
    const back = [
      [122, 24.5, 118, 24.5, 113, 24.5],
      [111, 24.5, 111, 22, 111, 16.5],
      [111, 11, 111, 9, 113, 8.5],
    ];
    page.path(`${onCar(113, 8.5 * side).join(" ")} m ${curves(side, [...seat, ...back])}`, {
      stroke: rule.line,
    });
    page.line([...onCar(128.5, 10.5 * side), ...onCar(128.5, 22.5 * side)], thin);
  }
  page.rect([...onCar(187, -9), 13, 28], thin);
  page.circle(onCar(193.5, 12), 2.2, thin);
}
