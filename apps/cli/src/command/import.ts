import { basename } from "node:path";
import { type ImportMapping, importMappingSchema, refused } from "@trunnion/register";
import {
  bookOf,
  type ImportReport,
  importInChunks,
  openOperator,
  tableLimits,
  undoImport,
} from "@trunnion/service";
import { Command } from "commander";
import { withDatabase } from "../database";
import { readBounded } from "../file";
import { printJson, printLines } from "../output";
import { importLines, undoLines } from "./import-report";

/** Exit code when the file was read and some of its rows were left out. */
const ROWS_LEFT_OUT = 3;
/** Bytes of a mapping that are read at most. */
const MAPPING_LIMIT = 1_000_000;

const help = `
The first line names the columns, in any order:
  Chassis (needed), Claim, Series, Commission no, Engine no, Body no, Registration, Built, First registered,
  Status, Status since, Options, Keeper, Keeper address, Keeper e-mail, Keeper telephone, Kept since,
  Recorded on, Measured on, Changed on, Changed because, Donor, Remarks
and, per characteristic, by its label or key, with the side where it has one:
  as built: front anti-roll bar diameter          what the works fitted
  now: front anti-roll bar diameter [mm]          what is on the car; [unit] for bare numbers
  now: front camber left                          one side
Dates may be partial: 1971, c. 1971, 3/72, before March 1972. Empty cells say nothing.
A row with a cell that cannot be read, or with a formula, is reported and left out; the others go in, some hundred at
a time. Reading the same file again changes nothing. Columns that mean nothing here go to the car's remarks.

A file with other headings: --mapping columns.json says what they are,
  { "columns": [ { "heading": "VIN", "as": "Chassis" },
                 { "heading": "Bar", "as": "now: Front anti-roll bar diameter", "unit": "mm" },
                 { "heading": "Sold", "as": "Kept since", "unit": "days from 1900" },
                 { "heading": "Shoe size", "as": "leave out" }, { "heading": "Mag", "as": "keep as remarks" } ] }
Without it, what was settled on the web pages for a file with the same headings counts.

Exit code: 0 when every row was taken; ${ROWS_LEFT_OUT} when some were left out, each told with its line, and every other row was
taken; 1 when nothing could be done and nothing was written. --json says the same under "exit".
--undo <run> takes an import back as one step; its report names the run. It is refused, and nothing undone, when
somebody changed one of its cars since.`;

interface Options {
  readonly club: string;
  readonly asOf?: string;
  readonly sheet?: string;
  readonly mapping?: string;
  readonly dryRun?: boolean;
  readonly undo?: string;
  readonly json?: boolean;
}

/** @throws Refusal INPUT_NOT_JSON; ZodError for JSON that is no mapping */
async function readMapping(path: string): Promise<ImportMapping> {
  const text = new TextDecoder().decode(await readBounded(path, MAPPING_LIMIT));
  let document: unknown;
  try {
    document = JSON.parse(text);
  } catch (error) {
    throw refused("INPUT_NOT_JSON", { problem: `${basename(path)}: ${(error as Error).message}` });
  }
  return importMappingSchema.parse(document);
}

async function readIn(path: string, options: Options): Promise<ImportReport> {
  const bytes = await readBounded(path, tableLimits.bytes);
  const mapping = options.mapping === undefined ? undefined : await readMapping(options.mapping);
  return withDatabase(async (database) => {
    const { book, today } = await openOperator(database, options.club, async (ctx) => ({
      book: await bookOf(ctx),
      today: ctx.today,
    }));
    return importInChunks((work) => openOperator(database, options.club, work), {
      file: basename(path),
      bytes,
      book,
      asOf: options.asOf ?? today,
      dryRun: options.dryRun ?? false,
      ...(options.sheet === undefined ? {} : { sheet: options.sheet }),
      ...(mapping === undefined ? {} : { mapping }),
    });
  });
}

/** How the command ends, and what that means, for whoever reads the report by a program. */
function exitOf({ refusedRows }: ImportReport) {
  if (refusedRows.length === 0) return { code: 0, means: "every row was taken" };
  return {
    code: ROWS_LEFT_OUT,
    means: "the rows under refusedRows were left out, every other row was taken",
  };
}

async function run(path: string | undefined, options: Options, command: Command): Promise<void> {
  const { undo: id } = options;
  if (id !== undefined && path !== undefined)
    command.error("error: give a file to read, or --undo, not both");
  if (id !== undefined) return undo(id, options);
  if (path === undefined) return command.error("error: missing required argument 'file'");
  const report = await readIn(path, options);
  const exit = exitOf(report);
  if (options.json) printJson({ ok: true, exit, ...report });
  else printLines(...importLines(report));
  if (exit.code !== 0) process.exitCode = exit.code;
}

async function undo(id: string, options: Options): Promise<void> {
  const report = await withDatabase((database) =>
    openOperator(database, options.club, (ctx) => undoImport(ctx, id)),
  );
  if (options.json) printJson({ ok: true, ...report });
  else printLines(...undoLines(report));
}

/** `trunnion import register.csv --club <slug>`, `trunnion import --undo <run> --club <slug>` */
export function importCommand(): Command {
  return new Command("import")
    .description("read a register of cars from a CSV, XLSX or ODS file into a club")
    .argument(
      "[file]",
      "CSV (UTF-8 or Windows-1252; comma, semicolon or tab), XLSX or ODS, told by what is in it",
    )
    .requiredOption("--club <slug>", "the club's short name")
    .option("--as-of <day>", "day the file tells of, e.g. 2026-03-01; today when left out")
    .option(
      "--sheet <name>",
      "sheet of a workbook; the first that is shown and has a table in it when left out",
    )
    .option("--mapping <file.json>", "what the columns hold, where the headings do not say so")
    .option("--dry-run", "tell what would change, write nothing")
    .option("--undo <run>", "take an import back as one step")
    .option("--json", "report as JSON")
    .addHelpText("after", help)
    .action(run);
}
