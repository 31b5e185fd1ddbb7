import { describe, expect, test } from "vitest";
import { builtInBook } from "../../characteristic/book";
import { characteristicsOf, nodesOf } from "../../condition/schema";
import { sampleValue } from "../../value/sample";
import { whyProblems } from "../for-car";
import { checkSchema } from "../schema";
import { starterChecks, starterClasses } from ".";
import { shorts } from "./short";

const derived = starterChecks.filter(({ when }) => when.op !== "always");

describe("the starter rule set", () => {
  test("has enough for every car and for what follows from this one", () => {
    expect(starterChecks.length - derived.length).toBeGreaterThanOrEqual(90);
    expect(derived.length).toBeGreaterThanOrEqual(60);
  });

  test("names every check once", () => {
    expect(new Set(starterChecks.map(({ id }) => id)).size).toBe(starterChecks.length);
  });

  test.each(starterChecks.map((check) => [check.id, check] as const))(
    "%s can be stored and read again",
    (_, check) => {
      expect(checkSchema.parse(JSON.parse(JSON.stringify(check)))).toEqual(check);
    },
  );

  test.each(derived.map((check) => [check.id, check] as const))(
    "%s looks at characteristics that exist",
    (_, check) => {
      expect(whyProblems(check.why ?? "", builtInBook)).toEqual([]);
      const criterion = "characteristic" in check.criterion ? [check.criterion.characteristic ?? ""] : [];
      const unknown = [...characteristicsOf(check.when), ...criterion].filter(
        (key) => !builtInBook.find(key),
      );
      expect(unknown).toEqual([]);
    },
  );

  test.each(derived.map((check) => [check.id, check] as const))(
    "%s asks for choices that can be made",
    (_, check) => {
      for (const node of nodesOf(check.when)) {
        if (node.op !== "code") continue;
        const characteristic = builtInBook.find(node.characteristic);
        if (characteristic?.kind === "designation") {
          expect(node.in.map((entered) => sampleValue(node.characteristic, entered))).toMatchObject(
            node.in.map((canonical) => ({ canonical })),
          );
        }
        if (characteristic?.kind !== "choice") continue;
        const codes = characteristic.choices.map(({ code }) => code);
        expect(node.in.filter((code) => !codes.includes(code))).toEqual([]);
      }
    },
  );

  test("words every check in a line of the printed sheet, and words none that is gone", () => {
    const ids = starterChecks.map(({ id }) => id);
    expect(starterChecks.filter(({ short = "" }) => short === "" || short.length > 56)).toEqual([]);
    expect(Object.keys(shorts).filter((id) => !ids.includes(id))).toEqual([]);
  });

  test("says why of every check that not every car gets", () => {
    expect(derived.filter(({ why }) => why === undefined)).toEqual([]);
  });

  test("says of every check where it comes from, and of what a regulation asks, which edition", () => {
    const unnamed = starterChecks.filter(
      ({ source }) => /rules|regulations|yearbook/i.test(source.title) && source.edition === undefined,
    );
    expect(unnamed.map(({ id }) => id)).toEqual([]);
  });

  test("has classes whose conditions look at characteristics that exist", () => {
    const keys = starterClasses.flatMap(({ eligibility }) => characteristicsOf(eligibility));
    expect(keys.filter((key) => !builtInBook.find(key))).toEqual([]);
  });
});
