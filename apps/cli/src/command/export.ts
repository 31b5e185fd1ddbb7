import { pipeline } from "node:stream/promises";
import {
  type ListFormat,
  listFile,
  listFormats,
  listNames,
  openOperator,
  prepareArchive,
  verifyJournal,
} from "@trunnion/service";
import { Command, Option } from "commander";
import { type Installation, withInstallation } from "../installation";
import { requireNew, writeNew } from "../new-file";
import { printJson, printLines } from "../output";
import { counted } from "./count";

interface Options {
  readonly club: string;
  readonly out: string;
  readonly withPersonalData?: boolean;
  readonly list?: string;
  readonly format: ListFormat;
  readonly search?: string;
  readonly series?: string;
  readonly filter?: string;
  readonly car?: string;
  readonly event?: string;
  readonly force?: boolean;
  readonly json?: boolean;
}

const help = `
Without --list: the whole club as one ZIP file, for a successor or for another installation. It holds every record as
JSON Lines with a schema for each kind, the photographs and documents, a README and a manifest of hashes; it can be read
without this program, and read back with "trunnion restore". Names and addresses of people are left out unless asked for.

With --list: cars (--search, --series, --filter), state (--car), journal (--car), entries (--event).
csv has a mark at its start by which spreadsheets know UTF-8; csv-plain has none.`;

const personal =
  "It holds names and addresses of people: give it only to those who may have them, and delete it when it has served.";

async function exportArchive({ database, evidence }: Installation, options: Options): Promise<void> {
  const { club, out, force = false, withPersonalData: personalData = false } = options;
  const { ctx, breaks } = await openOperator(database, club, async (opened) => ({
    ctx: opened,
    breaks: await verifyJournal(opened),
  }));
  const prepared = await prepareArchive(ctx, { database, evidence, personalData });
  const { members, missingEvidence, journal } = prepared.manifest;
  const file = { path: out, force, secret: personalData };
  const bytes = await writeNew(file, prepared.pour).finally(prepared.discard);
  const rows = members.reduce((sum, { rows = 0 }) => sum + rows, 0);
  if (breaks.length > 0) {
    process.stderr.write(
      `trunnion: the journal's chain does not hold at ${breaks.map(({ sequence }) => sequence).join(", ")}: ` +
        "the archive has it as it is, and cannot be read back. See trunnion check.\n",
    );
  }
  if (options.json) {
    const told = { club, personalData, rows, files: members.length + 1, missingEvidence, journal, breaks };
    return printJson({ ok: true, file: out, bytes, ...told });
  }
  printLines(
    `${out}: ${counted(rows, "record")} and ${counted(members.length + 1, "file")} of ${club}, ${bytes} bytes.`,
    ...missingEvidence.map((sha256) => `evidence whose file is not there: ${sha256}`),
    ...(personalData
      ? [personal]
      : ["Names and addresses of people were left out; --with-personal-data puts them in."]),
  );
}

async function exportList({ database }: Installation, options: Options & { list: string }): Promise<void> {
  const { club, out, list, format, force = false, withPersonalData: personalData = false } = options;
  const { search, series, filter, car, event } = options;
  const of = Object.fromEntries(
    Object.entries({ search, series, filter, car, event }).filter(([, said]) => said !== undefined),
  );
  const ctx = await openOperator(database, club, async (opened) => opened);
  const made = await listFile(database, ctx, { list, format, personalData, ...of });
  const file = { path: out, force, secret: personalData };
  const bytes = await writeNew(file, (output) => pipeline(made.open(), output)).finally(made.discard);
  if (options.json) printJson({ ok: true, file: out, bytes, club, list, format, personalData });
  else
    printLines(`${out}: the list "${list}" of ${club}, ${bytes} bytes.`, ...(personalData ? [personal] : []));
}

async function run(options: Options): Promise<void> {
  const { out, list, force = false } = options;
  await requireNew({ path: out, force });
  await withInstallation((installation) =>
    list === undefined
      ? exportArchive(installation, options)
      : exportList(installation, { ...options, list }),
  );
}

/** `trunnion export --club <slug> --out <file>` */
export function exportCommand(): Command {
  return new Command("export")
    .description("write the whole club to one archive, or one of its lists to a table")
    .requiredOption("--club <slug>", "the club's short name")
    .requiredOption("--out <file>", "file to write")
    .option("--with-personal-data", "names and addresses of keepers, drivers and members too")
    .addOption(new Option("--list <name>", "one list instead of the whole club").choices([...listNames]))
    .addOption(new Option("--format <format>", "of a list").choices([...listFormats]).default("csv"))
    .option("--search <text>", "of the list of cars: part of a number, mark or colour")
    .option("--series <slug>", "of the list of cars: one series")
    .option("--filter <name>", "of the list of cars: those a filter shared in the club finds")
    .option("--car <reference>", "the car a list is of, e.g. S2-0211")
    .option("--event <slug>", "the event a list is of")
    .option("--force", "replace a file that is there already")
    .option("--json", "report as JSON")
    .addHelpText("after", help)
    .action(run);
}
