import {
  bookOf,
  type ChainBreak,
  compareCurrentValues,
  listClubs,
  openOperator,
  outdatedClubs,
  rebuildClub,
  type StaleValue,
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

/** What was found wrong with one club's records. */
export interface CheckedClub {
  readonly club: string;
  readonly journal: readonly ChainBreak[];
  readonly currentValues: readonly StaleValue[];
  /** The current values were last worked out by a version of the program that judges differently, or by nobody knows which. */
  readonly outdated: boolean;
}

/** Most places that a person is told one by one. */
const TOLD = 20;

/** One club's records, in lines for people. */
export function checkLines({ club, journal, currentValues, outdated }: CheckedClub): readonly string[] {
  const chain =
    journal.length === 0 ? "holds" : `broken at ${journal.map(({ sequence }) => sequence).join(", ")}`;
  const values =
    currentValues.length === 0 ? "are what the records amount to" : `stale: ${currentValues.length}`;
  const age = outdated ? "; worked out by another version of the program, --rebuild does it again" : "";
  const rest = currentValues.length - TOLD;
  return [
    `${club}: journal ${chain}; current values ${values}${age}`,
    ...currentValues
      .slice(0, TOLD)
      .map(({ car, characteristic, side, problem }) => `  ${car} ${characteristic} ${side}: ${problem}`),
    ...(rest > 0 ? [`  and ${rest} more; --json tells all`] : []),
  ];
}

async function run(options: Options): Promise<void> {
  const results = await withDatabase(async (database) => {
    const slugs = options.club === undefined ? await listClubs(database) : [options.club];
    const found: CheckedClub[] = [];
    for (const slug of slugs) {
      if (options.rebuild) await rebuildClub(database, slug);
      const outdated = (await outdatedClubs(database)).includes(slug);
      found.push(
        await openOperator(database, slug, async (ctx) => ({
          club: slug,
          journal: await verifyJournal(ctx),
          currentValues: await compareCurrentValues(ctx, await bookOf(ctx)),
          outdated,
        })),
      );
    }
    return found;
  });
  const sound = results.every(
    ({ journal, currentValues, outdated }) => journal.length === 0 && currentValues.length === 0 && !outdated,
  );
  if (options.json) printJson({ ok: sound, clubs: results });
  else {
    printLines(...results.flatMap(checkLines));
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
