import { invite, inviteInput, openOperator } from "@trunnion/service";
import { Command } from "commander";
import { withDatabase } from "../database";
import { printJson, printLines } from "../output";

interface Options {
  readonly club: string;
  readonly roles: string;
  readonly json?: boolean;
}

async function run(email: string, options: Options): Promise<void> {
  const input = inviteInput.parse({ email, roles: options.roles.split(",") });
  const token = await withDatabase((database) =>
    openOperator(database, options.club, (ctx) => invite(ctx, input)),
  );
  const path = `/invitation/${token}`;
  if (options.json) printJson({ ok: true, path });
  else
    printLines(
      `Send ${input.email} this link, good for 14 days and one use: <address of this service>${path}`,
    );
}

/** `trunnion invite <e-mail> --club <slug> --roles registrar,scrutineer` */
export function inviteCommand(): Command {
  return new Command("invite")
    .description("make a link by which somebody may join a club")
    .argument("<e-mail>", "address of whom to invite")
    .requiredOption("--club <slug>", "the club's short name")
    .requiredOption("--roles <list>", "registrar, owner, scrutineer, fleetManager; comma between")
    .option("--json", "report as JSON")
    .action(run);
}
