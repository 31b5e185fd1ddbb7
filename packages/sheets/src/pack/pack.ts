import type { EventReportModel, SheetModel } from "@trunnion/register";
import { printableModel } from "../text/printable";
import { drawOverview } from "./overview";
import type { PackPart, PackPlace } from "./pack-page";
import { drawOpenPoints, drawResults } from "./result-list";
import { drawStations } from "./station";

/** What a file of an event may hold, in the order asked for. */
export const packParts = ["overview", "sheets", "stations", "openPoints", "results"] as const;
export type PackPartName = (typeof packParts)[number];

export interface ListsInput {
  readonly models: readonly SheetModel[];
  /** Needed for open points and results. */
  readonly report: EventReportModel | undefined;
  readonly place: Omit<PackPlace, "event" | "club" | "unprintable">;
}

/**
 * Draws one part that is a list and no sheet.
 *
 * @throws RangeError for open points or results without the report they are drawn from
 */
export function drawLists(
  part: Exclude<PackPartName, "sheets">,
  { models, report, place }: ListsInput,
): readonly PackPart[] {
  const { faces } = place;
  const all = printableModel({ models, report }, faces, "lists of the event");
  const [first] = all.model.models;
  if (first === undefined) return [];
  const on: PackPlace = { ...place, event: first.event, club: first.club, unprintable: all.unprintable };
  if (part === "overview") return [drawOverview(all.model.models, on)];
  if (part === "stations") return drawStations(all.model.models, on);
  if (all.model.report === undefined)
    throw new RangeError(`"${part}" is drawn from what was found at the event; give its report`);
  return part === "results"
    ? [drawResults(all.model.report, on)]
    : [drawOpenPoints(all.model.models, all.model.report, on)];
}
