"use client";
import { useSyncExternalStore } from "react";

/** Hand the phone is held in: the results stand with the commonest one under its thumb. */
export type Hand = "right" | "left";

const KEY = "trunnion-hand";
const changed = "trunnion-hand-changed";

function read(): Hand {
  try {
    return localStorage.getItem(KEY) === "left" ? "left" : "right";
  } catch {
    // A browser that keeps nothing: as most people hold it.
    return "right";
  }
}

/** Keeps the hand on this device, and tells every part that shows it. */
export function chooseHand(hand: Hand): void {
  try {
    localStorage.setItem(KEY, hand);
  } catch {
    return;
  }
  dispatchEvent(new Event(changed));
}

function listen(tell: () => void): () => void {
  addEventListener(changed, tell);
  addEventListener("storage", tell);
  return () => {
    removeEventListener(changed, tell);
    removeEventListener("storage", tell);
  };
}

export const useHand = (): Hand => useSyncExternalStore(listen, read, () => "right");
