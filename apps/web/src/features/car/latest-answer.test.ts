import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { latestOnly, type Outcome } from "./latest-answer";

interface Asked {
  readonly question: string;
  readonly signal: AbortSignal;
  readonly settle: (ok: boolean) => void;
}

/** A server that answers when it is told to, in any order. */
function slowServer() {
  const asked: Asked[] = [];
  const told: [string, Outcome<string>][] = [];
  const latest = latestOnly(
    (question, signal) =>
      new Promise<string>((resolve, reject) => {
        const settle = (ok: boolean) =>
          ok ? resolve(`cars for ${question}`) : reject(new Error("no answer"));
        asked.push({ question, signal, settle });
      }),
    (question, outcome) => told.push([question, outcome]),
  );
  return { asked, told, latest };
}

describe("asking while somebody types", () => {
  test("breaks off what was asked before", () => {
    const { asked, latest } = slowServer();
    void latest.ask("s");
    void latest.ask("s3");
    expect(asked.map(({ signal }) => signal.aborted)).toEqual([true, false]);
  });

  test("tells that no answer came to the latest question, and of no earlier one", async () => {
    const { asked, told, latest } = slowServer();
    const first = latest.ask("s");
    const second = latest.ask("s3");
    for (const { settle } of asked) settle(false);
    await Promise.all([first, second]);
    expect(told).toEqual([["s3", { ok: false }]]);
  });

  test("tells nothing once it was stopped", async () => {
    const { asked, told, latest } = slowServer();
    const only = latest.ask("s");
    latest.stop();
    asked[0]?.settle(true);
    await only;
    expect(told).toEqual([]);
  });

  test("whatever the order of the answers, the last told is of the last question, each at most once", async () => {
    const order = fc.array(fc.nat({ max: 4 }), { minLength: 1, maxLength: 10 });
    await fc.assert(
      fc.asyncProperty(
        order,
        fc.shuffledSubarray([0, 1, 2, 3, 4], { minLength: 5 }),
        async (keys, settled) => {
          const { asked, told, latest } = slowServer();
          const all = keys.map((key, place) => latest.ask(`${place}:${key}`));
          for (const place of [...settled, ...asked.keys()]) asked[place]?.settle(true);
          await Promise.all(all);
          const last = asked.at(-1)?.question;
          expect(told).toEqual([[last, { ok: true, answer: `cars for ${last}` }]]);
        },
      ),
    );
  });
});
