import { join } from "node:path";
import { createMailer, type Database, mailSettings, sendAllNotices, startMailing } from "@trunnion/service";
import { Command } from "commander";
import { withDatabase } from "../database";
import { printJson, printLines } from "../output";
import { mailSurroundings } from "../start/env";
import { dataFolder } from "../start/place";

interface Options {
  readonly origin: string;
  readonly once?: boolean;
  readonly json?: boolean;
}

/** Sends what waits now. */
type Look = () => Promise<{ readonly sent: number; readonly failed: number }>;

function lookOf(database: Database, { origin }: Options): Look {
  const mailer = createMailer(mailSettings({ ...mailSurroundings, folder: join(dataFolder(), "outbox") }));
  const base = new URL(origin).origin;
  const linkOf = (club: string, id: string) =>
    `${base}/club/${encodeURIComponent(club)}/submission/${encodeURIComponent(id)}`;
  return () => sendAllNotices(database, { mailer, linkOf });
}

/** Until somebody ends it: Ctrl-C, or a service manager. */
function asked(): Promise<void> {
  return new Promise((resolve) => {
    const hold = setInterval(() => undefined, 60_000);
    const end = () => {
      clearInterval(hold);
      resolve();
    };
    process.once("SIGINT", end);
    process.once("SIGTERM", end);
  });
}

async function workUntilAsked(look: Look, json: boolean): Promise<void> {
  const { stop } = startMailing(
    async () => {
      const round = await look();
      if (round.sent + round.failed === 0) return;
      if (json) process.stdout.write(`${JSON.stringify(round)}\n`);
      else printLines(`${round.sent} sent, ${round.failed} to be tried again`);
    },
    (error) => process.stderr.write(`trunnion: ${String((error as Error)?.stack ?? error)}\n`),
  );
  if (!json) printLines("Sending what waits, every few seconds. Ctrl-C ends it.");
  await asked();
  await stop();
}

async function run(options: Options): Promise<void> {
  const json = options.json === true;
  await withDatabase(async (database) => {
    const look = lookOf(database, options);
    if (!options.once) return workUntilAsked(look, json);
    const round = await look();
    if (json) printJson({ ok: round.failed === 0, ...round });
    else printLines(`${round.sent} sent, ${round.failed} to be tried again`);
    if (round.failed > 0) process.exitCode = 1;
  });
}

/** `trunnion worker [--once]` */
export function workerCommand(): Command {
  return new Command("worker")
    .description(
      "send the messages that wait, by mail or into the outbox folder; the running service does so itself",
    )
    .option("--once", "send what waits now, and end")
    .option(
      "--origin <address>",
      "address of the service, for the links in messages",
      "http://127.0.0.1:3000",
    )
    .option("--json", "report as JSON: one object, or a line a round")
    .action(run);
}
