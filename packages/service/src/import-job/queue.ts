import type { JobInput } from "./write";

/** Milliseconds between signs of life: a third of what a silent import is given, and then some. */
const BEAT = 15_000;

/** Work of this process that nobody waits for, one piece after another. Kept on the global: a bundler may load this module twice. */
const shared = globalThis as typeof globalThis & {
  trunnionImports?: { last: Promise<void>; waiting: number };
};
shared.trunnionImports ??= { last: Promise.resolve(), waiting: 0 };
const queue = shared.trunnionImports;

/** Says that an import is alive, while it waits for its turn and between its chunks. */
function beating({ open, run }: JobInput): () => void {
  const timer = setInterval(() => {
    const beat = open((ctx) =>
      ctx.db.importRun.updateMany({
        where: { id: run, status: { in: ["running", "planned"] } },
        data: { beatAt: new Date() },
      }),
    );
    // A beat that is lost is made up for by the next.
    beat.catch(() => undefined);
  }, BEAT);
  return () => clearInterval(timer);
}

/**
 * Does an import's work after those before it, outside the request that asked: one at a time in a process, so that an
 * import of one club does not take the database from all others.
 *
 * @param fault what to do with an error that comes out of it
 */
export function inTurn(
  input: JobInput,
  work: (input: JobInput) => Promise<void>,
  fault: (error: unknown) => void,
): void {
  queue.waiting += 1;
  const still = beating(input);
  queue.last = queue.last
    .then(() => work(input))
    .catch(fault)
    .finally(() => {
      still();
      queue.waiting -= 1;
    });
}

/** Settles once everything asked for so far is done: for tests, and for ending in good order. */
export function importsDone(): Promise<void> {
  return queue.last;
}
