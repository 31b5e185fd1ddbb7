import type { SheetCheck, SheetModel } from "@trunnion/register";
import { drawList, type ListRow, type PackPart, type PackPlace, packPart } from "./pack-page";

const checksOf = ({ stations }: SheetModel): readonly SheetCheck[] =>
  stations.flatMap(({ checks }) => checks);

/** What is worst of a car, in the order its sheet tells it. */
const mostNamed = 6;

function rowOf(model: SheetModel): ListRow {
  const { entry, car, deviations, notRecorded } = model;
  const special = checksOf(model).filter(({ special: follows, undecided }) => follows && !undecided);
  const names = [...new Set(deviations.map(({ label, verdictText }) => `${label} ${verdictText}`))];
  const more = names.length - mostNamed;
  const told = names.slice(0, mostNamed).join("; ");
  return {
    cells: [
      entry.runningNumber,
      car.onRegister ? car.chassis : "not on the register",
      `${car.marque} ${car.series}`.trim(),
      entry.driver,
      [entry.className, entry.group].filter((part) => part !== "").join(", "),
      String(names.length),
      String(special.length),
      car.onRegister ? String(notRecorded) : "all",
    ],
    below: more > 0 ? `${told}; and ${more} more` : told,
  };
}

/** Every entry in running order, with how much is different, to be looked at and not known of each. */
export function drawOverview(models: readonly SheetModel[], place: PackPlace): PackPart {
  return packPart(place, "Entry overview", (drawing) =>
    drawList(drawing, "Entries", {
      columns: [
        { name: "No.", width: 34, bold: true },
        { name: "Chassis", width: 78, bold: true },
        { name: "Car", width: 112 },
        { name: "Driver", width: 112 },
        { name: "Class, group", width: 80 },
        { name: "Differs", width: 38, bold: true },
        { name: "More checks", width: 44, bold: true },
        { name: "Not on record", width: 48 },
      ],
      rows: models.map(rowOf),
    }),
  );
}
