import type { ThumbnailEdge } from "@trunnion/register";
import type { ClubStore } from "../store";
import { makeThumbnail } from "./decoder";
import type { QuarterTurns } from "./turn";

export interface ThumbnailName {
  readonly sha256: string;
  readonly edge: ThumbnailEdge;
  readonly turns: QuarterTurns;
  /** WebP when left out. */
  readonly format?: "webp" | "jpeg";
}

/** What a thumbnail is called beside its original. */
export function variantOf({ edge, turns, format = "webp" }: Omit<ThumbnailName, "sha256">): string {
  return `${edge}-${turns}.${format}`;
}

/** Those being made, so that a page that shows one twice has it made once. */
const making = new Map<string, Promise<Uint8Array | undefined>>();

async function make(store: ClubStore, name: ThumbnailName): Promise<Uint8Array | undefined> {
  const original = await store.bytes({ sha256: name.sha256 });
  if (!original) return undefined;
  const made = await makeThumbnail(original, name);
  await store.putVariant({ sha256: name.sha256, variant: variantOf(name) }, made);
  return made;
}

/**
 * A picture made small, upright, without anything said in it: from the store, or made now and kept there beside its
 * original. Nothing where the original is not there.
 *
 * @throws Broken where the original is damaged
 */
export async function thumbnail(store: ClubStore, name: ThumbnailName): Promise<Uint8Array | undefined> {
  const { sha256 } = name;
  const variant = variantOf(name);
  const kept = await store.bytes({ sha256, variant });
  if (kept) return kept;
  // One club's may not stand in for another's, though the content be the same.
  const key = `${store.clubId}/${sha256}.${variant}`;
  const begun = making.get(key) ?? make(store, name).finally(() => making.delete(key));
  making.set(key, begun);
  return begun;
}
