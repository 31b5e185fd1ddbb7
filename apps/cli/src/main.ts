import { Command } from "commander";
import { backupCommand } from "./command/backup";
import { checkCommand } from "./command/check";
import { exportCommand } from "./command/export";
import { generateCommand } from "./command/generate";
import { importCommand } from "./command/import";
import { inviteCommand } from "./command/invite";
import { restoreCommand } from "./command/restore";
import { sheetsCommand } from "./command/sheets";
import { workCommand } from "./command/work";
import { workerCommand } from "./command/worker";
import { reportFailure } from "./failure";

const program = new Command("trunnion")
  .description("The register, calculator and scrutineering desk, from the command line.")
  .showHelpAfterError("(add --help for what this command takes)")
  .configureOutput({ outputError: (text, write) => write(text) });

for (const command of [
  importCommand,
  sheetsCommand,
  workCommand,
  checkCommand,
  inviteCommand,
  exportCommand,
  backupCommand,
  restoreCommand,
  workerCommand,
  generateCommand,
]) {
  program.addCommand(command());
}

try {
  await program.parseAsync();
} catch (error) {
  process.exitCode = reportFailure(error, program.args.includes("--json") || process.argv.includes("--json"));
}
