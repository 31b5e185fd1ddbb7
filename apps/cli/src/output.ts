/** One JSON document on standard output; nothing else goes there with `--json`. */
export function printJson(document: unknown): void {
  process.stdout.write(`${JSON.stringify(document, null, 2)}\n`);
}

/** Lines for people. */
export function printLines(...lines: readonly string[]): void {
  process.stdout.write(lines.map((line) => `${line}\n`).join(""));
}
