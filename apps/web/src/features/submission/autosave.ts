"use client";
import type { FieldDifference, RefusalText, SubmissionContent } from "@trunnion/register";
import { useEffect, useRef, useState } from "react";

/** How a draft stands between this browser and the club. */
export type SaveState =
  | { readonly at: "kept" }
  | { readonly at: "saving" }
  | { readonly at: "saved"; readonly time: string }
  | { readonly at: "offline" }
  | { readonly at: "conflict"; readonly version: number; readonly differences: readonly FieldDifference[] }
  | { readonly at: "refused"; readonly text: RefusalText };

/** What an answer of the service comes down to. */
export type Answer<T> =
  | { readonly ok: true; readonly data: T }
  | {
      readonly ok: false;
      readonly refusal?: RefusalText & {
        readonly code: string;
        readonly details: Readonly<Record<string, unknown>>;
      };
      readonly fieldErrors?: Readonly<Record<string, readonly string[]>>;
      readonly message: string;
    };

/** Milliseconds after the last key before a draft is sent, and before one that could not be sent is tried again. */
const REST = 700;
const AGAIN = 4_000;
/** Longest that one try may take: a paddock's network holds on to requests it will never answer. */
const PATIENCE = 20_000;

/** Calls a procedure; throws where there is no signal. */
export async function callApi<T>(name: string, input: object): Promise<Answer<T>> {
  const response = await fetch(`/api/trpc/${name}`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify(input),
    signal: AbortSignal.timeout(PATIENCE),
  });
  const answer = (await response.json()) as {
    result?: { data: T };
    error?: { message: string; data?: Record<string, unknown> };
  };
  if (answer.result) return { ok: true, data: answer.result.data };
  const { refusal, fieldErrors } = (answer.error?.data ?? {}) as Pick<
    Extract<Answer<T>, { ok: false }>,
    "refusal" | "fieldErrors"
  >;
  return {
    ok: false,
    message: answer.error?.message ?? "",
    ...(refusal === undefined ? {} : { refusal }),
    ...(fieldErrors === undefined ? {} : { fieldErrors }),
  };
}

/** What a browser keeps of a draft that the club has not got yet. */
interface Kept {
  readonly content: SubmissionContent;
  readonly version: number;
  readonly editor: string;
  readonly count: number;
}

const placeOf = (id: string) => `trunnion.draft.${id}`;

function readKept(id: string): Kept | undefined {
  try {
    const text = window.localStorage.getItem(placeOf(id));
    return text === null ? undefined : (JSON.parse(text) as Kept);
  } catch {
    return undefined;
  }
}

function writeKept(id: string, kept: Kept | undefined): void {
  try {
    if (kept === undefined) window.localStorage.removeItem(placeOf(id));
    else window.localStorage.setItem(placeOf(id), JSON.stringify(kept));
  } catch {
    // A browser that keeps nothing still sends: only what is typed without a signal is at risk, as it says below.
  }
}

export interface AutosaveInput {
  readonly club: string;
  readonly id: string;
  readonly version: number;
  /** What the club has. */
  readonly content: SubmissionContent;
  /** Shows what this browser had kept and the club has not. */
  readonly restore: (content: SubmissionContent) => void;
}

/** Sends a draft to the club and keeps what it has not got yet in this browser. */
export class DraftKeeper {
  #version: number;
  #editor = crypto.randomUUID();
  #count = 0;
  #content: SubmissionContent;
  #sent: string;
  #running: Promise<void> | undefined;
  #timer: number | undefined;
  #state: SaveState = { at: "kept" };

  constructor(
    private readonly input: AutosaveInput,
    private readonly tell: (state: SaveState) => void,
  ) {
    this.#version = input.version;
    this.#content = input.content;
    this.#sent = JSON.stringify(input.content);
  }

  /** Takes up what an earlier tab left behind, and sends again whenever there is a signal. Tells how to stop. */
  start(): () => void {
    const { id, restore } = this.input;
    const kept = readKept(id);
    if (kept && JSON.stringify(kept.content) !== this.#sent) {
      this.#content = kept.content;
      this.#version = kept.version;
      this.#editor = kept.editor;
      // A try that was under way when the tab was closed may have arrived: the next has a higher number.
      this.#count = kept.count + 1;
      restore(kept.content);
      void this.send();
    } else if (kept) writeKept(id, undefined);
    const online = () => void this.send();
    window.addEventListener("online", online);
    return () => {
      window.removeEventListener("online", online);
      window.clearTimeout(this.#timer);
    };
  }

  /** Whether the last try found no signal. */
  get isOffline(): boolean {
    return this.#state.at === "offline";
  }

  /** Keeps what was typed: here at once, at the club a moment later. */
  keep(content: SubmissionContent): void {
    this.#content = content;
    this.#write();
    this.#later(REST);
  }

  /** Sends what is not sent yet; tells the version afterwards, nothing where it could not be sent. */
  async flush(): Promise<number | undefined> {
    await this.send();
    return JSON.stringify(this.#content) === this.#sent ? this.#version : undefined;
  }

  /** Saves one's own over the other's, knowingly. */
  keepMine(): void {
    if (this.#state.at !== "conflict") return;
    this.#version = this.#state.version;
    this.#editor = crypto.randomUUID();
    this.#count = 0;
    void this.send();
  }

  /** Forgets what this browser kept. */
  forget(): void {
    writeKept(this.input.id, undefined);
  }

  /** One at a time, so that none overtakes another. */
  async send(): Promise<void> {
    window.clearTimeout(this.#timer);
    while (this.#running) await this.#running;
    this.#running = this.#sendOnce().finally(() => {
      this.#running = undefined;
    });
    await this.#running;
  }

  #write(): void {
    writeKept(this.input.id, {
      content: this.#content,
      version: this.#version,
      editor: this.#editor,
      count: this.#count,
    });
  }

  #later(wait: number): void {
    window.clearTimeout(this.#timer);
    this.#timer = window.setTimeout(() => void this.send(), wait);
  }

  #say(state: SaveState): void {
    this.#state = state;
    this.tell(state);
  }

  async #sendOnce(): Promise<void> {
    const content = this.#content;
    const text = JSON.stringify(content);
    if (text === this.#sent) return;
    this.#say({ at: "saving" });
    this.#count += 1;
    const { club, id } = this.input;
    const said = { club, id, version: this.#version, editor: this.#editor, count: this.#count, content };
    try {
      const answer = await callApi<{ version: number }>("submission.save", said);
      if (answer.ok) this.#saved(text, answer.data.version);
      else this.#refused(answer);
    } catch {
      this.#say({ at: "offline" });
      this.#later(AGAIN);
    }
  }

  #saved(text: string, version: number): void {
    this.#version = version;
    this.#sent = text;
    if (JSON.stringify(this.#content) === text) writeKept(this.input.id, undefined);
    else this.#write();
    const time = new Date().toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });
    this.#say({ at: "saved", time });
  }

  #refused({ refusal, message }: Extract<Answer<unknown>, { ok: false }>): void {
    if (refusal?.code === "CHANGED_MEANWHILE") {
      const { version, differences } = refusal.details as {
        version: number;
        differences: readonly FieldDifference[];
      };
      this.#say({ at: "conflict", version, differences });
      return;
    }
    const { what, remedy } = refusal ?? { what: message, remedy: "What you typed is kept on this device." };
    this.#say({ at: "refused", text: { what, remedy } });
  }
}

/**
 * Saves a draft as it is typed. What the club has not got yet is in this browser, written down with every key, so that a
 * lost signal or a closed tab loses nothing; it is sent when there is a signal again.
 */
export function useAutosave(input: AutosaveInput) {
  const [state, setState] = useState<SaveState>({ at: "kept" });
  const latest = useRef<DraftKeeper>(undefined);
  latest.current ??= new DraftKeeper(input, setState);
  const keeper = latest.current;
  useEffect(() => keeper.start(), [keeper]);
  return { state, keeper };
}
