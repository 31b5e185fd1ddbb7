import { computations, listComputations, runComputation } from "@trunnion/calc";
import { refused } from "@trunnion/register";
import { Command } from "commander";
import { printJson, printLines } from "../output";

interface Options {
  readonly list?: boolean;
  readonly json?: boolean;
}

/** Most that is read from standard input, in bytes. */
const INPUT_LIMIT = 1_000_000;

async function standardInput(): Promise<string> {
  const chunks: Buffer[] = [];
  let bytes = 0;
  for await (const chunk of process.stdin) {
    bytes += (chunk as Buffer).length;
    if (bytes > INPUT_LIMIT)
      throw refused("FILE_TOO_LARGE", { file: "standard input", bytes, limit: INPUT_LIMIT });
    chunks.push(chunk as Buffer);
  }
  return Buffer.concat(chunks).toString("utf8");
}

function parseJson(text: string): unknown {
  if (text.trim() === "") throw refused("INPUT_NOT_JSON", { problem: "there is nothing on it" });
  try {
    return JSON.parse(text);
  } catch (error) {
    throw refused("INPUT_NOT_JSON", { problem: (error as Error).message });
  }
}

async function run(name: string | undefined, options: Options): Promise<void> {
  if (options.list || name === undefined) {
    const all = listComputations();
    if (options.json) return printJson(all);
    return printLines(...all.map((one) => `${one.name.padEnd(36)} ${one.title}`));
  }
  const computation = computations.find((one) => one.name === name);
  if (!computation)
    throw refused("COMPUTATION_NOT_FOUND", { name, known: computations.map((one) => one.name) });
  const answer = runComputation(computation, parseJson(await standardInput()));
  if (options.json) return printJson(answer);
  printLines(
    computation.title,
    ...Object.entries(answer.outputs).map(
      ([key, { text }]) => `  ${computation.outputs[key]?.label ?? key}: ${text}`,
    ),
    ...answer.warnings.map((warning) => `  note: ${warning}`),
    ...(computation.caution === undefined ? [] : [`  caution: ${computation.caution}`]),
  );
}

/** `trunnion work --list`, `trunnion work <name> < input.json` */
export function workCommand(): Command {
  return new Command("work")
    .description("run a computation of the catalogue on JSON from standard input")
    .argument("[name]", "name of the computation, as --list shows it")
    .option("--list", "list the catalogue")
    .option("--json", "as JSON: { outputs, working, warnings }, every output { si, unit, text }")
    .action(run);
}
