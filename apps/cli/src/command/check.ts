import {
  bookOf,
  compareCurrentValues,
  listClubs,
  openOperator,
  rebuildAllCurrentValues,
  verifyJournal,
} from "@trunnion/service";
import { Command } from "commander";
import { withDatabase } from "../database";
import { printJson, printLines } from "../output";

interface Options {
  readonly club?: string;
  readonly rebuild?: boolean;
  readonly json?: boolean;
}

async function run(options: Options): Promise<void> {
  const results = await withDatabase(async (database) => {
    const slugs = options.club === undefined ? await listClubs(database) : [options.club];
    const found = [];
    for (const slug of slugs) {
      found.push(
        await openOperator(database, slug, async (ctx) => {
          const book = await bookOf(ctx);
          if (options.rebuild) await rebuildAllCurrentValues(ctx, book);
          return {
            club: slug,
            journal: await verifyJournal(ctx),
            currentValues: await compareCurrentValues(ctx, book),
          };
        }),
      );
    }
    return found;
  });
  const sound = results.every(
    ({ journal, currentValues }) => journal.length === 0 && currentValues.length === 0,
  );
  if (options.json) printJson({ ok: sound, clubs: results });
  else {
    for (const { club, journal, currentValues } of results) {
      printLines(
        `${club}: journal ${journal.length === 0 ? "holds" : `broken at ${journal.map((one) => one.sequence).join(", ")}`}; ` +
          `current values ${currentValues.length === 0 ? "are what the records amount to" : `stale: ${currentValues.length}`}`,
        ...currentValues
          .slice(0, 20)
          .map((one) => `  ${one.car} ${one.characteristic} ${one.side}: ${one.problem}`),
      );
    }
  }
  if (!sound) process.exitCode = 1;
}

/** `trunnion check [--club <slug>] [--rebuild]` */
export function checkCommand(): Command {
  return new Command("check")
    .description(
      "prove that the journal's chain holds and that current values are what the records amount to",
    )
    .option("--club <slug>", "one club; all when left out")
    .option("--rebuild", "work the current values out again first")
    .option("--json", "report as JSON")
    .action(run);
}
