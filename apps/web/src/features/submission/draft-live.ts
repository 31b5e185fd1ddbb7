"use client";
import type { SubmissionPage } from "@trunnion/api";
import type { FieldProblem, SubmissionContent } from "@trunnion/register";
import { useEffect, useRef, useState } from "react";
import type { LiveReading } from "./live";

/** Milliseconds after the last key before consequences are worked out again. */
const REST = 150;
/** Longest wait for the engines when a button was pressed, milliseconds: a line gone dead ends no request it carries. */
const PATIENCE = 4_000;

/** The engines, once they have come to this browser; throws when they do not come. */
async function engines(): Promise<typeof import("./live")> {
  let late: number | undefined;
  const tired = new Promise<never>((_, reject) => {
    late = window.setTimeout(() => reject(new Error("the engines have not come")), PATIENCE);
  });
  try {
    return await Promise.race([import("./live"), tired]);
  } finally {
    window.clearTimeout(late);
  }
}

/** Does something once the browser has nothing better to do; tells how to call it off. */
function whenIdle(work: () => void): () => void {
  if (!("requestIdleCallback" in window)) {
    const timer = setTimeout(work, REST);
    return () => clearTimeout(timer);
  }
  const asked = window.requestIdleCallback(work, { timeout: 2_000 });
  return () => window.cancelIdleCallback(asked);
}

/**
 * What the draft amounts to as it is typed: at first as the server had it, then worked out here. `look` works it out at
 * once, of what is handed to it: a button pressed right after the last key must not go by what was worked out before.
 */
export function useLive(
  content: SubmissionContent,
  { ground, submission, proposed, mixes }: SubmissionPage,
): LiveReading & { readonly look: (now: SubmissionContent) => Promise<LiveReading> } {
  const [live, setLive] = useState<LiveReading>({ problems: submission.problems, proposed, mixes });
  const first = useRef(true);
  useEffect(() => {
    if (first.current) {
      first.current = false;
      return;
    }
    let stale = false;
    const timer = window.setTimeout(async () => {
      try {
        const { readLive } = await import("./live");
        if (!stale) setLive(readLive(content, ground));
      } catch {
        // Without a signal the engines may not have come yet; what was worked out last stays, and typing goes on.
      }
    }, REST);
    return () => {
      stale = true;
      window.clearTimeout(timer);
    };
  }, [content, ground]);
  // After the page itself, and while there is a signal, so that it is there when there is none.
  useEffect(() => whenIdle(() => void import("./live").catch(() => undefined)), []);
  const look = async (now: SubmissionContent) => {
    try {
      const { readLive } = await engines();
      const fresh = readLive(now, ground);
      setLive(fresh);
      return fresh;
    } catch {
      // The engines never came: the service looks at everything once more before it takes anything.
      return { ...live, problems: [] };
    }
  };
  return { ...live, look };
}

/** The text typed into a field by its name; nothing for one that is no field of the draft. */
function typedAt(content: SubmissionContent, field: string): string {
  const found = field
    .split(".")
    .reduce<unknown>((part, name) => (part as Record<string, unknown> | undefined)?.[name], content);
  return typeof found === "string" ? found : "";
}

/** What is wrong by field: while somebody types only with what was typed, once handed in with what lacks as well. */
export function errorsOf(problems: readonly FieldProblem[], content: SubmissionContent, all: boolean) {
  const errors: Record<string, string[]> = {};
  for (const { field, message } of problems) {
    if (!all && typedAt(content, field).trim() === "") continue;
    errors[field] = [...(errors[field] ?? []), message];
  }
  return errors;
}
