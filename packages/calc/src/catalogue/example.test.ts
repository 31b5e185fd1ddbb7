import { describe, expect, test } from "vitest";

declare global {
  interface ImportMeta {
    glob<T>(
      patterns: readonly string[],
      options: { readonly eager: true; readonly query?: string; readonly import?: string },
    ): Record<string, T>;
  }
}

const modules = import.meta.glob<Record<string, unknown>>(["../**/*.ts", "!../**/*.test.ts"], {
  eager: true,
});
const sources = import.meta.glob<string>(["../**/*.ts", "!../**/*.test.ts"], {
  eager: true,
  query: "?raw",
  import: "default",
});
const everything: Record<string, unknown> = Object.assign({}, ...Object.values(modules));

interface Example {
  readonly file: string;
  readonly call: string;
  readonly answer: string;
}

/** `@example call // => answer`, the call on one line or several; the answer on the last. */
function examplesOf(file: string, source: string): readonly Example[] {
  const comments = source.match(/\/\*\*[\s\S]*?\*\//g) ?? [];
  return comments.flatMap((comment) => {
    const text = comment.replace(/^\s*\/?\*+\/?[ \t]?/gm, "").replace(/\s*\*\/$/, "");
    return text
      .split("@example")
      .slice(1)
      .map((example) => {
        const [, call = "", answer = ""] = /^\s*([\s\S]*?)\s*\/\/ =>\s*(.*)$/m.exec(example) ?? [];
        return { file, call: call.trim(), answer: answer.trim() };
      });
  });
}

/** Evaluates with the module's own exports first, then every other module's of the package. */
function evaluate(expression: string, file: string): unknown {
  const scope = { ...everything, ...modules[file] };
  return new Function(...Object.keys(scope), `"use strict"; return (${expression});`)(
    ...Object.values(scope),
  );
}

/** Numbers with decimals agree to the digits that are written, whole numbers and everything else exactly. */
function expectAnswer(actual: unknown, answer: string, file: string): void {
  const expected = evaluate(answer, file);
  if (typeof expected !== "number" || typeof actual !== "number") {
    expect(actual).toEqual(expected);
    return;
  }
  const decimals = /\.(\d+)/.exec(answer)?.[1]?.length ?? 15;
  const scale = 10 ** Number(/e([+-]?\d+)/i.exec(answer)?.[1] ?? 0);
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(
    0.5 * 10 ** -decimals * scale + Math.abs(expected) * 1e-12,
  );
}

const examples = Object.entries(sources).flatMap(([file, source]) => examplesOf(file, source));

describe("every example in a comment does what it says", () => {
  test("there are some, each a call and an answer", () => {
    expect(examples.length).toBeGreaterThan(10);
    for (const { file, call, answer } of examples) {
      expect(call, `an example of ${file} has no call`).not.toBe("");
      expect(answer, `${call} in ${file} has no "// =>" with an answer`).not.toBe("");
    }
  });

  test.each(examples.map((example) => [example.call, example] as const))(
    "%s",
    (_call, { call, answer, file }) => {
      expectAnswer(evaluate(call, file), answer, file);
    },
  );
});
