import { describe, expect, test } from "vitest";
import { type HomeFacts, nextSteps } from "./next-step";

const facts: HomeFacts = {
  cars: 412,
  disputed: [{ reference: "S2-0211", chassis: "S2-0211", claims: 2 }],
  nextEvent: { slug: "autumn", name: "Autumn day", on: "26 September 2026", entryCount: 42 },
};
const titles = (...args: Parameters<typeof nextSteps>) => nextSteps(...args).map(({ title }) => title);

describe("what to do next", () => {
  test("a scrutineer prints the stack of the next event, and is not sent to mend records", () => {
    expect(titles("sandvaer", ["scrutineer"], facts)).toEqual(["Print 42 sheets for Autumn day"]);
  });

  test("a registrar is shown what the register does not know", () => {
    expect(titles("sandvaer", ["registrar"], facts)).toEqual([
      "Print 42 sheets for Autumn day",
      "Settle who is S2-0211",
    ]);
  });

  test("an owner is not offered the event's stack", () => {
    expect(titles("sandvaer", ["owner"], facts)).toEqual([]);
  });

  test("an event without entries offers no print", () => {
    const { nextEvent, ...rest } = facts;
    const empty = {
      ...rest,
      ...(nextEvent === undefined ? {} : { nextEvent: { ...nextEvent, entryCount: 0 } }),
    };
    expect(titles("sandvaer", ["scrutineer"], empty)).toEqual(["Look at Autumn day"]);
  });

  test("who runs a fleet is told what is past its day before what comes next, and nobody of nothing", () => {
    expect(
      titles("grusvik", ["fleetManager"], { ...facts, disputed: [], due: { past: 9, soon: 7 } }),
    ).toEqual(["Renew 9 things past their day", "Print 42 sheets for Autumn day"]);
    expect(titles("grusvik", ["fleetManager"], { cars: 14, due: { past: 0, soon: 1 } })).toEqual([
      "Renew what falls due",
    ]);
    expect(titles("grusvik", ["fleetManager"], { cars: 14, due: { past: 0, soon: 0 } })).toEqual([]);
  });

  test("what waits for an answer or a decision comes first", () => {
    expect(titles("sandvaer", ["owner"], { cars: 1, toAnswer: 1 })).toEqual([
      "Answer the registrar's question",
    ]);
    expect(titles("sandvaer", ["registrar"], { cars: 1, toReview: 3 })).toEqual([
      "Review 3 changes handed in",
    ]);
    expect(titles("sandvaer", ["registrar"], { cars: 1, toReview: 0, toAnswer: 0 })).toEqual([]);
  });
});
