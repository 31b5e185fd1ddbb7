import type { DecisionLine } from "@trunnion/api";
import { describe, expect, test } from "vitest";
import { markup, readText } from "../../test/markup";
import { Standing } from "./standing";

const decision: DecisionLine = {
  id: "019ab000-0000-7000-8000-000000000000",
  kind: "chassis",
  numberKey: "S20145",
  outcome: "oneHolds",
  holder: "S2-0145",
  reason: "The stamping is the works' own.",
  by: "Ragna Vík",
  on: "2026-11-25",
};
const car = { club: "sandvaer", chassis: "S2-0145", claims: 1, decisions: [], mayEdit: false } as const;

describe("how a car's numbers stand", () => {
  test("is not said where nobody ever asked", () => {
    expect(markup(<Standing {...car} />)).toBe("");
  });

  test("is open where several claim the number, and only who may is led to weighing it", () => {
    expect(readText(<Standing {...car} claims={2} />)).toBe(
      "2 cars claim this number, and nothing is decided yet.",
    );
    expect(markup(<Standing {...car} claims={2} mayEdit />)).toContain(
      "/club/sandvaer/number/chassis/S2-0145",
    );
  });

  test("is told with who decided, when and why", () => {
    expect(readText(<Standing {...car} claims={2} decisions={[decision]} />)).toBe(
      "Chassis number: S2-0145 holds it: 25 Nov 2026, Ragna Vík The stamping is the works' own.",
    );
  });

  test("points to the car a record turned out to be of", () => {
    expect(readText(<Standing {...car} mergedInto="S2-0144" />)).toContain("of the same car as S2-0144");
  });
});
