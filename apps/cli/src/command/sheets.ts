import { blankSheet, bookOf, eventReport, openOperator, printSheets } from "@trunnion/service";
import { drawSheets, type PackPartName, packParts, type SheetKind, sheetKinds } from "@trunnion/sheets";
import { Command, InvalidArgumentError, Option } from "commander";
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
  readonly parts: readonly PackPartName[];
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
  parts,
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
  const found = parts.includes("openPoints") || parts.includes("results");
  const { models, report } = await withDatabase((database) =>
    openOperator(database, club, async (ctx) => {
      const book = await bookOf(ctx);
      return blank
        ? { models: [await blankSheet(ctx, { event, book })], report: undefined }
        : {
            models: await printSheets(ctx, { ...wanted, book }),
            report: found ? await eventReport(ctx, event) : undefined,
          };
    }),
  );
  const told = blank ? {} : { parts, ...(report === undefined ? {} : { report }) };
  const bytes = await drawSheets(models, { paper, kind, ...told });
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

/** "overview,sheets,open-points" as names of parts. */
function readParts(text: string): readonly PackPartName[] {
  return text.split(",").map((written) => {
    const part = packParts.find((one) => dashed(one) === written.trim());
    if (part === undefined)
      throw new InvalidArgumentError(
        `"${written.trim().slice(0, 30)}" is none; it must be of ${packParts.map(dashed).join(", ")}`,
      );
    return part;
  });
}

const dashed = (part: PackPartName) => (part === "openPoints" ? "open-points" : part);

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
    .addOption(
      new Option(
        "--parts <list>",
        "what the file holds, in this order: overview, sheets, stations, open-points, results",
      )
        .argParser(readParts)
        .default(["sheets"], "sheets"),
    )
    .option(
      "--origin <address>",
      "where this installation is reached, for the QR code; none is printed without",
    )
    .option("--blank", "one sheet without a car: the checks every car gets")
    .option("--json", "report as JSON")
    .action(run);
}
