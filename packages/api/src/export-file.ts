import { PassThrough, type Readable } from "node:stream";
import { readCondition, refused } from "@trunnion/register";
import {
  type Context,
  evidenceFilesOf,
  type ListFormat,
  type ListOrder,
  listFile,
  openMember,
  prepareArchive,
  type Store,
} from "@trunnion/service";
import type { Request } from "./request";

/** A file on its way to whoever asked for it. */
export interface DownloadFile {
  readonly name: string;
  readonly mediaType: string;
  /** Its size, where that is known before it is made. */
  readonly bytes?: number;
  /** Its content; what was put aside for it is deleted when it ends or is given up. */
  readonly content: Readable;
}

/** Who acts and in which club; the transaction that found it out has ended, so that nothing waits for a slow reader. */
async function memberOf(request: Request, club: string): Promise<Context> {
  if (!request.signedIn) throw refused("NOT_SIGNED_IN", {});
  return openMember(request.database, request.signedIn, club, async (ctx) => ctx);
}

export interface ArchiveFileInput {
  readonly club: string;
  readonly personalData: boolean;
}

/**
 * The club's archive. Every record is put aside before the first byte is sent.
 *
 * @param failed told when the sending breaks off, by the reader or by a fault
 * @throws Refusal NOT_SIGNED_IN, NOT_A_MEMBER, ROLE_NEEDED
 */
export async function archiveFile(
  request: Request,
  {
    store,
    failed,
    ...input
  }: ArchiveFileInput & { readonly store: Store; readonly failed: (error: unknown) => void },
): Promise<DownloadFile> {
  const { club, personalData } = input;
  const ctx = await memberOf(request, club);
  const evidence = evidenceFilesOf(store);
  const prepared = await prepareArchive(ctx, { database: request.database, evidence, personalData });
  const content = new PassThrough();
  void prepared.pour(content).catch(failed).finally(prepared.discard);
  const name = `${ctx.club.slug}-archive${personalData ? "-with-personal-data" : ""}.zip`;
  return { name, mediaType: "application/zip", content };
}

/** A list as an address asks for it. */
export interface ListFileRequest {
  readonly club: string;
  readonly list: string;
  readonly format: ListFormat;
  readonly personalData: boolean;
  readonly search?: string;
  readonly series?: string;
  /** A condition, as `writeCondition` writes it. */
  readonly where?: string;
  readonly filter?: string;
  readonly show?: "unknown";
  /** Of the list as found. */
  readonly order?: ListOrder;
  readonly columns?: readonly string[];
  readonly car?: string;
  readonly event?: string;
}

/**
 * A list as CSV or XLSX.
 *
 * @throws Refusal NOT_SIGNED_IN, NOT_A_MEMBER, LIST_CONDITION, and those of `listFile`
 */
export async function listDownload(request: Request, input: ListFileRequest): Promise<DownloadFile> {
  const { club, where, ...asked } = input;
  const read = where === undefined ? undefined : readCondition(where);
  if (read && !read.ok) throw refused("LIST_CONDITION", { problem: read.problem });
  const ctx = await memberOf(request, club);
  const file = await listFile(request.database, ctx, {
    ...asked,
    ...(read?.ok ? { condition: read.condition } : {}),
  });
  const { name, mediaType, bytes } = file;
  return { name, mediaType, bytes, content: file.open() };
}
