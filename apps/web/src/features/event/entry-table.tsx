import type { ClassStanding } from "@trunnion/api";
import { type AssemblyCount, Differing } from "../../components/assembly-strip";
import { SmallPlate } from "../../components/plate";
import { carPath, entryPath, sheetsPath } from "../../lib/path";
import { EnteredClass } from "./class-list";
import type { Paper } from "./print-form";

/** One car entered. Texts are shown as they are; empty ones are left blank. */
export interface EntryRow {
  readonly id: string;
  readonly runningNumber: string;
  readonly driver: string;
  readonly group: string;
  readonly className: string;
  /** Left out for a car that is not on the register. */
  readonly car?: {
    readonly reference: string;
    readonly chassis: string;
    readonly series: string;
    /** Characteristics that differ from specification; left out where not worked out. */
    readonly deviating?: number;
    readonly assemblies?: readonly AssemblyCount[];
  };
  /** What the entry list said of a car that is not on the register. */
  readonly describedAs: string;
  /** How the car stands in the class it is entered in. */
  readonly standing?: ClassStanding;
  /** Codes of the classes it may enter. */
  readonly open?: readonly string[];
}

export interface EntryTableProps {
  readonly club: string;
  readonly event: string;
  readonly entries: readonly EntryRow[];
  readonly paper: Paper;
  /** Who may not print is offered nothing to print. */
  readonly mayPrint?: boolean;
}

export function EntryTable({ club, event, entries, paper, mayPrint = true }: EntryTableProps) {
  return (
    <table className="list-table entry-table">
      <caption className="sr-only">Entries in running-number order</caption>
      <thead>
        <tr>
          <th scope="col">Number</th>
          <th scope="col">Car</th>
          <th scope="col">Driver</th>
          <th scope="col">Group</th>
          <th scope="col">Class</th>
          <th scope="col">Differs from specification</th>
          {mayPrint ? (
            <th scope="col">
              <span className="print:hidden">Sheet</span>
            </th>
          ) : null}
        </tr>
      </thead>
      <tbody>
        {entries.map((entry) => (
          <tr key={entry.id}>
            <th scope="row" className="list-lead">
              {mayPrint ? (
                <a
                  href={entryPath(club, event, entry.runningNumber)}
                  aria-label={`Inspect number ${entry.runningNumber}`}
                  className="running-number"
                >
                  {entry.runningNumber}
                </a>
              ) : (
                <span className="running-number">{entry.runningNumber}</span>
              )}
            </th>
            <td className="entry-car">
              <EnteredCar club={club} entry={entry} />
            </td>
            <td className="entry-driver">{entry.driver}</td>
            <td>{entry.group === "" ? null : <Labelled label="Group" text={entry.group} />}</td>
            <td>
              {entry.className === "" ? null : <Labelled label="Class" text={entry.className} />}
              <EnteredClass standing={entry.standing} open={entry.open ?? []} />
            </td>
            <td className="list-strip">
              <EntryDiffers car={entry.car} />
            </td>
            {mayPrint ? (
              <td className="entry-sheet">
                <a
                  href={sheetsPath(club, event, { number: entry.runningNumber, paper })}
                  aria-label={`Print the sheet of number ${entry.runningNumber}`}
                  className="print:hidden inline-flex min-h-11 items-center"
                >
                  Print sheet
                </a>
              </td>
            ) : null}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** A word before the text where there is no column heading over it. */
function Labelled({ label, text }: { readonly label: string; readonly text: string }) {
  return (
    <>
      <span aria-hidden className="text-soft wide:hidden">
        {label}{" "}
      </span>
      {text}
    </>
  );
}

function EntryDiffers({ car }: { readonly car: EntryRow["car"] }) {
  if (car?.deviating === undefined) return null;
  return (
    <Differing
      deviating={car.deviating}
      {...(car.assemblies === undefined ? {} : { assemblies: car.assemblies })}
    />
  );
}

function EnteredCar({
  club,
  entry: { car, describedAs },
}: {
  readonly club: string;
  readonly entry: EntryRow;
}) {
  if (car === undefined) {
    return (
      <>
        {describedAs === "" ? "Car not described" : describedAs}
        <span className="block text-fine text-soft">
          not on the register: its sheet is blank but for the checks every car gets
        </span>
      </>
    );
  }
  return (
    <span className="flex flex-wrap items-baseline gap-x-3 gap-y-1">
      <SmallPlate chassis={car.chassis} href={carPath(club, car.reference)} />
      <span>{car.series}</span>
    </span>
  );
}
