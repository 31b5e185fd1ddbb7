import { blankSheet, bookOf, openOperator, printSheets } from "@trunnion/service";
import { drawSheets, type SheetKind, sheetKinds } from "@trunnion/sheets";
import { Command, Option } from "commander";
import { withDatabase } from "../database";
import { requireWritable, writeOutput } from "../file";
import { printJson, printLines } from "../output";

interface Options {
  readonly club: string;
  readonly event: string;
  readonly number?: string;
  readonly out: string;
  readonly paper: "A4" | "Letter";
  readonly kind: SheetKind;
  readonly origin?: string;
  readonly blank?: boolean;
  readonly json?: boolean;
}

async function run({
  club,
  event,
  number,
  out,
  paper,
  kind,
  origin,
  blank = false,
  json,
}: Options): Promise<void> {
  await requireWritable(out);
  const wanted = {
    event,
    ...(number === undefined ? {} : { number }),
    ...(origin === undefined ? {} : { origin }),
  };
  const models = await withDatabase((database) =>
    openOperator(database, club, async (ctx) => {
      const book = await bookOf(ctx);
      return blank ? [await blankSheet(ctx, { event, book })] : printSheets(ctx, { ...wanted, book });
    }),
  );
  const bytes = await drawSheets(models, { paper, kind });
  await writeOutput(out, bytes);
  const sheets = models.map(({ entry, car, deviations, stations, recordHash }) => ({
    number: entry.runningNumber,
    chassis: car.chassis,
    deviations: deviations.length,
    checks: stations.reduce((sum, { checks }) => sum + checks.length, 0),
    recordHash,
  }));
  if (json) printJson({ ok: true, file: out, bytes: bytes.length, sheets });
  else printLines(`${sheets.length} ${sheets.length === 1 ? "sheet" : "sheets"} in ${out}`);
}

/** `trunnion sheets --club <slug> --event <slug> --out pack.pdf` */
export function sheetsCommand(): Command {
  return new Command("sheets")
    .description("print the pre-event scrutineering sheets of an event as one PDF, in running-number order")
    .requiredOption("--club <slug>", "the club's short name")
    .requiredOption("--event <slug>", "the event's short name")
    .option("--number <number>", "one running number only")
    .requiredOption("--out <file>", "PDF file to write")
    .addOption(new Option("--paper <size>", "paper").choices(["A4", "Letter"]).default("A4"))
    .addOption(
      new Option("--kind <kind>", "plain, to be filled in on a screen, or that and tagged for screen readers")
        .choices([...sheetKinds])
        .default("plain"),
    )
    .option(
      "--origin <address>",
      "where this installation is reached, for the QR code; none is printed without",
    )
    .option("--blank", "one sheet without a car: the checks every car gets")
    .option("--json", "report as JSON")
    .action(run);
}
