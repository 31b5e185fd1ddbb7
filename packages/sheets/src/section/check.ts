import type { SheetModel } from "@trunnion/register";
import { drawHeading, headingHeight } from "../layout/heading";
import { drawBlock } from "../layout/row";
import type { SheetContext } from "../layout/sheet-context";
import { rule, type } from "../layout/style";
import { shorten } from "../text/wrap";
import { firstLines } from "./bounded-text";
import { boxesWidth, densities, drawCheckRow, type RowSetting, results, resultWords } from "./check-row";
import { footnotesOf } from "./footnote";
import { resultHeight } from "./result";
import {
  fits,
  levelled,
  type Placed,
  placeIn,
  type Region,
  stationHeight,
  type WalkStation,
  walkOf,
} from "./walk";

const title = "Checks, walking round the car";
const gutter = 13;
/** Less than this under the settings, and the walk begins on a new page. */
const leastStart = 64;
const introHeight = 11;
const head = headingHeight + introHeight;
const wantedPages = 2;
const mostPages = 60;

interface Plan {
  readonly setting: RowSetting;
  readonly regions: readonly Region[];
  readonly placed: readonly Placed[];
}

/** Checks by station, in the order one walks, in two columns; each with boxes to mark, its reason, room to write. */
export function drawChecks(context: SheetContext): void {
  const { flow, model } = context;
  if (model.stations.length === 0) return;
  const { setting, regions, placed } = planned(context);
  for (const [at, region] of regions.entries()) {
    if (at > 0 || region.page > 0) flow.next();
    if (at === 0) {
      drawHeading(context, { title, note: model.event.ruleSet });
      drawIntroduction(context, setting.common);
    }
    const top = flow.y;
    flow.page.part("L", () => {
      for (const item of placed) {
        if (item.page === region.page) drawPlaced(context, item, { top, setting });
      }
    });
    flow.y = top - region.height - 3;
  }
}

/** The widest setting that ends on the second page; where none does, the widest on as few more as it takes. */
function planned(context: SheetContext): Plan {
  const { model } = context;
  const footnote = footnotesOf(model).of;
  const common = commonReason(model);
  const width = columnWidth(context);
  const found: RowSetting["found"] = new Map();
  const settings = densities.map(
    (density): RowSetting => ({ faces: context.faces, density, width, common, footnote, found }),
  );
  // Made when it is tried: most sheets need the first or second only.
  const made = new Map<RowSetting, readonly WalkStation[]>();
  const walkIn = (setting: RowSetting) => {
    const walk = made.get(setting) ?? walkOf(model, setting);
    made.set(setting, walk);
    return walk;
  };
  for (let pages = wantedPages; pages <= mostPages; pages++) {
    for (const setting of settings) {
      const plan = within(context, { setting, walk: walkIn(setting) }, pages);
      if (plan !== undefined) return plan;
    }
  }
  throw new RangeError(
    `the checks of No. ${model.entry.runningNumber.slice(0, 20)} do not fit ${mostPages} pages; shorten the rule set`,
  );
}

function within(
  context: SheetContext,
  { setting, walk }: { readonly setting: RowSetting; readonly walk: readonly WalkStation[] },
  pages: number,
): Plan | undefined {
  for (const all of allRegions(context, pages)) {
    if (!fits(walk, all)) continue;
    const regions = levelled(walk, all);
    return { setting, regions, placed: placeIn(walk, regions) };
  }
  return undefined;
}

/** Rooms for checks from here to a number of pages; fewer pages first, the last one shared with the result. */
function allRegions({ flow, model, faces }: SheetContext, pages: number): readonly (readonly Region[])[] {
  const first: Region[] = flow.free >= leastStart ? [{ page: 0, height: flow.free - head }] : [];
  const further = Math.max(0, pages - flow.pages.length);
  const full = Array.from({ length: further }, (_, at) => ({ page: at + 1, height: flow.furtherHeight }));
  const result = resultHeight({ flow, model, faces });
  return Array.from({ length: further + 1 }, (_, count) => [...first, ...full.slice(0, count)])
    .filter((regions) => regions.length > 0)
    .map((regions) =>
      regions.map(({ page, height }, at) => ({
        page,
        height: height - (at === 0 && page > 0 ? head : 0) - (at === regions.length - 1 ? result + 4 : 0),
      })),
    );
}

function columnWidth({ flow }: SheetContext): number {
  return (flow.box.right - flow.box.left - gutter) / 2;
}

/** The reason most ordinary checks share, told once above them all. */
function commonReason(model: SheetModel): string {
  const counts = new Map<string, number>();
  for (const check of model.stations.flatMap((station) => station.checks)) {
    if (!check.special) counts.set(check.why, (counts.get(check.why) ?? 0) + 1);
  }
  const [first] = [...counts].sort(([, a], [, b]) => b - a);
  return first?.[0] ?? "";
}

function drawIntroduction({ flow, faces }: SheetContext, common: string): void {
  const ordinary = common === "" ? "" : ` Without a reason: ${common.replace(/\.$/, "")}.`;
  const words = `P pass · A advise · R refuse · – not applicable. Bar: because of this car; broken bar: not on record.${ordinary}`;
  const width = flow.box.right - flow.box.left;
  const lines = firstLines(words, { face: faces.regular, size: type.text, width, most: 1 });
  flow.page.mark("P", () => drawBlock(flow.page, lines, flow.box.left, flow.y - 2));
  flow.y -= introHeight;
}

function drawPlaced(
  context: SheetContext,
  item: Placed,
  { top, setting }: { readonly top: number; readonly setting: RowSetting },
): void {
  const { flow } = context;
  const x = flow.box.left + item.column * (setting.width + gutter);
  const y = top - item.down;
  if ("row" in item) drawCheckRow(flow.page, item.row, { x, top: y, width: setting.width }, setting);
  else drawStationName(context, item.name, { x, top: y, width: setting.width });
}

function drawStationName(
  { flow, faces }: SheetContext,
  name: string,
  { x, top, width }: { readonly x: number; readonly top: number; readonly width: number },
): void {
  const { page } = flow;
  const baseline = top - stationHeight + 3.2;
  const pitch = boxesWidth / results.length;
  resultWords.forEach((word, at) => {
    page.text({
      face: faces.bold,
      size: type.text,
      x: x + (at + 0.5) * pitch,
      y: baseline,
      text: word,
      align: "centre",
    });
  });
  page.mark("H3", () =>
    page.text({
      face: faces.bold,
      size: type.name,
      x: x + boxesWidth + 4,
      y: baseline,
      text: shorten(faces.bold, type.name, name, width - boxesWidth - 4),
    }),
  );
  page.line([x, top - stationHeight, x + width, top - stationHeight], { stroke: rule.line });
}
