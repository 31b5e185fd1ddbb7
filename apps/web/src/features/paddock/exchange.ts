import { createTRPCClient, httpLink, TRPCClientError } from "@trpc/client";
import type { AppRouter, EventPack } from "@trunnion/api";
import { inspectionLimits } from "@trunnion/register";
import { sendKept } from "../evidence/send-kept";
import type { KeptEvent, KeptRecord } from "./kept";
import { keepPack, keepServerRecords, photoContent, selfAt, settlePhoto, settleRecords } from "./store";

/** Longest wait for an answer, milliseconds: in a paddock a connection may be there and carry nothing. */
const WAIT_MS = 20_000;

const client = createTRPCClient<AppRouter>({ links: [httpLink({ url: "/api/trpc" })] });

/** Why nothing could be exchanged. */
export interface Trouble {
  readonly kind: "noConnection" | "signedOut" | "refused";
  readonly text: string;
}

const noConnection: Trouble = {
  kind: "noConnection",
  text: "No connection. Everything is kept on this device.",
};

interface RefusalShape {
  readonly httpStatus?: number;
  readonly refusal?: { readonly what: string; readonly remedy: string };
}

function troubleOf(error: unknown): Trouble {
  if (!(error instanceof TRPCClientError) || !error.data) return noConnection;
  const { httpStatus, refusal } = error.data as RefusalShape;
  if (httpStatus === 401) return { kind: "signedOut", text: "Sign in again to send. Nothing is lost." };
  const text = refusal
    ? `${refusal.what} ${refusal.remedy}`
    : "The server could not take it. Nothing is lost.";
  return { kind: "refused", text };
}

/** Where an event is. */
export interface EventPlace {
  readonly club: string;
  readonly event: string;
  readonly place: string;
}

/** Fetches the event anew; what this device found stays. */
export async function fetchPack({ club, event, place }: EventPlace): Promise<Trouble | undefined> {
  try {
    const signal = AbortSignal.timeout(WAIT_MS);
    const pack: EventPack = await client.inspection.pack.query({ club, event }, { signal });
    await keepPack(place, pack);
    return undefined;
  } catch (error) {
    return troubleOf(error);
  }
}

interface Batch {
  readonly records: readonly KeptRecord[];
  /** Records this device has made in all, and what it holds beyond this batch. */
  readonly made: number;
  readonly held: number;
}

async function exchangeBatch({ club, event, place }: EventPlace, batch: Batch): Promise<void> {
  const { records, made, held } = batch;
  const { told, findings, decisions } = await client.inspection.exchange.mutate(
    {
      club,
      event,
      deviceNow: new Date().toISOString(),
      device: { id: await selfAt(place), made, held },
      findings: records.flatMap((kept) => (kept.kind === "finding" ? [kept.record] : [])),
      decisions: records.flatMap((kept) => (kept.kind === "decision" ? [kept.record] : [])),
    },
    { signal: AbortSignal.timeout(WAIT_MS) },
  );
  await settleRecords(told);
  await keepServerRecords(place, { findings, decisions });
}

async function sendPhoto(club: string, photo: KeptEvent["photos"][number]): Promise<void> {
  const content = await photoContent(photo.key);
  if (!content) return;
  const file = { club, for: `finding:${photo.finding}`, about: "", name: photo.name, content };
  const sent = await sendKept(file);
  if (sent.at === "sent") return settlePhoto(photo.key, "");
  if (sent.at !== "refused") throw new Error(`a photo was not sent: ${sent.at}`);
  await settlePhoto(photo.key, sent.text.what);
}

/**
 * Sends what the server does not have, and fetches what the others found. Sent twice it is one; cut off in the middle,
 * the rest goes with the next.
 */
export async function exchange(where: EventPlace, kept: KeptEvent): Promise<Trouble | undefined> {
  try {
    const unsent = kept.records.filter(({ sent, problem }) => !sent && problem === "");
    const { batch } = inspectionLimits;
    // Once at least: what the others found is fetched even where there is nothing to send.
    const refused = kept.records.filter(({ problem }) => problem !== "").length;
    const made = kept.records.length;
    for (let from = 0; from === 0 || from < unsent.length; from += batch) {
      const records = unsent.slice(from, from + batch);
      const left = unsent.length - from - records.length;
      await exchangeBatch(where, { records, made, held: left + refused + kept.photos.length });
    }
    const photos = kept.photos.filter(({ problem }) => problem === "");
    for (const photo of photos) await sendPhoto(where.club, photo);
    // So that the server does not miss what it has.
    if (photos.length > 0)
      await exchangeBatch(where, { records: [], made, held: refused + kept.photos.length - photos.length });
    return undefined;
  } catch (error) {
    return troubleOf(error);
  }
}
