import { setImmediate } from "node:timers/promises";
import { canonicalJson, type EventReportModel, type SheetModel } from "@trunnion/register";
import { SheetDocument } from "./document/sheet-document";
import { loadFaces } from "./font/face";
import { type Paper, papers, sheetBox } from "./layout/paper";
import { packedPlan, plan } from "./mark/plan";
import { drawLists, type PackPartName } from "./pack/pack";
import { drawSheet, type SheetPlace } from "./sheet";

export interface SheetsOptions {
  readonly paper: Paper;
  /** Plain when left out; a file to be filled in, or one that also tells a screen reader what is what. */
  readonly kind?: SheetKind;
  /** What the file holds, in this order; the sheets alone when left out. */
  readonly parts?: readonly PackPartName[];
  /** What was found at the event: open points and results are drawn from it. */
  readonly report?: EventReportModel;
}

export const sheetKinds = ["plain", "fillable", "tagged"] as const;
export type SheetKind = (typeof sheetKinds)[number];

const layoutVersion = 3;
/** Most cars in one file; far above any event, and some hundred megabytes of memory below trouble. */
const mostCars = 5_000;
/** Most assemblies the list beside the plan has room for on a first page. */
const mostLeaders = 40;
/** Cars drawn between two turns of the event loop, some twenty milliseconds. */
const carsPerTurn = 4;

/**
 * One PDF of pre-event scrutineering sheets, one car after another in the order given, with a bookmark each, and lists
 * of the whole event where they are asked for: before the sheets, after them, or alone.
 * The same models give the same bytes, on whatever day and machine they are drawn with the same Node and fonts.
 *
 * @throws RangeError when there is no model or too many, for a layout this version cannot draw, a `preparedAt`
 * that is no instant, a text above 5,000 characters, a sheet above 100 pages, or a list of results without a report;
 * nothing is drawn in part
 */
export async function drawSheets(models: readonly SheetModel[], options: SheetsOptions): Promise<Uint8Array> {
  const { paper, kind = "plain", parts = ["sheets"], report } = options;
  if (!papers.includes(paper))
    throw new RangeError(`paper "${paper}" is not known; it must be ${papers.join(" or ")}`);
  if (models.length === 0) throw new RangeError("no car to draw a sheet for; give at least one model");
  if (models.length > mostCars)
    throw new RangeError(`${models.length} cars in one file; at most ${mostCars} are drawn`);
  const prepared = new Date(Math.max(...models.map(preparedDate).map(Number)));
  const document = newDocument(models, prepared, { ...options, kind, parts });
  document.addDrawing(plan.name, packedPlan());
  const place = { box: sheetBox(paper), faces: loadFaces(), prepared, tagged: kind === "tagged" };
  for (const part of parts) {
    if (part === "sheets") await drawCars(document, models, place);
    else
      for (const { title, pages } of drawLists(part, { models, report, place }))
        document.addCar(title, pages);
  }
  return document.bytes();
}

function newDocument(
  models: readonly SheetModel[],
  preparedAt: Date,
  { paper, kind, parts, report }: SheetsOptions & Required<Pick<SheetsOptions, "kind" | "parts">>,
): SheetDocument {
  const { width, height } = sheetBox(paper);
  const told = report === undefined ? [] : [report.hash];
  return new SheetDocument(
    {
      title: documentTitle(models, parts),
      preparedAt,
      identity: [paper, kind, ...parts, ...told, ...models.map(identity)].join("\n"),
      width,
      height,
      fillable: kind !== "plain",
      tagged: kind === "tagged",
    },
    loadFaces(),
  );
}

/** A few cars at a time, so that others have their turn and no more than these lie about unpacked. */
async function drawCars(
  document: SheetDocument,
  models: readonly SheetModel[],
  place: Omit<SheetPlace, "prepared">,
): Promise<void> {
  for (const [at, model] of models.entries()) {
    if (at > 0 && at % carsPerTurn === 0) await Promise.all([document.settle(), setImmediate()]);
    const pages = drawSheet(model, { ...place, prepared: preparedDate(model) });
    document.addCar(bookmark(model), pages, {
      number: model.entry.runningNumber,
      // In one order of keys: the database gives a kept model back in its own.
      json: canonicalJson(model),
    });
  }
}

/** Refuses what cannot be drawn, before anything is. */
function preparedDate(model: SheetModel): Date {
  const where = `sheet of No. ${model.entry.runningNumber.slice(0, 20)}`;
  if (model.layoutVersion !== layoutVersion) {
    throw new RangeError(
      `${where}: layout ${model.layoutVersion} is drawn no more, this program draws layout ${layoutVersion}; print the sheet anew`,
    );
  }
  const { leaders } = model;
  if (leaders.length > mostLeaders) {
    throw new RangeError(
      `${where}: ${leaders.length} assemblies round the plan; at most ${mostLeaders} can be listed`,
    );
  }
  const date = new Date(model.preparedAt);
  if (!Number.isNaN(date.getTime())) return date;
  throw new RangeError(
    `${where}: preparedAt is "${model.preparedAt}"; it must be an ISO instant such as 2026-05-14T18:30:00Z`,
  );
}

function identity({ recordHash, preparedAt, entry, event }: SheetModel): string {
  return [recordHash, preparedAt, entry.runningNumber, event.name].join("|");
}

function bookmark({ entry, car }: SheetModel): string {
  return [entry.runningNumber, car.chassis, entry.driver].filter((part) => part !== "").join(" · ");
}

function documentTitle(models: readonly SheetModel[], parts: readonly PackPartName[]): string {
  const [first] = models;
  if (first === undefined) return "";
  if (!parts.includes("sheets")) return `Lists of the event, ${first.event.name}`;
  if (models.length === 1)
    return `Scrutineering sheet, No. ${first.entry.runningNumber}, ${first.car.chassis}, ${first.event.name}`;
  const events = new Set(models.map((model) => model.event.name));
  return `Scrutineering sheets, ${models.length} cars, ${events.size === 1 ? first.event.name : `${events.size} events`}`;
}
