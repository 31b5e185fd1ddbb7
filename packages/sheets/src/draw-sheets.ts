import { setImmediate } from "node:timers/promises";
import { canonicalJson, type SheetModel } from "@trunnion/register";
import { SheetDocument } from "./document/sheet-document";
import { loadFaces } from "./font/face";
import { type Paper, papers, sheetBox } from "./layout/paper";
import { packedPlan, plan } from "./mark/plan";
import { drawSheet } from "./sheet";

export interface SheetsOptions {
  readonly paper: Paper;
  /** Plain when left out; a file to be filled in, or one that also tells a screen reader what is what. */
  readonly kind?: SheetKind;
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
 * One PDF of pre-event scrutineering sheets, one car after another in the order given, with a bookmark each.
 * The same models give the same bytes, on whatever day and machine they are drawn with the same Node and fonts.
 *
 * @throws RangeError when there is no model or too many, for a layout this version cannot draw, a `preparedAt`
 * that is no instant, a text above 5,000 characters, or a sheet above 100 pages; nothing is drawn in part
 */
export async function drawSheets(models: readonly SheetModel[], options: SheetsOptions): Promise<Uint8Array> {
  const { paper, kind = "plain" } = options;
  if (!papers.includes(paper))
    throw new RangeError(`paper "${paper}" is not known; it must be ${papers.join(" or ")}`);
  if (models.length === 0) throw new RangeError("no car to draw a sheet for; give at least one model");
  if (models.length > mostCars)
    throw new RangeError(`${models.length} cars in one file; at most ${mostCars} are drawn`);
  const dates = models.map(preparedDate);
  const faces = loadFaces();
  const box = sheetBox(paper);
  const document = new SheetDocument(
    {
      title: documentTitle(models),
      preparedAt: new Date(Math.max(...dates.map(Number))),
      identity: [paper, kind, ...models.map(identity)].join("\n"),
      width: box.width,
      height: box.height,
      fillable: kind !== "plain",
      tagged: kind === "tagged",
    },
    faces,
  );
  document.addDrawing(plan.name, packedPlan());
  for (const [at, model] of models.entries()) {
    if (at > 0 && at % carsPerTurn === 0) await Promise.all([document.settle(), setImmediate()]);
    const prepared = dates[at] ?? new Date(0);
    const pages = drawSheet(model, { box, faces, prepared, tagged: kind === "tagged" });
    document.addCar(bookmark(model), pages, {
      number: model.entry.runningNumber,
      // In one order of keys: the database gives a kept model back in its own.
      json: canonicalJson(model),
    });
  }
  return document.bytes();
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

function documentTitle(models: readonly SheetModel[]): string {
  const [first] = models;
  if (first === undefined) return "";
  if (models.length === 1)
    return `Scrutineering sheet, No. ${first.entry.runningNumber}, ${first.car.chassis}, ${first.event.name}`;
  const events = new Set(models.map((model) => model.event.name));
  return `Scrutineering sheets, ${models.length} cars, ${events.size === 1 ? first.event.name : `${events.size} events`}`;
}
