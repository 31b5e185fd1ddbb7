import { type Face, textWidth } from "../font/face";
import { drawField, drawParagraph } from "../layout/heading";
import { block, blockHeight, drawBlock, type Line } from "../layout/row";
import type { SheetContext } from "../layout/sheet-context";
import { rule, type } from "../layout/style";
import { drawPlate, plateHolds } from "../mark/plate";
import { fitSize, shorten } from "../text/wrap";
import { BoundedText } from "./bounded-text";

const numberWidth = 158;
const plateWidth = 178;
const gutter = 18;

interface Place {
  readonly top: number;
  readonly width: number;
  readonly texts: BoundedText;
}

/** Who, which car, where and when: the top of the first page. */
export function drawIdentity(context: SheetContext): void {
  const { flow, faces } = context;
  const top = flow.y;
  const all = flow.box.right - flow.box.left;
  const texts = new BoundedText();
  const left = drawEvent(context, { top, width: all - numberWidth - gutter, texts });
  const right = drawNumber(context, { top, width: numberWidth, texts });
  flow.y = drawFields(context, { top: Math.min(left, right) - 6, width: all, texts }) - 5;
  const below = texts.below(faces.regular, type.body, all);
  if (below.length === 0) return;
  drawParagraph(context, below, 1);
  flow.y -= 4;
}

function drawEvent(context: SheetContext, { top, width, texts }: Place): number {
  const { flow, faces, model } = context;
  const { event } = model;
  const { regular, bold } = faces;
  const held = [event.on, event.venue].filter((part) => part !== "").join(" · ");
  const lines: Line[] = [
    ...texts.lines("Club", `${model.club} · pre-event scrutineering sheet`, {
      face: regular,
      size: type.body,
      width,
      most: 2,
    }),
    ...texts.lines("Event", event.name, { face: bold, size: type.event, width, most: 2 }),
    ...texts.lines("Date and venue", held, { face: regular, size: type.name, width, most: 2 }),
  ];
  const under = drawBlock(flow.page, lines, flow.box.left, top) - 9;
  return drawCar(context, { top: under, width, texts });
}

/** The plate, and what the car is beside it. */
function drawCar({ flow, faces, model }: SheetContext, { top, width, texts }: Place): number {
  const { page, box } = flow;
  const { car } = model;
  const plate = drawPlate(page, { x: box.left, top, width: plateWidth }, car.chassis, faces);
  if (!plateHolds(faces, car.chassis, plateWidth)) texts.keep("Chassis", car.chassis);
  const x = box.left + plateWidth + 14;
  const room = width - plateWidth - 14;
  const unknown = car.onRegister ? "" : "Not on the register: standard checks only";
  const lines = [
    ...texts.lines("Car", `${car.marque} ${car.series}`.trim(), {
      face: faces.bold,
      size: 13,
      width: room,
      most: 3,
    }),
    ...texts.lines("Body", car.body, { face: faces.regular, size: type.body, width: room, most: 3 }),
    ...block(faces.bold, type.body, unknown, room),
  ];
  const bottom = drawBlock(page, lines, x, top - Math.max(0, (plate - blockHeight(lines)) / 2));
  return Math.min(top - plate, bottom);
}

/** The rest of what is known of car and entry, in one row across the page. */
function drawFields(context: SheetContext, { top, width, texts }: Place): number {
  const { flow, faces, model } = context;
  const { car, entry, event } = model;
  const fields: readonly (readonly [label: string, value: string, share: number])[] = [
    ["Driver", entry.driver, 0.27],
    ["Registration", car.registration, 0.14],
    ["Built", car.built, 0.15],
    ["Colour", car.colour, 0.22],
    ["Rule set", event.ruleSet, 0.22],
  ];
  let x = flow.box.left;
  const bottoms = fields.map(([label, value, share]) => {
    const face = label === "Driver" ? faces.bold : faces.regular;
    const lines = texts.lines(label, value, { face, size: type.body, width: share * width - 8, most: 4 });
    const bottom = drawField(context, { x, top, label }, lines);
    x += share * width;
    return bottom;
  });
  return Math.min(...bottoms);
}

/** The running number, as large as the page allows, with class and group under it. */
function drawNumber(context: SheetContext, { top, width, texts }: Place): number {
  const { flow, faces, model } = context;
  const { page, box } = flow;
  const { entry } = model;
  const x = box.right - width;
  const divide = top - 86;
  const number = shownNumber(faces.bold, entry.runningNumber, width - 14);
  if (number.text.endsWith("…")) texts.keep("Running number", entry.runningNumber);
  const middle = (top + divide) / 2 - number.size * 0.325;
  page.text({ face: faces.bold, ...number, x: x + width / 2, y: middle, align: "centre" });
  const half = width / 2;
  const cells = [
    { label: "Class", value: entry.className },
    { label: "Group", value: entry.group },
  ];
  const bottoms = cells.map(({ label, value }, at) => {
    const left = x + 7 + at * half;
    const bounds = { face: faces.bold, size: type.name, width: half - 12, most: 3 };
    const words = texts.lines(label, value === "" ? "–" : value, bounds);
    page.text({ face: faces.regular, size: type.fine, x: left, y: divide - 8, text: label });
    return drawBlock(page, words, left, divide - 10);
  });
  const bottom = Math.min(...bottoms) - 3;
  page.line([x, divide, x + width, divide], { stroke: rule.line });
  page.line([x + half, divide, x + half, bottom], { stroke: rule.line });
  page.rect([x, bottom, width, top - bottom], { stroke: rule.heavy });
  return bottom;
}

function shownNumber(
  face: Face,
  given: string,
  width: number,
): { readonly size: number; readonly text: string } {
  if (given === "") return { size: 40, text: "–" };
  const size = fitSize(face, given, { width, largest: 104, smallest: 12 });
  return { size, text: textWidth(face, size, given) > width ? shorten(face, size, given, width) : given };
}
