"use client";
import { type RefObject, useEffect, useRef } from "react";
import { broughtTo, type Typed, typedOver, writeInto } from "../../components/form/typed";

export interface EarlyInput {
  readonly form: RefObject<HTMLFormElement | null>;
  /** How often the fields were drawn anew. */
  readonly drawn: number;
  /** Whether what an earlier tab left behind is about to be drawn. */
  readonly restoring: RefObject<boolean>;
  /** Takes up what stands in the fields. */
  readonly changed: () => void;
}

/**
 * Takes up what was typed before this script had come over a slow line, on top of what an earlier tab left behind: no
 * key of it was heard, so nothing has kept it yet.
 */
export function useEarly({ form, drawn, restoring, changed }: EarlyInput): void {
  const early = useRef<Typed>(undefined);
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each time the fields are drawn, not for each key
  useEffect(() => {
    if (!form.current) return;
    early.current ??= typedOver(form.current, broughtTo(form.current));
    if (restoring.current) {
      restoring.current = false;
      return;
    }
    const typed = early.current;
    early.current = {};
    if (Object.keys(typed).length === 0) return;
    writeInto(form.current, typed);
    changed();
  }, [drawn]);
}
