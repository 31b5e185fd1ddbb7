import { type Face, textWidth } from "../font/face";
import { block, drawBlock, type Line } from "../layout/row";
import type { SheetContext } from "../layout/sheet-context";
import { rule, type } from "../layout/style";
import { plan } from "../mark/plan";
import { drawLeaders } from "../mark/plan-leader";
import { drawPlate, plateHolds } from "../mark/plate";
import { fitSize, shorten } from "../text/wrap";
import { BoundedText } from "./bounded-text";

const numberWidth = 96;
const planScale = 0.68;
const planWidth = plan.width * planScale;
const gutter = 12;
/** Most characters of a text that go below the head, where it was broken off above. */
const longestBelow = 400;

/** Number, car and plan side by side: the part of a page one looks at from a distance. */
export function drawHead(context: SheetContext): void {
  const { flow, faces } = context;
  const { box } = flow;
  const top = flow.y;
  const texts = new BoundedText(longestBelow);
  const middle = box.left + numberWidth + gutter;
  const bottoms = [
    drawNumber(context, top, texts),
    drawCar(context, { x: middle, top, width: box.right - planWidth - gutter - middle, texts }),
    drawPlan(context, { x: box.right - planWidth + 14, top }),
  ];
  flow.y = Math.min(...bottoms) - 2;
  const below = texts.below(faces.regular, type.text, box.right - box.left);
  flow.page.mark("P", () => {
    flow.y = drawBlock(flow.page, below, box.left, flow.y);
  });
}

interface Place {
  readonly x: number;
  readonly top: number;
  readonly width: number;
  readonly texts: BoundedText;
}

function drawNumber(context: SheetContext, top: number, texts: BoundedText): number {
  const { flow, faces, model } = context;
  const { page, box } = flow;
  const { entry } = model;
  const x = box.left;
  const divide = top - 62;
  const number = shownNumber(faces.bold, entry.runningNumber, numberWidth - 10);
  if (number.text.endsWith("…")) texts.keep("Running number", entry.runningNumber);
  page.mark("H1", () =>
    page.text({
      face: faces.bold,
      ...number,
      x: x + numberWidth / 2,
      y: (top + divide) / 2 - number.size * 0.325,
      align: "centre",
    }),
  );
  const split = numberWidth * shareOf(faces.bold, entry.className, entry.group);
  const bottoms = [
    { label: "Class", value: entry.className },
    { label: "Group", value: entry.group },
  ].map(({ label, value }, at) => {
    const left = x + 5 + at * split;
    const bounds = {
      face: faces.bold,
      size: type.name,
      width: (at === 0 ? split : numberWidth - split) - 8,
      most: 2,
    };
    const words = texts.lines(label, value, bounds);
    let bottom = divide;
    page.mark("P", () => {
      page.text({ face: faces.regular, size: type.fine, x: left, y: divide - 8, text: label });
      bottom = drawBlock(page, words, left, divide - 10);
    });
    return bottom;
  });
  const bottom = Math.min(...bottoms) - 3;
  page.line([x, divide, x + numberWidth, divide], { stroke: rule.line });
  page.line([x + split, divide, x + split, bottom], { stroke: rule.line });
  page.rect([x, bottom, numberWidth, top - bottom], { stroke: rule.heavy });
  return bottom;
}

/** How much of the box the class takes beside the group, by their longest words. */
function shareOf(face: Face, className: string, group: string): number {
  const longest = (text: string) =>
    Math.max(...text.split(" ").map((word) => textWidth(face, type.name, word)), 12);
  const wanted = longest(className);
  return Math.min(0.66, Math.max(0.4, wanted / (wanted + longest(group))));
}

function shownNumber(
  face: Face,
  given: string,
  width: number,
): { readonly size: number; readonly text: string } {
  if (given === "") return { size: 40, text: "" };
  const size = fitSize(face, given, { width, largest: 76, smallest: 12 });
  return { size, text: textWidth(face, size, given) > width ? shorten(face, size, given, width) : given };
}

function drawCar(context: SheetContext, { x, top, width, texts }: Place): number {
  const { flow, faces, model } = context;
  const { event, car, entry, club } = model;
  const { regular, bold } = faces;
  const { page } = flow;
  const bounded = (label: string, text: string, face: Face, size: number, most = 2) =>
    texts.lines(label, text, { face, size, width, most });
  const held = [event.on, event.venue].filter((part) => part !== "").join(", ");
  const over: Line[] = [
    ...bounded("Event", event.name, bold, 13.5),
    ...bounded(
      "Date, venue, club",
      [held, club].filter((part) => part !== "").join(" · "),
      regular,
      type.text,
      1,
    ),
  ];
  let y = top;
  page.mark("P", () => {
    y = drawBlock(page, over, x, top) - 3;
    y -= drawPlate(page, { x, top: y, width }, car.chassis, faces) + 2;
  });
  if (!plateHolds(faces, car.chassis, width)) texts.keep("Chassis", car.chassis);
  const unknown = car.onRegister ? "" : "Not on the register: standard checks only";
  const facts = [car.built && `built ${car.built}`, car.body, car.colour, car.registration];
  const under: Line[] = [
    ...bounded("Driver", entry.driver, bold, type.name),
    ...bounded("Car", `${car.marque} ${car.series}`.trim(), bold, type.body),
    ...bounded("Facts", facts.filter(Boolean).join(", "), regular, type.text),
    ...block(bold, type.text, unknown, width),
  ];
  if (entry.driver === "") y = drawBlank(context, { x, top: y, width }, "Driver");
  if (!car.onRegister && car.series === "") y = drawBlank(context, { x, top: y, width }, "Car");
  page.mark("P", () => {
    y = drawBlock(page, under, x, y);
  });
  return y;
}

/** A line to write on, for what a blank sheet does not know. */
function drawBlank(
  { flow, faces }: SheetContext,
  { x, top, width }: Omit<Place, "texts">,
  label: string,
): number {
  const height = 17;
  const y = top - height + 3;
  flow.page.text({ face: faces.regular, size: type.fine, x, y, text: label });
  flow.page.line([x + 24, y - 1, x + width, y - 1], { stroke: rule.hair });
  return top - height;
}

/** The plan with its leaders, marking what differs; which way the car points, and which side is which. */
function drawPlan(
  { flow, faces, model }: SheetContext,
  place: { readonly x: number; readonly top: number },
): number {
  const { page } = flow;
  const height = plan.height * planScale;
  const origin = [place.x - 14 * planScale, place.top - height] as const;
  const differing = model.leaders.filter(({ deviations }) => deviations > 0);
  const said = differing.map(({ label, deviations }) => `${label} ${deviations}`).join(", ");
  const words =
    said === "" ? "Plan of the car; nothing on it differs." : `Plan of the car; differs: ${said}.`;
  page.mark(
    "Figure",
    () => {
      page.form(plan.name, origin[0], origin[1], planScale);
      drawLeaders(page, origin, differing, { faces, scale: planScale });
      const middle = origin[1] + height / 2;
      const word = (text: string, at: number) =>
        page.text({ face: faces.regular, size: type.fine, x: origin[0] + 4, y: at, text });
      word("front", middle + 5);
      page.polyline(
        [
          [origin[0] + 10, middle - 4],
          [origin[0] + 4, middle],
          [origin[0] + 10, middle + 4],
        ],
        { stroke: rule.line },
      );
      word("right", middle + 32);
      word("left", middle - 36);
    },
    words,
  );
  return origin[1];
}
