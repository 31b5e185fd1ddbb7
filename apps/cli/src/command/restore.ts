import { basename } from "node:path";
import { refused } from "@trunnion/register";
import {
  type BackupReport,
  kindOfFile,
  type RestoreReport,
  restoreArchive,
  restoreBackup,
} from "@trunnion/service";
import { Command } from "commander";
import { type Installation, withInstallation } from "../installation";
import { printJson, printLines } from "../output";
import { counted } from "./count";

interface Options {
  readonly as?: string;
  readonly dryRun?: boolean;
  readonly json?: boolean;
}

const help = `
It tells by itself whether the file is a club's archive (trunnion export) or a backup of an installation (trunnion backup).
An archive is read into a database that does not have the club; a backup into an empty one. All of it goes in, or nothing:
every hash, every line, every reference and the journal's chain are proved first.

Members of an archive come back without passwords: their names stay with what they did. Make an invitation for each who
is to sign in: trunnion invite <e-mail> --club <slug> --roles <list>.`;

const rowsOf = ({ rows }: RestoreReport) => Object.values(rows).reduce((sum, count) => sum + count, 0);

/** What was read back of one club, in lines for people. */
export function restoreLines(report: RestoreReport): readonly string[] {
  const { club, rows, evidenceFiles, missingEvidence, people, personalData, dryRun } = report;
  const files =
    missingEvidence.length === 0 ? "" : `, ${counted(missingEvidence.length, "file")} of it missing`;
  return [
    `${club.name} ${dryRun ? "can be read back" : "was read back"} as "${club.slug}": ${counted(rowsOf(report), "record")}, ` +
      `${counted(rows.car ?? 0, "car")}, ${counted(evidenceFiles, "piece")} of evidence${files}.`,
    ...(people.made + people.known === 0
      ? []
      : [
          `${counted(people.made, "member")} without a password, ${people.known} with an account here already.`,
        ]),
    ...(personalData ? [] : ["Names and addresses of people are not in the archive."]),
  ];
}

function backupLines({ people, credentials, clubs, dryRun }: BackupReport): readonly string[] {
  return [
    `${counted(people, "person", "people")} and ${counted(credentials, "password")} ${dryRun ? "can be" : "were"} read back.`,
    ...clubs.flatMap((club) => restoreLines({ ...club, people: { made: 0, known: 0 } })),
  ];
}

async function restore(path: string, { as, dryRun = false }: Options, installation: Installation) {
  const input = { path, ...installation, dryRun };
  if ((await kindOfFile(path)) === "backup") {
    const found = "a backup of an installation";
    const wanted = "one club's archive where --as is given";
    if (as !== undefined) throw refused("ARCHIVE_FORMAT", { file: basename(path), found, wanted });
    const report = await restoreBackup(input);
    return { lines: backupLines(report), told: { kind: "backup", ...report } };
  }
  const report = await restoreArchive({ ...input, ...(as === undefined ? {} : { as }) });
  return { lines: restoreLines(report), told: { kind: "archive", ...report } };
}

async function run(path: string, options: Options): Promise<void> {
  const { lines, told } = await withInstallation((installation) => restore(path, options, installation));
  if (options.json) printJson({ ok: true, ...told });
  else printLines(...lines);
}

/** `trunnion restore <file> [--as <slug>] [--dry-run]` */
export function restoreCommand(): Command {
  return new Command("restore")
    .description("read a club's archive, or a backup of an installation, back into this database")
    .argument("<file>", "ZIP file that export or backup wrote")
    .option("--as <slug>", "another short name for the club of an archive")
    .option("--dry-run", "read and prove everything, keep nothing")
    .option("--json", "report as JSON")
    .addHelpText("after", help)
    .action(run);
}
