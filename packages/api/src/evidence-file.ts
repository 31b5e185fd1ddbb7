import { readFile, writeFile } from "node:fs/promises";
import type { Readable } from "node:stream";
import { Invalid, refused, thumbnailEdges } from "@trunnion/register";
import {
  type AddedPiece,
  addEvidence,
  addEvidenceInput,
  type ByteRange,
  type ClubStore,
  type Context,
  evidenceFile,
  openMember,
  prepareFile,
  quarterTurnsOf,
  requireMayAdd,
  type Store,
  type StoredFile,
  thumbnail,
  variantOf,
} from "@trunnion/service";
import { ZodError, type z } from "zod";
import type { Request } from "./request";

/** What a request to a file needs besides who asks. */
export interface EvidenceRequest {
  readonly request: Request;
  readonly store: Store;
  readonly club: string;
}

function inClub<T>({ request, club }: EvidenceRequest, work: (ctx: Context) => Promise<T>): Promise<T> {
  if (!request.signedIn) throw refused("NOT_SIGNED_IN", {});
  return openMember(request.database, request.signedIn, club, work);
}

/**
 * Refuses whoever is not in the club, before a byte of a file is read.
 *
 * @throws Refusal NOT_SIGNED_IN, NOT_A_MEMBER
 */
export async function requireMember(asked: EvidenceRequest): Promise<void> {
  await inClub(asked, async () => undefined);
}

/** A file that was received, under a temporary name of ours. */
export interface ReceivedFile {
  /** As the sender calls it. */
  readonly name: string;
  readonly path: string;
}

/** What a form says of files, as text. */
export type EvidenceFields = z.input<typeof addEvidenceInput>;

function readFields(fields: EvidenceFields): z.output<typeof addEvidenceInput> {
  try {
    return addEvidenceInput.parse(fields);
  } catch (error) {
    if (!(error instanceof ZodError)) throw error;
    throw new Invalid(
      error.issues.map(({ path, message }) => ({ field: path.map(String).join("."), message })),
    );
  }
}

/** Makes a file ready, and leaves it so where it was: only one is held in memory at a time. */
async function prepareInPlace(file: ReceivedFile, keepLocation: boolean) {
  const given = await readFile(file.path);
  const { content, preview, ...prepared } = await prepareFile({
    name: file.name,
    content: given,
    keepLocation,
  });
  if (content !== given) await writeFile(file.path, content);
  return { path: file.path, preview, kept: { ...prepared, bytes: content.length } };
}

type Ready = Awaited<ReturnType<typeof prepareInPlace>>;

async function keep(store: ClubStore, { path, preview, kept }: Ready): Promise<StoredFile> {
  await store.put(await readFile(path));
  if (preview) {
    const variant = variantOf({ edge: thumbnailEdges[0], turns: kept.quarterTurns });
    await store.putVariant({ sha256: kept.sha256, variant }, preview);
  }
  return kept;
}

/**
 * Takes received files in as evidence: all of them or, where one is refused, none. Nothing reaches the store before
 * every file was found to be good and the sender to be allowed.
 *
 * @throws Refusal those of `requireMember`, `requireMayAdd`, `prepareFile`, `addEvidence`; Invalid for what was written
 */
export async function takeEvidence(
  asked: EvidenceRequest,
  fields: EvidenceFields,
  files: readonly ReceivedFile[],
): Promise<readonly AddedPiece[]> {
  const input = readFields(fields);
  const clubId = await inClub(asked, async (ctx) => {
    await requireMayAdd(ctx, input);
    return ctx.club.id;
  });
  if (files.length === 0) throw refused("EVIDENCE_NO_FILE", {});
  const ready: Ready[] = [];
  for (const file of files) ready.push(await prepareInPlace(file, input.keepLocation));
  const store = asked.store.club(clubId);
  const kept: StoredFile[] = [];
  for (const one of ready) kept.push(await keep(store, one));
  return inClub(asked, (ctx) => addEvidence(ctx, input, kept));
}

/** A file on its way out. */
export interface OutgoingFile {
  readonly mediaType: string;
  readonly fileName: string;
  readonly sha256: string;
  /** Shown in the page; else handed out as a download. */
  readonly picture: boolean;
  /** Bytes of the whole. */
  readonly bytes: number;
  readonly body: Readable;
}

async function fileFor(asked: EvidenceRequest, evidence: string) {
  return inClub(asked, async (ctx) => ({
    file: await evidenceFile(ctx, evidence),
    store: asked.store.club(ctx.club.id),
  }));
}

/**
 * The file behind a piece of evidence, or a part of it.
 *
 * @throws Refusal those of `requireMember`; EVIDENCE_NOT_FOUND, EVIDENCE_WITHDRAWN, EVIDENCE_FILE_MISSING
 */
export async function originalFile(
  asked: EvidenceRequest,
  evidence: string,
  rangeOf: (bytes: number) => ByteRange | undefined,
): Promise<OutgoingFile> {
  const { file, store } = await fileFor(asked, evidence);
  const body = await store.stream({ sha256: file.sha256 }, rangeOf(file.bytes));
  if (!body) throw refused("EVIDENCE_FILE_MISSING", { evidence: file.fileName });
  return { ...file, body };
}

/** A small picture on its way out: WebP. */
export interface OutgoingPicture {
  readonly bytes: Uint8Array;
}

/**
 * A small picture of a piece, by its name `320-0.webp`: the longer side in pixels, the quarter turns. What a name shows
 * never changes, so it may be kept for ever.
 *
 * @throws Refusal those of `originalFile`; EVIDENCE_NOT_FOUND for a name that is none, or a document
 */
export async function smallPicture(
  asked: EvidenceRequest,
  evidence: string,
  name: string,
): Promise<OutgoingPicture> {
  const { file, store } = await fileFor(asked, evidence);
  const [, size = "", turns = ""] = /^(\d+)-([0-3])\.webp$/.exec(name) ?? [];
  const edge = thumbnailEdges.find((one) => String(one) === size);
  if (edge === undefined || !file.picture) throw refused("EVIDENCE_NOT_FOUND", { evidence: name });
  const bytes = await thumbnail(store, { sha256: file.sha256, edge, turns: quarterTurnsOf(Number(turns)) });
  if (!bytes) throw refused("EVIDENCE_FILE_MISSING", { evidence: file.fileName });
  return { bytes };
}
