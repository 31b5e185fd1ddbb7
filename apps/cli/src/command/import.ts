import { basename } from "node:path";
import { bookOf, importRegister, openOperator, tableLimits } from "@trunnion/service";
import { Command } from "commander";
import { withDatabase } from "../database";
import { readBounded } from "../file";
import { printJson, printLines } from "../output";
import { importLines } from "./import-report";

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
A row with a cell that cannot be read, or with a formula, is reported and left out; the others go in together.
Reading the same file again changes nothing. Columns that mean nothing here go to the car's remarks.`;

interface Options {
  readonly club: string;
  readonly asOf?: string;
  readonly dryRun?: boolean;
  readonly json?: boolean;
}

async function run(path: string, options: Options): Promise<void> {
  const bytes = await readBounded(path, tableLimits.bytes);
  const report = await withDatabase((database) =>
    openOperator(database, options.club, async (ctx) =>
      importRegister(ctx, {
        file: basename(path),
        bytes,
        book: await bookOf(ctx),
        asOf: options.asOf ?? ctx.today,
        dryRun: options.dryRun ?? false,
      }),
    ),
  );
  if (options.json) printJson({ ok: true, ...report });
  else printLines(...importLines(report));
}

/** `trunnion import register.csv --club <slug>` */
export function importCommand(): Command {
  return new Command("import")
    .description("read a register of cars from a CSV file into a club")
    .argument("<file>", "CSV: UTF-8 or Windows-1252; comma, semicolon or tab")
    .requiredOption("--club <slug>", "the club's short name")
    .option("--as-of <day>", "day the file tells of, e.g. 2026-03-01; today when left out")
    .option("--dry-run", "tell what would change, write nothing")
    .option("--json", "report as JSON")
    .addHelpText("after", help)
    .action(run);
}
