import { type DBSchema, type IDBPDatabase, openDB } from "idb";

/** A photo of a change that the club has not got yet. */
export interface KeptPhoto {
  /** Made by this device. */
  readonly key: string;
  readonly club: string;
  /** Id of the submission it belongs to. */
  readonly submission: string;
  /** Key of the one characteristic that it shows; empty for all that was changed. */
  readonly about: string;
  readonly name: string;
  readonly content: Blob;
  /** Why the club does not take it; empty while it has not said so. */
  readonly problem: string;
}

interface Schema extends DBSchema {
  readonly photo: { key: string; value: KeptPhoto; indexes: { submission: string; club: string } };
}

let opened: Promise<IDBPDatabase<Schema>> | undefined;

function store(): Promise<IDBPDatabase<Schema>> {
  opened ??= openDB<Schema>("trunnion-change", 1, {
    upgrade(db) {
      const photos = db.createObjectStore("photo", { keyPath: "key" });
      photos.createIndex("submission", "submission");
      photos.createIndex("club", "club");
    },
  });
  return opened;
}

/** Keeps a photo, or what is said of one, until the club has it; asks the browser not to clear it away. */
export async function keepPhoto(photo: KeptPhoto): Promise<void> {
  await (await store()).put("photo", photo);
  // Not waited for: a browser may ask somebody first, who may never answer.
  navigator.storage?.persist?.().catch(() => false);
}

/** Photos of one change that the club has not got; in the order they were taken. */
export async function photosOfChange(submission: string): Promise<readonly KeptPhoto[]> {
  return (await store()).getAllFromIndex("photo", "submission", submission);
}

/** Photos of all changes of a club that it has not got. */
export async function photosOfClub(club: string): Promise<readonly KeptPhoto[]> {
  return (await store()).getAllFromIndex("photo", "club", club);
}

/** One photo as it is kept now; nothing where it is not kept any more. */
export async function keptPhoto(key: string): Promise<KeptPhoto | undefined> {
  return (await store()).get("photo", key);
}

export async function forgetPhoto(key: string): Promise<void> {
  await (await store()).delete("photo", key);
}
