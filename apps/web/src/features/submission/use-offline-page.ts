"use client";
import { useEffect } from "react";
import { dropPageOffline, keepPageOffline } from "../../lib/keep-offline";
import type { SaveState } from "./autosave";

/** Rest after a save before the page is kept anew, milliseconds: each time is a page asked of the server. */
const REST = 3_000;

/**
 * Has this draft's page open without a signal, as the club has it; what the club has not got yet lies beside it on the
 * device and is put on top. Once something was saved the page kept before is old, and let go of until it is kept anew.
 */
export function useOfflinePage(state: SaveState): void {
  const { at } = state;
  const saved = at === "saved" ? state.time : "";
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each save that was heard of
  useEffect(() => {
    if (at !== "kept" && at !== "saved") return;
    if (at === "saved") dropPageOffline();
    const timer = window.setTimeout(async () => {
      try {
        // The engines are of the page too: they come after it.
        await import("./live");
        await keepPageOffline();
      } catch {
        // Without a signal there is nothing to keep it from.
      }
    }, REST);
    return () => window.clearTimeout(timer);
  }, [at, saved]);
}
