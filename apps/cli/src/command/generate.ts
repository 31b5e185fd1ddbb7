import { refused } from "@trunnion/register";
import { Database } from "@trunnion/service";
import { Command } from "commander";
import pg from "pg";
import { z } from "zod";
import { type Generated, generateClub } from "../generate/club";
import { printJson, printLines } from "../output";
import { openDatabase } from "../start/database";
import { counted } from "./count";

/** The demo's club: what is common there is common in what is made. Never a club of real cars and people. */
const PATTERN = "sandvaer";
/** Seven digits number a made club's cars. */
const MOST_CARS = 1_000_000;
const MOST_CLUBS = 1_000;
const LARGEST_SEED = 1_000_000_000;

const whole = (least: number, most: number) =>
  z
    .string()
    .regex(/^\d{1,10}$/, `expected a whole number from ${least} to ${most}`)
    .transform(Number)
    .pipe(z.number().min(least).max(most));

const optionSchema = z.object({
  clubs: whole(1, MOST_CLUBS),
  cars: whole(1, MOST_CARS),
  seed: whole(0, LARGEST_SEED),
});

/** How many clubs of how many cars, and the seed of the first; each next club has the next seed. */
export type GenerateOptions = z.output<typeof optionSchema>;

/** What was made of one club. */
export interface MadeClub extends Generated {
  readonly club: string;
  readonly seed: number;
  readonly seconds: number;
}

const help = `
A club is called after its seed, generated-<seed>; with --clubs 3 --seed 7 come generated-7, generated-8, generated-9. The
same seed and number of cars give the same club. Series, specifications and what is common are the demo's (club
"${PATTERN}", which must be there); numbers and keepers are invented. Nothing is written where one of the clubs exists.
Afterwards: trunnion check --club generated-<seed>    proves the journal and the current values
            trunnion invite <e-mail> --club generated-<seed> --roles registrar    lets somebody in`;

/**
 * Reads what was asked, so that a number out of range is told by its option.
 *
 * @throws ZodError
 */
export const readGenerateOptions = (given: unknown): GenerateOptions => optionSchema.parse(given);

/**
 * Makes the clubs one after the other, each in a transaction of its own.
 *
 * @param owner a connection of the role that owns the tables
 * @param database the same database by the service's role
 * @throws Refusal CLUB_EXISTS before anything is written; CLUB_NOT_FOUND where the demo is not there
 */
export async function generateClubs(
  owner: pg.Client,
  database: Database,
  { clubs, cars, seed: first }: GenerateOptions,
  from = PATTERN,
): Promise<readonly MadeClub[]> {
  const seeds = Array.from({ length: clubs }, (_, place) => first + place);
  const slugOf = (seed: number) => `generated-${seed}`;
  const { rows } = await owner.query<{ slug: string }>(
    "SELECT slug FROM club WHERE slug = ANY($1) ORDER BY slug LIMIT 1",
    [seeds.map(slugOf)],
  );
  const known = rows[0];
  if (known) throw refused("CLUB_EXISTS", { club: known.slug });
  const made: MadeClub[] = [];
  for (const seed of seeds) {
    const slug = slugOf(seed);
    const begun = performance.now();
    const generated = await generateClub(owner, database, {
      from,
      slug,
      name: `Generated ${seed}`,
      cars,
      seed,
    });
    made.push({ club: slug, seed, ...generated, seconds: (performance.now() - begun) / 1000 });
  }
  return made;
}

const line = ({ club, rows, modifications, currentValues, seconds }: MadeClub, cars: number) =>
  `${club}: ${counted(cars, "car")}, ${counted(currentValues, "current value")}, ` +
  `${counted(modifications, "modification")}, ${counted(rows, "row")} in all, in ${seconds.toFixed(1)} s`;

async function run({ json, ...given }: Readonly<Record<string, unknown>>) {
  const options = readGenerateOptions(given);
  const opened = await openDatabase({ log: (text) => process.stderr.write(`${text}\n`) });
  const owner = new pg.Client({ connectionString: opened.ownerUrl });
  const database = new Database(opened.serviceUrl);
  try {
    await owner.connect();
    const clubs = await generateClubs(owner, database, options);
    if (json) printJson({ ok: true, cars: options.cars, clubs });
    else printLines(...clubs.map((club) => line(club, options.cars)));
  } finally {
    await database.close();
    await owner.end();
    await opened.close();
  }
}

/** `trunnion generate --clubs <n> --cars <n> --seed <n>` */
export function generateCommand(): Command {
  return new Command("generate")
    .description("make invented clubs of any size from the demo's, to try and to measure with")
    .requiredOption("--cars <n>", `cars of each club, up to ${MOST_CARS}`)
    .requiredOption("--seed <n>", "whole number that everything follows from")
    .option("--clubs <n>", `how many clubs, up to ${MOST_CLUBS}`, "1")
    .option("--json", "report as JSON")
    .addHelpText("after", help)
    .action(run);
}
