import { createHash } from "node:crypto";
import type { Readable } from "node:stream";
import { buffer } from "node:stream/consumers";
import type { Blobs, ByteRange } from "./blobs";
import { folderBlobs } from "./folder";
import { s3Blobs } from "./s3";
import type { StoreSettings } from "./setting";

/** Names a file: the hash of its content, or what was made of that content (`320-0.webp`) and lies beside it. */
export interface StoreName {
  /** SHA-256 of the content, hex. */
  readonly sha256: string;
  readonly variant?: string;
}

/** Whether a content is what its name says. */
export type StoreState = "whole" | "damaged" | "missing";

/** One club's files. A hash of another club names nothing here. */
export interface ClubStore {
  readonly clubId: string;
  /** Keeps a content under its own hash, and tells that. Keeping it twice is keeping it once. */
  put(content: Uint8Array): Promise<string>;
  /** Keeps what was made of a content beside it. */
  putVariant(name: Required<StoreName>, content: Uint8Array): Promise<void>;
  /** The content as it comes; nothing where it is not there. Whoever asks must read it or destroy it. */
  stream(name: StoreName, range?: ByteRange): Promise<Readable | undefined>;
  /** The content as a whole; nothing where it is not there. */
  bytes(name: StoreName): Promise<Uint8Array | undefined>;
  exists(name: StoreName): Promise<boolean>;
  /** Of no effect where it is not there. What was made of a content has to be deleted by its own name. */
  delete(name: StoreName): Promise<void>;
  /** Reads the content back and works its hash out again. */
  verify(sha256: string): Promise<StoreState>;
}

/** Where photos and documents are kept, outside the database. */
export interface Store {
  /** The place in words, for messages. */
  readonly place: string;
  /** The files of one club, by the club's id. */
  club(clubId: string): ClubStore;
}

const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;
const SHA256 = /^[0-9a-f]{64}$/;
const VARIANT = /^[a-z0-9-]{1,40}\.[a-z0-9]{1,8}$/;

function keyOf(clubId: string, { sha256, variant }: StoreName): string {
  if (!SHA256.test(sha256)) throw new Error(`"${sha256}" is no SHA-256`);
  if (variant !== undefined && !VARIANT.test(variant)) throw new Error(`"${variant}" names no variant`);
  return `${clubId}/${sha256.slice(0, 2)}/${sha256}${variant === undefined ? "" : `.${variant}`}`;
}

const hashOf = (content: Uint8Array) => createHash("sha256").update(content).digest("hex");

function clubStore(blobs: Blobs, clubId: string): ClubStore {
  if (!UUID.test(clubId)) throw new Error(`"${clubId}" is no club's id`);
  const key = (name: StoreName) => keyOf(clubId, name);
  return {
    clubId,
    async put(content) {
      const sha256 = hashOf(content);
      await blobs.put(key({ sha256 }), content);
      return sha256;
    },
    putVariant: (name, content) => blobs.put(key(name), content),
    stream: (name, range) => blobs.read(key(name), range),
    async bytes(name) {
      const stream = await blobs.read(key(name));
      return stream && buffer(stream);
    },
    exists: (name) => blobs.exists(key(name)),
    delete: (name) => blobs.delete(key(name)),
    async verify(sha256) {
      const stream = await blobs.read(key({ sha256 }));
      if (!stream) return "missing";
      const hash = createHash("sha256");
      for await (const part of stream) hash.update(part as Uint8Array);
      return hash.digest("hex") === sha256 ? "whole" : "damaged";
    },
  };
}

/** Opens the place where photos and documents are kept. Nothing is written, and a bucket is not asked, before it is used. */
export async function openStore(settings: StoreSettings): Promise<Store> {
  const blobs = await (settings.kind === "folder" ? folderBlobs(settings.folder) : s3Blobs(settings));
  return { place: blobs.place, club: (clubId) => clubStore(blobs, clubId) };
}
