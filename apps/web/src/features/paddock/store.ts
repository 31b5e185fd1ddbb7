import type { EventPack, EventRecords } from "@trunnion/api";
import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { Draft, KeptEvent, KeptPhoto, KeptRecord } from "./kept";

interface Schema extends DBSchema {
  readonly pack: { key: string; value: EventPack };
  readonly record: { key: string; value: KeptRecord; indexes: { place: string } };
  readonly photo: { key: string; value: KeptPhoto; indexes: { place: string } };
  /** What this device is to the server at an event. */
  readonly self: { key: string; value: { readonly id: string } };
  /** What is measured with, by event and dimension. */
  readonly gauge: {
    key: [place: string, dimension: string];
    value: { place: string; dimension: string; instrument: string };
    indexes: { place: string };
  };
  readonly draft: {
    key: [place: string, at: string];
    value: { place: string; at: string; draft: Draft };
    indexes: { place: string };
  };
}
type Store = IDBPDatabase<Schema>;

let opened: Promise<Store> | undefined;

function store(): Promise<Store> {
  opened ??= openDB<Schema>("trunnion-paddock", 2, {
    upgrade(db, from) {
      if (from < 2) {
        db.createObjectStore("self");
        db.createObjectStore("gauge", { keyPath: ["place", "dimension"] }).createIndex("place", "place");
      }
      if (from > 0) return;
      db.createObjectStore("pack");
      db.createObjectStore("record", { keyPath: "key" }).createIndex("place", "place");
      db.createObjectStore("photo", { keyPath: "key" }).createIndex("place", "place");
      db.createObjectStore("draft", { keyPath: ["place", "at"] }).createIndex("place", "place");
    },
  });
  return opened;
}

/** Everything this device keeps of an event. */
export async function readEvent(place: string): Promise<KeptEvent> {
  const db = await store();
  const [pack, records, photos, drafts, gauges] = await Promise.all([
    db.get("pack", place),
    db.getAllFromIndex("record", "place", place),
    db.getAllFromIndex("photo", "place", place),
    db.getAllFromIndex("draft", "place", place),
    db.getAllFromIndex("gauge", "place", place),
  ]);
  return {
    ...(pack ? { pack } : {}),
    records,
    photos: photos.map(({ content: _content, ...photo }) => photo),
    drafts: new Map(drafts.map(({ at, draft }) => [at, draft])),
    gauges: new Map(gauges.map(({ dimension, instrument }) => [dimension, instrument])),
  };
}

/** The name this device has for itself at an event, made the first time it is asked for. */
export async function selfAt(place: string): Promise<string> {
  const db = await store();
  const transaction = db.transaction("self", "readwrite");
  const known = await transaction.store.get(place);
  const id = known?.id ?? crypto.randomUUID();
  if (!known) await transaction.store.put({ id }, place);
  await transaction.done;
  return id;
}

export async function keepPack(place: string, pack: EventPack): Promise<void> {
  await (await store()).put("pack", pack, place);
}

/** What the server has of the event now, in place of what it had. */
export async function keepServerRecords(place: string, records: EventRecords): Promise<void> {
  const db = await store();
  const transaction = db.transaction("pack", "readwrite");
  const pack = await transaction.store.get(place);
  if (pack) await transaction.store.put({ ...pack, ...records }, place);
  await transaction.done;
}

export async function keepRecord(record: KeptRecord): Promise<void> {
  await (await store()).put("record", record);
}

/** Says of records what became of them. */
export async function settleRecords(
  told: readonly { readonly key: string; readonly problem: string }[],
): Promise<void> {
  const db = await store();
  const transaction = db.transaction("record", "readwrite");
  for (const { key, problem } of told) {
    const kept = await transaction.store.get(key);
    if (kept) await transaction.store.put({ ...kept, sent: problem === "", problem });
  }
  await transaction.done;
}

export async function keepPhoto(photo: KeptPhoto): Promise<void> {
  await (await store()).put("photo", photo);
}

export async function photoContent(key: string): Promise<Blob | undefined> {
  return (await (await store()).get("photo", key))?.content;
}

/** A photo the server has needs no room here any more; one it does not take stays, with why. */
export async function settlePhoto(key: string, problem: string): Promise<void> {
  const db = await store();
  if (problem === "") return db.delete("photo", key);
  const kept = await db.get("photo", key);
  if (kept) await db.put("photo", { ...kept, problem });
}

/** What figures of a kind are measured with from now on; empty for not said. */
export async function keepGauge(place: string, dimension: string, instrument: string): Promise<void> {
  const db = await store();
  if (instrument === "") await db.delete("gauge", [place, dimension]);
  else await db.put("gauge", { place, dimension, instrument });
}

export async function keepDraft(place: string, at: string, draft: Draft | undefined): Promise<void> {
  const db = await store();
  if (draft) await db.put("draft", { place, at, draft });
  else await db.delete("draft", [place, at]);
}

/** Takes everything of an event off this device. */
export async function forgetEvent(place: string): Promise<void> {
  const db = await store();
  const transaction = db.transaction(["pack", "record", "photo", "draft"], "readwrite");
  await transaction.objectStore("pack").delete(place);
  for (const name of ["record", "photo", "draft"] as const) {
    const index = transaction.objectStore(name).index("place");
    for (let cursor = await index.openCursor(place); cursor; cursor = await cursor.continue()) {
      await cursor.delete();
    }
  }
  await transaction.done;
}
