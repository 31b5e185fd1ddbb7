import {
  createMailer,
  type Database,
  logFault,
  mailSettings,
  sendAllNotices,
  startMailing,
} from "@trunnion/api";
import { mailSurroundings, serviceSettings } from "../env";
import { submissionPath } from "./path";

// Kept on the global: a development server evaluates modules again, and a second worker would be one too many.
const kept = globalThis as typeof globalThis & { trunnionMailing?: ReturnType<typeof startMailing> };

/** Begins, once in a process, to send what members are told; messages wait in the database, so none is lost when this process ends. */
export function mailWhatWaits(database: Database): void {
  if (kept.trunnionMailing) return;
  const mailer = createMailer(mailSettings(mailSurroundings()));
  const { baseUrl } = serviceSettings();
  const linkOf = (club: string, id: string) => `${baseUrl}${submissionPath(club, id)}`;
  kept.trunnionMailing = startMailing(
    () => sendAllNotices(database, { mailer, linkOf }),
    (error) => logFault(error, "mail"),
  );
}
