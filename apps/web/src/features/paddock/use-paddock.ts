"use client";
import type { DecisionOutcome, FindingReading, FindingResult } from "@trunnion/register";
import { useCallback, useEffect, useRef, useState } from "react";
import { type EventPlace, exchange, fetchPack, type Trouble } from "./exchange";
import type { Draft, KeptEvent } from "./kept";
import { keepDraft, keepGauge, keepPhoto, keepRecord, readEvent } from "./store";

/** Shortest time between two exchanges begun by themselves, and the wait after something was found, milliseconds. */
const EVERY_MS = 30_000;
const SOON_MS = 1_500;

/** What a scrutineer says of a check. */
export interface SaidOfCheck {
  readonly entryId: string;
  readonly check: string;
  readonly result: FindingResult;
  readonly note: string;
  readonly readings: readonly FindingReading[];
  readonly replaces: readonly string[];
}

/** What a scrutineer decides on an entry. */
export interface SaidOfEntry {
  readonly entryId: string;
  readonly outcome: DecisionOutcome;
  readonly note: string;
  readonly signedBy: string;
  readonly signature: string;
  readonly replaces: readonly string[];
}

const nothing: KeptEvent = { records: [], photos: [], drafts: new Map(), gauges: new Map() };

/** An event on this device: what is kept of it, what can be added, and how it stands with the server. */
export function usePaddock(where: EventPlace) {
  const { place } = where;
  const [kept, setKept] = useState<KeptEvent>(nothing);
  const [opened, setOpened] = useState(false);
  const [trouble, setTrouble] = useState<Trouble>();
  const [fault, setFault] = useState("");
  const [busy, setBusy] = useState(false);
  const running = useRef(false);
  const soon = useRef<ReturnType<typeof setTimeout>>(undefined);

  const reread = useCallback(async () => setKept(await readEvent(place)), [place]);

  const meet = useCallback(
    async (anew: boolean) => {
      if (running.current) return;
      running.current = true;
      setBusy(true);
      try {
        const before = await readEvent(place);
        const failed = before.pack ? await exchange(where, before) : undefined;
        setTrouble(failed ?? (anew || !before.pack ? await fetchPack(where) : undefined));
        await reread();
      } finally {
        running.current = false;
        setBusy(false);
      }
    },
    [where, place, reread],
  );

  const meetSoon = useCallback(() => {
    clearTimeout(soon.current);
    soon.current = setTimeout(() => void meet(false), SOON_MS);
  }, [meet]);

  useEffect(() => {
    const now = () => void meet(false);
    const seen = () => {
      if (document.visibilityState === "visible") now();
    };
    void reread()
      .then(() => {
        setOpened(true);
        return meet(true);
      })
      .catch((error: unknown) => setFault(String(error)));
    // Asked for so that a full phone does not throw away what was found; whether it is granted, the browser decides.
    void navigator.storage?.persist?.();
    const timer = setInterval(seen, EVERY_MS);
    addEventListener("online", now);
    document.addEventListener("visibilitychange", seen);
    return () => {
      clearInterval(timer);
      clearTimeout(soon.current);
      removeEventListener("online", now);
      document.removeEventListener("visibilitychange", seen);
    };
  }, [meet, reread]);

  const inspector = kept.pack?.inspector ?? "";

  async function keep(work: () => Promise<void>): Promise<void> {
    try {
      await work();
      await reread();
      setFault("");
      meetSoon();
    } catch (error) {
      setFault(`This device could not keep that: ${String(error)}. Write it down on paper.`);
    }
  }

  const made = () => ({ key: crypto.randomUUID(), at: new Date().toISOString(), by: inspector });

  return {
    kept,
    opened,
    trouble,
    fault,
    busy,
    meet,
    sayOfCheck: (said: SaidOfCheck) =>
      keep(async () => {
        const record = { ...made(), ...said };
        await keepRecord({ key: record.key, place, sent: false, problem: "", kind: "finding", record });
        await keepDraft(place, `${said.entryId} ${said.check}`, undefined);
      }),
    sayOfEntry: (said: SaidOfEntry) =>
      keep(() => {
        const record = { ...made(), ...said };
        return keepRecord({ key: record.key, place, sent: false, problem: "", kind: "decision", record });
      }),
    chooseGauge: (dimension: string, instrument: string) =>
      keep(() => keepGauge(place, dimension, instrument)),
    saveDraft: (at: string, draft: Draft) => keepDraft(place, at, draft),
    addPhoto: (finding: string, file: File) =>
      keep(() =>
        keepPhoto({
          key: crypto.randomUUID(),
          place,
          finding,
          name: file.name,
          content: file,
          sent: false,
          problem: "",
        }),
      ),
  };
}

export type Paddock = ReturnType<typeof usePaddock>;
