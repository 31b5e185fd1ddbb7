/** Work of this process that nobody waits for, one piece after another. Kept on the global: a bundler may load this module twice. */
const shared = globalThis as typeof globalThis & {
  trunnionImports?: { last: Promise<void>; waiting: number };
};
shared.trunnionImports ??= { last: Promise.resolve(), waiting: 0 };
const queue = shared.trunnionImports;

/**
 * Does a piece of work after those before it, outside the request that asked: one at a time in a process, so that an
 * import of one club does not take the database from all others.
 *
 * @param fault what to do with an error that comes out of it
 */
export function inTurn(work: () => Promise<void>, fault: (error: unknown) => void): void {
  queue.waiting += 1;
  queue.last = queue.last
    .then(work)
    .catch(fault)
    .finally(() => {
      queue.waiting -= 1;
    });
}

/** Settles once everything asked for so far is done: for tests, and for ending in good order. */
export function importsDone(): Promise<void> {
  return queue.last;
}
