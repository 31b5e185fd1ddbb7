import { env } from "./env";

/** How often it is looked whether npm is still there, in milliseconds. */
const LOOK_MS = 500;

/**
 * Resolves when somebody asks us to end; asked a second time, we end at once.
 * npm passes a signal on to a shell only, which dies of it and tells nobody: its end counts as asking.
 */
export function asked(): Promise<"asked"> {
  return new Promise((resolve) => {
    let times = 0;
    for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const) {
      process.on(signal, () => {
        times += 1;
        if (times > 1) process.exit(130);
        resolve("asked");
      });
    }
    // A closed terminal must not keep us from ending the rest.
    process.stdout.on("error", () => undefined);
    if (!env.underNpm) return;
    const parent = process.ppid;
    setInterval(() => process.ppid !== parent && resolve("asked"), LOOK_MS).unref();
  });
}
