import {
  bookOf,
  type ChainBreak,
  type Context,
  compareCurrentValues,
  compareTallies,
  type Database,
  forgetTallies,
  listClubs,
  openOperator,
  outdatedClubs,
  rebuildClub,
  refreshWholeSearchIndex,
  type StaleValue,
  verifyJournal,
  type WrongTally,
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
  /** Counts that are kept and are not what counting gives. */
  readonly tallies: readonly WrongTally[];
  /** The current values were last worked out by a version of the program that judges differently, or by nobody knows which. */
  readonly outdated: boolean;
}

/** Most places that a person is told one by one. */
const TOLD = 20;

/** One club's records, in lines for people. */
export function checkLines({
  club,
  journal,
  currentValues,
  tallies,
  outdated,
}: CheckedClub): readonly string[] {
  const chain =
    journal.length === 0 ? "holds" : `broken at ${journal.map(({ sequence }) => sequence).join(", ")}`;
  const values =
    currentValues.length === 0 ? "are what the records amount to" : `stale: ${currentValues.length}`;
  const age = outdated ? "; worked out by another version of the program, --rebuild does it again" : "";
  const counts = tallies.length === 0 ? "" : `; kept counts wrong: ${tallies.length}, --rebuild counts anew`;
  const rest = currentValues.length - TOLD;
  return [
    `${club}: journal ${chain}; current values ${values}${age}${counts}`,
    ...currentValues
      .slice(0, TOLD)
      .map(({ car, characteristic, side, problem }) => `  ${car} ${characteristic} ${side}: ${problem}`),
    ...(rest > 0 ? [`  and ${rest} more; --json tells all`] : []),
  ];
}

async function checked(database: Database, slug: string): Promise<CheckedClub> {
  const open = <T>(work: (ctx: Context) => Promise<T>) => openOperator(database, slug, work);
  const book = await open(bookOf);
  await refreshWholeSearchIndex(open, book);
  const outdated = (await outdatedClubs(database)).includes(slug);
  const tallies = await compareTallies(open, book);
  return open(async (ctx) => ({
    club: slug,
    journal: await verifyJournal(ctx),
    currentValues: await compareCurrentValues(ctx, book),
    tallies,
    outdated,
  }));
}

async function rebuild(database: Database, slug: string): Promise<void> {
  await openOperator(database, slug, forgetTallies);
  await rebuildClub(database, slug);
}

async function run(options: Options): Promise<void> {
  const results = await withDatabase(async (database) => {
    const slugs = options.club === undefined ? await listClubs(database) : [options.club];
    const found: CheckedClub[] = [];
    for (const slug of slugs) {
      if (options.rebuild) await rebuild(database, slug);
      found.push(await checked(database, slug));
    }
    return found;
  });
  const sound = results.every(
    ({ journal, currentValues, tallies, outdated }) =>
      journal.length + currentValues.length + tallies.length === 0 && !outdated,
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
      "prove that the journal's chain holds and that current values and kept counts are what the records amount to",
    )
    .option("--club <slug>", "one club; all when left out")
    .option("--rebuild", "work the current values out and count again first")
    .option("--json", "report as JSON")
    .action(run);
}
