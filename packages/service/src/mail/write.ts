import { mkdir, rename, writeFile } from "node:fs/promises";
import { join } from "node:path";
import type { Database } from "@trunnion/db";
import { listClubs } from "@trunnion/db/gate";
import { createTransport } from "nodemailer";
import { openOperator } from "../gate";
import { type OutgoingNotice, type SendNotice, sendNotices } from "../notice";
import { type MailSettings, mailText } from "./policy";

/** Longest that one message may take to be handed over, milliseconds. */
const PATIENCE = 20_000;

/** Where the web pages show a submission. */
export type LinkOf = (club: string, submissionId: string) => string;

interface Club {
  readonly slug: string;
  readonly name: string;
}

/** Hands messages of one club to the mail server, or writes each into the outbox folder as a file that mail programs open. */
export type Mailer = (club: Club, linkOf: LinkOf) => SendNotice;

const outboxFrom = "trunnion@localhost";

function partsOf(notice: OutgoingNotice, club: Club, linkOf: LinkOf) {
  return {
    to: { name: notice.to.name, address: notice.to.address },
    subject: notice.subject,
    text: mailText(notice, { club: club.name, link: linkOf(club.slug, notice.submissionId) }),
    // The same message sent again after a crash carries the same id, so that mail programs show it once.
    messageId: `<${notice.id}@trunnion>`,
  };
}

/** Makes what sends messages, by SMTP or into a folder. */
export function createMailer(settings: MailSettings): Mailer {
  if (settings.kind === "smtp") {
    const waits = { connectionTimeout: PATIENCE, greetingTimeout: PATIENCE, socketTimeout: PATIENCE };
    const transport = createTransport({ url: settings.url, ...waits });
    return (club, linkOf) => async (notice) => {
      const from = { name: club.name, address: settings.from };
      await transport.sendMail({ from, ...partsOf(notice, club, linkOf) });
      return "e-mail";
    };
  }
  const transport = createTransport({ streamTransport: true, buffer: true, newline: "unix" });
  return (club, linkOf) => async (notice) => {
    const from = { name: club.name, address: outboxFrom };
    const { message } = await transport.sendMail({ from, ...partsOf(notice, club, linkOf) });
    const folder = join(settings.folder, club.slug);
    await mkdir(folder, { recursive: true, mode: 0o700 });
    const path = join(folder, `${notice.id}.eml`);
    // Under another name first: whoever looks into the folder never sees half a message.
    await writeFile(`${path}.part`, message as Buffer, { mode: 0o600 });
    await rename(`${path}.part`, path);
    return "outbox folder";
  };
}

/** Sends what waits in every club, club by club, each in a transaction of its own. Called by the worker only. */
export async function sendAllNotices(
  database: Database,
  { mailer, linkOf }: { readonly mailer: Mailer; readonly linkOf: LinkOf },
): Promise<{ readonly sent: number; readonly failed: number }> {
  const round = { sent: 0, failed: 0 };
  for (const club of await listClubs(database)) {
    const { sent, failed } = await openOperator(database, club.slug, (ctx) =>
      sendNotices(ctx, mailer({ slug: ctx.club.slug, name: ctx.club.name }, linkOf)),
    );
    round.sent += sent;
    round.failed += failed;
  }
  return round;
}

/** Milliseconds between two looks at what waits. */
const EVERY = 5_000;

/**
 * Sends what waits every few seconds until it is stopped; one look at a time. An error that is not a message's own goes
 * to `fault`, and the next look is tried all the same.
 */
export function startMailing(
  look: () => Promise<unknown>,
  fault: (error: unknown) => void,
): { readonly stop: () => Promise<void> } {
  let timer: NodeJS.Timeout | undefined;
  let stopped = false;
  let running: Promise<void> = Promise.resolve();
  const next = () => {
    if (stopped) return;
    timer = setTimeout(() => {
      running = look()
        .then(() => undefined, fault)
        .finally(next);
    }, EVERY);
    timer.unref();
  };
  next();
  return {
    stop: async () => {
      stopped = true;
      clearTimeout(timer);
      await running;
    },
  };
}
