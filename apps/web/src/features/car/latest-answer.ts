/** What a question came to: its answer, or that none came. */
export type Outcome<T> = { readonly ok: true; readonly answer: T } | { readonly ok: false };

export interface Latest {
  /** Asks something; what was asked before is given up, and its answer, should it come, is not told. */
  ask(question: string): Promise<void>;
  /** Gives up what is being asked. */
  stop(): void;
}

/**
 * Asks one thing at a time: the latest. An earlier question is broken off and never told of, neither its answer nor that
 * it failed, in whatever order they come.
 */
export function latestOnly<T>(
  answerTo: (question: string, signal: AbortSignal) => Promise<T>,
  tell: (question: string, outcome: Outcome<T>) => void,
): Latest {
  let current: AbortController | undefined;
  return {
    async ask(question) {
      current?.abort();
      const mine = new AbortController();
      current = mine;
      let outcome: Outcome<T>;
      try {
        outcome = { ok: true, answer: await answerTo(question, mine.signal) };
      } catch {
        outcome = { ok: false };
      }
      if (current === mine && !mine.signal.aborted) tell(question, outcome);
    },
    stop() {
      current?.abort();
      current = undefined;
    },
  };
}
