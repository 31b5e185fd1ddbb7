"use client";
import { useCallback, useState } from "react";

/** Parts that are ticked, over searches and assemblies: what is shown changes, what was chosen does not. */
export interface Ticked {
  readonly keys: readonly string[];
  /** Counts up when all were unticked at once: boxes are then drawn anew. */
  readonly cleared: number;
  /** Stays the same function, whatever is ticked. */
  readonly tick: (keys: readonly string[], on: boolean) => void;
  readonly clear: () => void;
}

/** Begins with what the address carries, where a page without a script asked for another assembly. */
export function useTicked(first: string): Ticked {
  const [{ keys, cleared }, set] = useState({
    keys: first.split(",").filter((key) => key !== ""),
    cleared: 0,
  });
  const tick = useCallback((named: readonly string[], on: boolean) => {
    set((now) => {
      const others = now.keys.filter((key) => !named.includes(key));
      return { ...now, keys: on ? [...others, ...named] : others };
    });
  }, []);
  const clear = useCallback(() => set((now) => ({ keys: [], cleared: now.cleared + 1 })), []);
  return { keys, cleared, tick, clear };
}
