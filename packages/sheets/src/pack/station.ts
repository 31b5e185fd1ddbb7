import type { SheetCheck, SheetModel } from "@trunnion/register";
import { drawHeading } from "../layout/heading";
import { block, blockHeight, drawBlock, runOn } from "../layout/row";
import type { Drawing } from "../layout/sheet-context";
import { rule, type } from "../layout/style";
import { shorten } from "../text/wrap";
import { type PackPart, type PackPlace, packPart } from "./pack-page";

/** Left of the cells: running number, chassis, driver. */
const nameWidth = 150;
const numberWidth = 38;
const rowHeight = 19;
/** Narrowest cell one can write a letter into. */
const narrowest = 15;
const boxPitch = 11;
const words = ["P", "A", "R", "–"] as const;

interface Station {
  readonly label: string;
  /** Checks that every car gets here. */
  readonly common: readonly SheetCheck[];
  readonly cars: readonly { readonly model: SheetModel; readonly own: readonly SheetCheck[] }[];
}

function stationsOf(models: readonly SheetModel[]): readonly Station[] {
  const labels = new Map<string, string>();
  for (const { stations } of models) for (const { station, label } of stations) labels.set(station, label);
  return [...labels].map(([station, label]) => {
    const here = models.map((model) => ({
      model,
      checks: model.stations.find((one) => one.station === station)?.checks ?? [],
    }));
    const common = new Map<string, SheetCheck>();
    for (const { checks } of here)
      for (const check of checks) if (!check.special && !common.has(check.id)) common.set(check.id, check);
    return {
      label,
      common: [...common.values()],
      cars: here.map(({ model, checks }) => ({ model, own: checks.filter(({ special }) => special) })),
    };
  });
}

/** One list a station for who stands there all day: its checks once, then every car with a cell a check. */
export function drawStations(models: readonly SheetModel[], place: PackPlace): readonly PackPart[] {
  return stationsOf(models).map((station) =>
    packPart(place, station.label, (drawing) => drawStation(drawing, station)),
  );
}

function drawStation(drawing: Drawing, station: Station): void {
  const { flow } = drawing;
  drawHeading(drawing, {
    title: "Checks",
    note: "made on every car; a letter into each cell: P pass, A advise, R refuse, – not applicable",
  });
  drawCommon(drawing, station.common);
  const most = Math.floor((flow.box.right - flow.box.left - nameWidth) / narrowest);
  for (let from = 0; from < Math.max(1, station.common.length); from += most) {
    const numbers = station.common.slice(from, from + most).map((_, at) => from + at + 1);
    drawMatrix(drawing, station, numbers, from === 0);
  }
}

/** The checks in two columns, numbered. */
function drawCommon(drawing: Drawing, checks: readonly SheetCheck[]): void {
  const { flow, faces } = drawing;
  const gutter = 14;
  const width = (flow.box.right - flow.box.left - gutter) / 2;
  const lines = checks.map(({ short, wanted, caution }, at) =>
    runOn(
      [
        { face: faces.bold, size: 8.6, text: `${at + 1}  ` },
        { face: faces.regular, size: 8.6, text: wanted === "" ? short : `${short}: ${wanted}` },
        { face: faces.bold, size: 8.6, text: caution === undefined ? "" : ` Caution: ${caution}.` },
      ],
      width,
    ),
  );
  const half = Math.ceil(lines.length / 2);
  for (let at = 0; at < half; at++) {
    const [left = [], right = []] = [lines[at], lines[at + half]];
    const height = Math.max(blockHeight(left), blockHeight(right)) + 1.6;
    flow.ensure(height);
    flow.page.mark("P", () => drawBlock(flow.page, left, flow.box.left, flow.y - 0.8));
    flow.page.mark("P", () => drawBlock(flow.page, right, flow.box.left + width + gutter, flow.y - 0.8));
    flow.y -= height;
  }
  flow.y -= 6;
}

function drawMatrix(drawing: Drawing, { cars }: Station, numbers: readonly number[], withOwn: boolean): void {
  const { flow } = drawing;
  const left = flow.box.left + nameWidth;
  const pitch = Math.min(26, (flow.box.right - left) / Math.max(1, numbers.length));
  const places = Array.from({ length: numbers.length + 1 }, (_, at) => left + at * pitch);
  const head = () => drawMatrixHead(drawing, numbers, { left, pitch });
  flow.ensure(60);
  head();
  flow.onContinue = head;
  for (const { model, own } of cars) {
    flow.ensure(rowHeight + (withOwn && own.length > 0 ? 14 : 0));
    const top = flow.y;
    drawName(drawing, model, top);
    const bottom = top - rowHeight;
    flow.page.uprights(places, [bottom, top], rule.hair);
    flow.page.line([flow.box.left, bottom, flow.box.right, bottom], { stroke: rule.hair });
    flow.y = bottom;
    if (withOwn) for (const check of own) drawOwn(drawing, check, model.entry.runningNumber);
  }
  flow.onContinue = undefined;
  flow.y -= 8;
}

function drawMatrixHead(
  { flow, faces }: Drawing,
  numbers: readonly number[],
  { left, pitch }: { readonly left: number; readonly pitch: number },
): void {
  const { page, box } = flow;
  const y = flow.y - 10;
  page.text({ face: faces.bold, size: type.text, x: box.left, y, text: "Car" });
  numbers.forEach((number, at) => {
    const x = left + (at + 0.5) * pitch;
    page.text({ face: faces.bold, size: type.text, x, y, text: String(number), align: "centre" });
  });
  page.line([box.left, flow.y - 13, box.right, flow.y - 13], { stroke: rule.line });
  flow.y -= 13;
}

function drawName({ flow, faces }: Drawing, { entry, car }: SheetModel, top: number): void {
  const { page, box } = flow;
  const x = box.left + numberWidth;
  const room = nameWidth - numberWidth - 4;
  const chassis = car.onRegister ? car.chassis : car.series;
  page.mark("P", () => {
    const number = shorten(faces.bold, 13, entry.runningNumber, numberWidth - 3);
    page.text({ face: faces.bold, size: 13, x: box.left, y: top - 14, text: number });
    const text = shorten(faces.bold, 8.4, chassis, room);
    page.text({ face: faces.bold, size: 8.4, x, y: top - 9, text });
    page.text({
      face: faces.regular,
      size: type.text,
      x,
      y: top - 17,
      text: shorten(faces.regular, type.text, entry.driver, room),
    });
  });
}

/** A check that this car alone gets, with its reason and boxes of its own. */
function drawOwn({ flow, faces }: Drawing, check: SheetCheck, number: string): void {
  const { box } = flow;
  const boxes = check.undecided ? 1 : words.length;
  const from = box.left + numberWidth + words.length * boxPitch + 5;
  const wanted = check.limit ?? check.wanted;
  const lines = check.undecided
    ? block(faces.regular, type.text, check.short, box.right - from)
    : runOn(
        [
          { face: faces.bold, size: type.text, text: `${check.short}${wanted === "" ? "" : `: ${wanted}`} ` },
          { face: faces.regular, size: type.text, text: check.why },
          {
            face: faces.bold,
            size: type.text,
            text: check.caution === undefined ? "" : ` Caution: ${check.caution}.`,
          },
        ],
        box.right - from,
      );
  const height = Math.max(12.5, blockHeight(lines) + 2);
  flow.ensure(height);
  const { page, y: top } = flow;
  const start = box.left + numberWidth;
  page.mark("P", () => {
    page.text({
      face: faces.regular,
      size: 7,
      x: start - 4,
      y: top - 8.6,
      text: `No. ${number}`,
      align: "right",
    });
    drawBlock(page, lines, from, top - 1.4);
  });
  const places = Array.from({ length: boxes + 1 }, (_, at) => start + at * boxPitch);
  page.uprights(places, [top - height, top], rule.hair);
  words.slice(0, boxes).forEach((word, at) => {
    page.text({ face: faces.regular, size: 6.2, x: start + at * boxPitch + 1.5, y: top - 6, text: word });
  });
  page.rect([box.left - 4.5, top - height + 1, 3, height - 2], { fill: check.undecided ? "black" : "red" });
  page.line([start, top - height, box.right, top - height], { stroke: rule.hair });
  flow.y -= height;
}
