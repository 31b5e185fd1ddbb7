import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { EntryDecision, Finding, FindingResult } from "./inspection";
import { decisionInput, findingInput } from "./schema";
import { bestOutcome, checkStanding, checkStandings, decisionStanding, standing, tallyOf } from "./standing";

const finding = (key: string, result: FindingResult, replaces: readonly string[] = []): Finding => ({
  key,
  result,
  replaces,
  check: "wheel-nuts",
  note: "",
  readings: [],
  by: "Åse",
  at: "2026-05-01T08:00:00.000Z",
});

describe("what stands", () => {
  test("is what no other takes the place of", () => {
    const [first, second] = [finding("a", "refuse"), finding("b", "pass", ["a"])];
    expect(standing([first, second])).toEqual([second]);
    expect(standing([second, first])).toEqual([second]);
  });

  test("of two scrutineers who had not seen each other's finding is both", () => {
    const two = [finding("a", "refuse"), finding("b", "pass")];
    expect(checkStanding(two)).toEqual({ state: "conflict", findings: two });
    expect(checkStanding([finding("a", "pass"), finding("b", "pass")])).toMatchObject({
      state: "found",
      result: "pass",
    });
  });

  test("is settled by one who has seen both", () => {
    const settled = [finding("a", "refuse"), finding("b", "pass"), finding("c", "advise", ["a", "b"])];
    expect(checkStanding(settled)).toMatchObject({ state: "found", result: "advise" });
  });

  test("is everything where records take each other's place: nothing found is dropped", () => {
    const ring = [finding("a", "refuse", ["b"]), finding("b", "pass", ["a"])];
    expect(standing(ring)).toEqual(ring);
    const third = finding("c", "pass");
    expect(standing([...ring, third])).toEqual([...ring, third]);
  });

  test("may take the place of one that has not arrived yet", () => {
    expect(standing([finding("b", "pass", ["a"])])).toHaveLength(1);
  });

  test("does not depend on the order of arrival, nor on anything sent twice, and always keeps something", () => {
    const results = fc.constantFrom<FindingResult[]>("pass", "advise", "refuse", "notApplicable");
    const made = fc
      .array(fc.tuple(results, fc.array(fc.nat({ max: 7 }), { maxLength: 3 })), {
        minLength: 1,
        maxLength: 8,
      })
      .map((list) =>
        list.map(([result, seen], index) =>
          finding(
            `k${index}`,
            result,
            seen.filter((other) => other !== index).map((other) => `k${other}`),
          ),
        ),
      );
    const shuffled = made.chain((list) =>
      fc.tuple(
        fc.constant(list),
        fc.shuffledSubarray([...list, ...list], { minLength: list.length * 2, maxLength: list.length * 2 }),
      ),
    );
    fc.assert(
      fc.property(shuffled, ([list, arrived]) => {
        const [here, there] = [checkStanding(list), checkStanding(arrived)];
        expect(there.state).toBe(here.state);
        const keys = (one: typeof here) =>
          one.state === "open" ? [] : one.findings.map(({ key }) => key).sort();
        expect(keys(there)).toEqual(keys(here));
        expect(keys(here).length).toBeGreaterThan(0);
      }),
    );
  });
});

describe("what an entry comes to", () => {
  const checks = ["wheel-nuts", "harness"];
  const outcome = (findings: readonly Finding[]) =>
    bestOutcome(tallyOf(checkStandings(checks, findings).values()));
  const harness = (result: FindingResult): Finding => ({ ...finding("h", result), check: "harness" });

  test("is nothing while a check is open or in conflict, even if the others passed", () => {
    expect(outcome([])).toBeUndefined();
    expect(outcome([harness("pass")])).toBeUndefined();
    expect(outcome([harness("pass"), finding("a", "pass"), finding("b", "advise")])).toBeUndefined();
  });

  test("is refused as soon as one check is", () => {
    expect(outcome([harness("refuse")])).toBe("refused");
  });

  test("is a pass with advice where something was advised, else a pass", () => {
    expect(outcome([harness("advise"), finding("a", "pass")])).toBe("passWithAdvice");
    expect(outcome([harness("notApplicable"), finding("a", "pass")])).toBe("pass");
  });

  test("counts each check once", () => {
    const tally = tallyOf(
      checkStandings(checks, [harness("pass"), finding("a", "refuse"), finding("b", "pass", ["a"])]).values(),
    );
    expect(tally).toEqual({ open: 0, conflicts: 0, passed: 2, advised: 0, refused: 0, notApplicable: 0 });
  });
});

describe("decisions", () => {
  const decision = (key: string, outcome: EntryDecision["outcome"], replaces: readonly string[] = []) => ({
    key,
    outcome,
    replaces,
    note: "",
    signedBy: "",
    signature: "",
    by: "Åse",
    at: "2026-05-01T08:00:00.000Z",
  });

  test("made apart and differing are a conflict, made after another take its place", () => {
    expect(decisionStanding([])).toEqual({ state: "none" });
    expect(decisionStanding([decision("a", "refused"), decision("b", "pass")]).state).toBe("conflict");
    expect(decisionStanding([decision("a", "refused"), decision("b", "pass", ["a"])])).toMatchObject({
      state: "decided",
      outcome: "pass",
    });
  });
});

describe("what a device sends", () => {
  const sent = {
    key: "01900000-0000-7000-8000-000000000001",
    entryId: "01900000-0000-7000-8000-000000000002",
    at: "2026-05-01T08:00:00.000Z",
    check: "wheel-nuts",
    result: "pass",
  };

  test("is read with what it leaves out", () => {
    expect(findingInput.parse(sent)).toMatchObject({ replaces: [], readings: [], note: "" });
  });

  test.each([
    ["takes its own place", { replaces: [sent.key] }],
    ["a result there is not", { result: "perhaps" }],
    ["a key that is none", { key: "1" }],
    ["a note of an hour's typing", { note: "x".repeat(2_001) }],
    [
      "more readings than a check has",
      { readings: Array(25).fill({ characteristic: "front.camber", entered: "-1°" }) },
    ],
  ])("with %s is refused", (_, wrong) => {
    expect(findingInput.safeParse({ ...sent, ...wrong }).success).toBe(false);
  });

  test("as a signature is strokes and nothing that a page could run", () => {
    const signed = { ...sent, outcome: "pass", signature: "M10 20 L12.5 24 L-3 190" };
    expect(decisionInput.safeParse(signed).success).toBe(true);
    const script = { ...signed, signature: '"/><script>' };
    expect(decisionInput.safeParse(script).success).toBe(false);
  });
});
