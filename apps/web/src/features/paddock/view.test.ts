import type { EventPack } from "@trunnion/api";
import { describe, expect, test } from "vitest";
import type { EntryFinding, KeptEvent } from "./kept";
import { found, openStations, sayTally, viewsOf, wasRefused } from "./view";

const entryOf = (entryId: string, runningNumber: string, driver: string) => ({
  entryId,
  reads: [],
  sheet: {
    entry: { runningNumber, group: "", className: "", driver },
    car: { chassis: `S1-00${runningNumber}`, series: "Series 1" },
    stations: [{ station: "front", label: "Front", checks: [{ id: "nuts" }, { id: "hose" }] }],
  },
});
const finding = (key: string, more: Partial<EntryFinding> = {}): EntryFinding => ({
  key,
  entryId: "a",
  check: "nuts",
  result: "pass",
  note: "",
  readings: [],
  replaces: [],
  by: "Åse",
  at: "2026-05-01T08:00:00.000Z",
  ...more,
});
const packed = (findings: readonly EntryFinding[] = []) =>
  ({
    entries: [entryOf("a", "7", "Żaneta Ørn"), entryOf("b", "17", "Tõnu")],
    findings,
    decisions: [],
  }) as unknown as EventPack;
const kept = (records: KeptEvent["records"], pack = packed()): KeptEvent => ({
  pack,
  records,
  photos: [],
  drafts: new Map(),
  gauges: new Map(),
});
const own = (record: EntryFinding, sent = false) =>
  ({ key: record.key, place: "x/y", sent, problem: "", kind: "finding", record }) as const;

describe("an entry in the hand", () => {
  test("counts what this device found before the server has it, and once after", () => {
    const [before] = viewsOf(kept([own(finding("k"))]));
    expect(before?.tally).toMatchObject({ passed: 1, open: 1 });
    expect(before?.unsent).toBe(1);
    const [after] = viewsOf(kept([own(finding("k"), true)], packed([finding("k")])));
    expect(after?.tally).toMatchObject({ passed: 1, open: 1 });
    expect(after?.unsent).toBe(0);
  });

  test("shows another's finding beside its own where neither had seen the other", () => {
    const [view] = viewsOf(kept([own(finding("k"))], packed([finding("m", { result: "refuse" })])));
    expect(view?.standings.get("nuts")?.state).toBe("conflict");
    expect(view?.best).toBeUndefined();
  });

  test("is no pass while anything is open", () => {
    const both = [own(finding("k")), own(finding("m", { check: "hose" }))];
    expect(viewsOf(kept(both.slice(0, 1)))[0]?.best).toBeUndefined();
    expect(viewsOf(kept(both))[0]?.best).toBe("pass");
  });
});

describe("a car that was refused", () => {
  const decided = (outcome: string) =>
    ({
      ...packed([finding("k"), finding("m", { check: "hose", result: "refuse" })]),
      decisions: [
        {
          key: "d",
          replaces: [],
          entryId: "a",
          outcome,
          note: "",
          signedBy: "",
          signature: "",
          by: "",
          at: "",
        },
      ],
    }) as unknown as EventPack;
  const open = (outcome: string) => viewsOf(kept([], decided(outcome)))[0];

  test("comes again with only what was not passed", () => {
    const view = open("refused");
    expect(view && wasRefused(view)).toBe(true);
    expect(view && openStations(view).map(({ checks }) => checks.map(({ id }) => id))).toEqual([["hose"]]);
  });

  test("is one only as long as that decision stands", () => {
    const view = open("pass");
    expect(view && wasRefused(view)).toBe(false);
  });
});

describe("the search in the paddock", () => {
  const views = viewsOf(kept([]));
  test.each([
    ["7", ["7"], "a running number to the letter, not every number that has it"],
    ["17", ["17"], "one of two figures"],
    ["zaneta", ["7"], "a driver, accents or not"],
    ["s1-00", ["7", "17"], "a chassis"],
    ["  ", ["7", "17"], "nothing: everything"],
    ["99", [], "nobody"],
  ])("for %j finds %j: %s", (typed, numbers) => {
    expect(found(views, typed).map(({ entry }) => entry.sheet.entry.runningNumber)).toEqual(numbers);
  });
});

test("a tally is said worst first, and what is nought is left out", () => {
  const none = { open: 0, conflicts: 0, passed: 0, advised: 0, refused: 0, notApplicable: 0 };
  expect(sayTally({ ...none, open: 9, passed: 31, refused: 1 })).toBe("1 refused, 31 passed, 9 open");
  expect(sayTally(none)).toBe("no checks");
});
