import type { Readable } from "node:stream";
import { refused } from "@trunnion/register";
import {
  beginImport,
  type Context,
  carryOn,
  discardImport,
  dropFile,
  importProblems,
  inTurn,
  type JobInput,
  keepFile,
  lookAgain,
  lookThrough,
  openMember,
  planImport,
  readKeptFile,
  readTableFile,
  requireMayImport,
  requireRun,
  type SettleColumnsInput,
  settleColumns,
  takeSheet,
  type UndoReport,
  undoImport,
  unneeded,
} from "@trunnion/service";
import { logFault } from "./failure";
import type { Request } from "./request";

/** What everything about imports needs besides who asks. */
export interface ImportRequest {
  readonly request: Request;
  /** The installation's data folder. */
  readonly folder: string;
  readonly club: string;
}

/** Longest undoing, milliseconds: it is one transaction, however many cars there are. */
const UNDO_TIMEOUT = 300_000;
/** Longest chunk of an import, milliseconds: a busy machine is no reason to give up half way. */
const CHUNK_TIMEOUT = 120_000;

function inClub<T>(
  { request, club }: ImportRequest,
  work: (ctx: Context) => Promise<T>,
  timeout?: number,
): Promise<T> {
  const { signedIn, database } = request;
  if (!signedIn) throw refused("NOT_SIGNED_IN", {});
  return openMember(database, signedIn, club, work, timeout);
}

function mayImport(asked: ImportRequest): Promise<string> {
  return inClub(asked, async (ctx) => {
    requireMayImport(ctx);
    return ctx.club.id;
  });
}

async function drop(asked: ImportRequest, clubId: string, hashes: readonly string[]): Promise<void> {
  for (const sha256 of hashes) await dropFile({ folder: asked.folder, clubId, sha256 });
}

/** Work that goes on when the request is answered. */
function afterwards(asked: ImportRequest, run: string, work: (input: JobInput) => Promise<void>): void {
  const input: JobInput = { open: (task) => inClub(asked, task, CHUNK_TIMEOUT), folder: asked.folder, run };
  inTurn(input, work, (error) => logFault(error, `import ${run}`));
}

/**
 * Takes an uploaded file in, as it comes, and reads it so far that its columns can be settled. A file that cannot be read
 * leaves nothing behind.
 *
 * @returns the import's id
 * @throws Refusal NOT_SIGNED_IN, NOT_A_MEMBER, ROLE_NEEDED before a byte is read, and those of `readTableFile`
 */
export async function takeImportFile(
  asked: ImportRequest,
  { file, stream }: { readonly file: string; readonly stream: Readable },
): Promise<string> {
  const clubId = await mayImport(asked);
  const kept = await keepFile({ folder: asked.folder, clubId, stream, file });
  try {
    const bytes = await readKeptFile(kept);
    const table = await readTableFile({ bytes, file });
    const { sha256 } = kept;
    const { run, dropped } = await inClub(asked, (ctx) =>
      planImport(ctx, { file, sha256, bytes: bytes.length, table }),
    );
    await drop(asked, clubId, dropped);
    return run;
  } catch (error) {
    const left = await inClub(asked, (ctx) => unneeded(ctx, [kept.sha256]));
    await drop(asked, clubId, left);
    throw error;
  }
}

/** What part of a file is the table: its sheet, and the line of its headings. */
export interface ImportTableInput {
  readonly run: string;
  /** Left out of what is no workbook. */
  readonly sheet?: string;
  /** Left out, the line that looks like headings. */
  readonly head?: number;
}

/** Takes another sheet of a planned import's workbook, or another line for its headings. */
export async function takeImportSheet(
  asked: ImportRequest,
  { run, ...part }: ImportTableInput,
): Promise<void> {
  const { sha256, fileName, clubId } = await inClub(asked, async (ctx) => {
    requireMayImport(ctx);
    return { ...(await requireRun(ctx, run)), clubId: ctx.club.id };
  });
  const bytes = await readKeptFile({ folder: asked.folder, clubId, sha256, file: fileName });
  const table = await readTableFile({ bytes, file: fileName, ...part });
  await inClub(asked, (ctx) => takeSheet(ctx, run, table));
}

/** Settles the columns, and has the file looked through. */
export async function settleImport(asked: ImportRequest, input: SettleColumnsInput): Promise<void> {
  await inClub(asked, (ctx) => settleColumns(ctx, input));
  afterwards(asked, input.run, lookThrough);
}

/** Has the file looked through again, where that was interrupted or failed. */
export async function lookAtImportAgain(asked: ImportRequest, run: string): Promise<void> {
  await inClub(asked, (ctx) => lookAgain(ctx, run));
  afterwards(asked, run, lookThrough);
}

/** Begins an import, or goes on with one that stopped; the work goes on when this is answered. */
export async function goOnWithImport(asked: ImportRequest, run: string): Promise<void> {
  await inClub(asked, (ctx) => beginImport(ctx, run));
  afterwards(asked, run, carryOn);
}

/** Forgets a planned import and its file. */
export async function forgetImport(asked: ImportRequest, run: string): Promise<void> {
  const clubId = await mayImport(asked);
  await drop(asked, clubId, await inClub(asked, (ctx) => discardImport(ctx, run)));
}

/** Takes an import back as one step. */
export async function takeBackImport(asked: ImportRequest, run: string): Promise<UndoReport> {
  const clubId = await mayImport(asked);
  const report = await inClub(asked, (ctx) => undoImport(ctx, run), UNDO_TIMEOUT);
  const left = await inClub(asked, async (ctx) => {
    const { sha256 } = await requireRun(ctx, run);
    return unneeded(ctx, [sha256]);
  });
  await drop(asked, clubId, left);
  return report;
}

/** A cell for spreadsheets: quoted, and never taken for a formula. */
function csvCell(text: string): string {
  const harmless = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return `"${harmless.replaceAll('"', '""')}"`;
}

/** What was wrong with an import's rows as a CSV table: line, column, found, expected; what to look at below. */
export async function importProblemsCsv(asked: ImportRequest, run: string): Promise<string> {
  const { refusedRows, doubtfulRows } = await inClub(asked, (ctx) => importProblems(ctx, run));
  const rows = [
    ["Line", "Column", "Found", "Expected", "Taken, but look"],
    ...refusedRows.map(({ line, column, found, expected }) => [String(line), column, found, expected, ""]),
    ...doubtfulRows.map(({ line, column = "", found = "", text }) => [String(line), column, found, "", text]),
  ];
  return `\ufeff${rows.map((row) => row.map(csvCell).join(",")).join("\r\n")}\r\n`;
}
