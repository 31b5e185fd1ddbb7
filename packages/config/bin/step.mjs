// One step of `npm test`: a program run quietly, with a line when it begins and one when it ends.
import { spawn } from "node:child_process";

/** How often a step that takes long says so, in milliseconds. */
const TICK_MS = 30_000;

function seconds(begun) {
  return `${Math.round((Date.now() - begun) / 1000)} s`;
}

/**
 * @param {{ name: string, args: string[], cwd: string, env?: Record<string, string> }} step args for Node
 * @returns {Promise<{ name: string, code: number, said: string }>}
 */
export async function runStep({ name, args, cwd, env }) {
  const begun = Date.now();
  console.log(`${name} …`);
  const child = spawn(process.execPath, args, {
    cwd,
    env: { ...process.env, ...env },
    stdio: ["ignore", "pipe", "pipe"],
  });
  let stopped = false;
  const stop = (signal) => {
    stopped = true;
    child.kill(signal);
  };
  process.on("SIGINT", stop).on("SIGTERM", stop);
  const ticking = setInterval(() => console.log(`  … ${seconds(begun)}`), TICK_MS);
  let said = "";
  for (const stream of [child.stdout, child.stderr]) {
    stream.setEncoding("utf8").on("data", (chunk) => {
      said += chunk;
    });
  }
  const code = await new Promise((resolve) => {
    child.once("error", (error) => {
      said += error.message;
      resolve(127);
    });
    child.once("close", (value) => resolve(value ?? 1));
  });
  clearInterval(ticking);
  if (stopped) process.exit(130);
  process.off("SIGINT", stop).off("SIGTERM", stop);
  console.log(`${name}: ${code === 0 ? "good" : "FAILED"} (${seconds(begun)})`);
  return { name, code, said: said.trim() };
}
