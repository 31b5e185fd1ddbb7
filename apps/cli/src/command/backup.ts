import { prepareBackup } from "@trunnion/service";
import { Command } from "commander";
import { withInstallation } from "../installation";
import { requireNew, writeNew } from "../new-file";
import { printJson, printLines } from "../output";
import { counted } from "./count";

interface Options {
  readonly out: string;
  readonly force?: boolean;
  readonly json?: boolean;
}

const caution =
  "Keep it as you keep a key: it holds names and addresses of people and the hashes of their passwords. Only you may read the file.";

async function run({ out, force = false, json }: Options): Promise<void> {
  await requireNew({ path: out, force });
  const told = await withInstallation(async ({ database, evidence }) => {
    const prepared = await prepareBackup({ database, evidence });
    const bytes = await writeNew({ path: out, force, secret: true }, prepared.pour).finally(prepared.discard);
    const { manifest, rows, missingEvidence } = prepared;
    return { bytes, clubs: manifest.clubs.map(({ slug }) => slug), rows, missingEvidence };
  });
  process.stderr.write(`trunnion: ${caution}\n`);
  if (json) return printJson({ ok: true, file: out, ...told });
  const missing = Object.values(told.missingEvidence).flat();
  printLines(
    `${out}: ${counted(told.rows, "record")} of ${counted(told.clubs.length, "club")}, ${told.bytes} bytes.`,
    ...missing.map((sha256) => `evidence whose file is not there: ${sha256}`),
  );
}

/** `trunnion backup --out <file>` */
export function backupCommand(): Command {
  return new Command("backup")
    .description("write everything of this installation to one file: every club, people, hashes of passwords")
    .requiredOption("--out <file>", "ZIP file to write; only its owner may read it")
    .option("--force", "replace a file that is there already")
    .option("--json", "report as JSON")
    .addHelpText("after", '\nIt is read back into an empty database with "trunnion restore".')
    .action(run);
}
