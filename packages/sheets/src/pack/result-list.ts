import { type EventReportModel, pointWords, type ReportEntry, type SheetModel } from "@trunnion/register";
import { drawList, type ListRow, type PackPart, type PackPlace, packPart } from "./pack-page";

const carOf = ({ chassis, car }: ReportEntry) => (chassis === "" ? car : chassis);

/** What became of each car, in running order. */
export function drawResults({ entries }: EventReportModel, place: PackPlace): PackPart {
  const rowOf = (entry: ReportEntry): ListRow => {
    const { number, driver, className, outcome, presented, counts, decided, signedBy } = entry;
    const again = presented === 0 ? "" : ` (presented ${presented + 1} times)`;
    const count = (value: number) => (value === 0 ? "–" : String(value));
    return {
      cells: [
        number,
        carOf(entry),
        driver,
        className,
        `${outcome}${again}`,
        count(counts.passed),
        count(counts.advised),
        count(counts.refused + counts.differ),
        count(counts.open),
        [decided, signedBy === "" ? "" : `signed ${signedBy}`].filter((part) => part !== "").join("; "),
      ],
    };
  };
  return packPart(place, "Results", (drawing) =>
    drawList(drawing, "Results", {
      columns: [
        { name: "No.", width: 34, bold: true },
        { name: "Car", width: 78, bold: true },
        { name: "Driver", width: 100 },
        { name: "Class", width: 66 },
        { name: "Decision", width: 76, bold: true },
        { name: "Pass", width: 26 },
        { name: "Advise", width: 30 },
        { name: "Refuse", width: 30 },
        { name: "Open", width: 26 },
        { name: "By", width: 100 },
      ],
      rows: entries.map(rowOf),
    }),
  );
}

/** Checks of a sheet that an earlier event left open. */
function carriedOf(models: readonly SheetModel[], number: string): readonly ListRow[] {
  const model = models.find(({ entry }) => entry.runningNumber === number);
  const checks = model?.stations.flatMap(({ checks: all }) => all) ?? [];
  return checks
    .filter(({ id }) => id.startsWith("carried-"))
    .map(({ short, why }) => ({ cells: [number, model?.car.chassis ?? "", "From earlier", short, why] }));
}

/** What is still to be settled: refused, judged differently, advised, left from earlier events, not looked at. */
export function drawOpenPoints(
  models: readonly SheetModel[],
  { entries, missing }: EventReportModel,
  place: PackPlace,
): PackPart {
  const rows = entries.flatMap((entry): readonly ListRow[] => {
    const { number, points, counts } = entry;
    const found = points
      .filter(({ kind }) => kind !== "open")
      .map(({ kind, check, note, by }) => ({
        cells: [
          number,
          carOf(entry),
          pointWords[kind],
          check,
          [note === "" ? "" : `“${note}”`, by].filter((part) => part !== "").join(", "),
        ],
      }));
    const open = counts.open;
    const left =
      open === 0 ? [] : [{ cells: [number, carOf(entry), pointWords.open, `${open} of its checks`, ""] }];
    return [...found, ...carriedOf(models, number), ...left];
  });
  return packPart(place, "Open points", (drawing) => {
    drawList(drawing, "Open points", {
      columns: [
        { name: "No.", width: 34, bold: true },
        { name: "Car", width: 78, bold: true },
        { name: "Standing", width: 76, bold: true },
        { name: "Check", width: 200 },
        { name: "Note, by whom", width: 150 },
      ],
      rows,
    });
    if (missing.length === 0) return;
    drawList(drawing, "May be missing", {
      columns: [{ name: "Phones that had not sent everything", width: 535 }],
      rows: missing.map((text) => ({ cells: [text] })),
    });
  });
}
