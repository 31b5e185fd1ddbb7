import { ThreadsPoolWorker } from "vitest/node";

/** Runs after which the thread is started afresh: each leaves a few listeners behind. */
const MOST_RUNS = 250;

/** The thread that outlives its runs, and what is known of it. */
let thread;

/**
 * A vitest worker thread that is not ended after each run. Stryker switches mutants inside modules already loaded, so
 * loading zod, fast-check and a hundred modules anew for each of some ten thousand mutants is what nearly all the
 * time went into. A thread that is still running when it is told to stop is ended like any other.
 */
class LastingWorker extends ThreadsPoolWorker {
  name = "lasting";

  async start() {
    if (thread !== undefined && thread.runs >= MOST_RUNS) await end();
    if (thread === undefined) {
      await super.start();
      thread = { worker: this._thread, owner: this, runs: 0, busy: false };
      thread.worker.setMaxListeners(0);
      thread.worker.on("message", (message) => {
        if (thread !== undefined && message?.type === "testfileFinished") thread.busy = false;
      });
    }
    this._thread = thread.worker;
    this.listening = [];
  }

  on(event, callback) {
    this.listening.push([event, callback]);
    super.on(event, callback);
  }

  send(message) {
    if (message.type === "run") Object.assign(thread, { runs: thread.runs + 1, busy: true });
    // The answer vitest waits for; the thread itself is not told.
    if (message.type === "stop") this.answer({ type: "stopped", __vitest_worker_response__: true });
    else super.send(message);
  }

  answer(message) {
    for (const [event, callback] of [...this.listening]) if (event === "message") callback(message);
  }

  async stop() {
    for (const [event, callback] of this.listening) this._thread.off(event, callback);
    if (thread?.busy) await end();
  }
}

async function end() {
  const { owner, worker } = thread;
  thread = undefined;
  owner._thread = worker;
  await ThreadsPoolWorker.prototype.stop.call(owner);
}

/** A vite plugin that gives vitest the lasting worker, whatever pool it was started with (Stryker insists on one). */
export const lastingWorker = {
  name: "trunnion-lasting-worker",
  configureVitest({ project }) {
    project.config.pool = "lasting";
    project.config.poolRunner = {
      name: "lasting",
      createPoolWorker: (options) => new LastingWorker(options),
    };
  },
};
