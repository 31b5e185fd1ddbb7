import { openWorld, type World } from "@trunnion/fixtures";
import { blankEntry, entryText, specificationDifference, type Verdict } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { carPage } from "../car-page";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { compareCurrentValues, rebuildAllCurrentValues } from "../current-value";
import { openMember, openOperator } from "../gate";
import { findSeries } from "../series";
import { makeCurrent, specificationOf } from "../specification";
import { draftReview, specificationPage } from "../specification-page";
import {
  discardDraft,
  draftEntry,
  type PutEntryInput,
  putEntry,
  putEntryInput,
  removeEntry,
  startDraft,
} from "./index";

let world: World;
/** Camber 0°40' on the left: outside 0°30', inside 0°45' and more. */
let steep: string;

const ours = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "ours", work);
const series = "mark-1";

beforeAll(async () => {
  world = await openWorld();
  const car = await world.car({
    chassis: "M1-010",
    built: "1971",
    read: { "front.camber left": "0°40'", "front.camber right": "0°10'", "front.castor": "3°30'" },
  });
  steep = car.reference;
  await world.car({ chassis: "M1-020", built: "1972", modified: { "front.antiRollBar.diameter": "5/8 in" } });
  await ours(async (ctx) => rebuildAllCurrentValues(ctx, await bookOf(ctx)));
}, 120_000);
afterAll(() => world?.close());

const versionOf = (version: number) =>
  ours(async (ctx) => specificationOf(ctx, { series: await findSeries(ctx, series), version }));

/** The form of an entry as it would be opened now, with what is changed in it. */
async function form(version: number, characteristic: string, parts: Partial<PutEntryInput> = {}) {
  const draft = await versionOf(version);
  const entry = draft.entries.find((one) => one.characteristic === characteristic);
  const { opened, text, revision } = await ours((ctx) =>
    draftEntry(ctx, { series, version, ...(entry ? { entry: entry.id } : { characteristic }) }),
  );
  return putEntryInput.parse({
    series,
    version,
    revision,
    opened,
    ...text,
    ...(entry ? { entry: entry.id } : {}),
    ...parts,
  });
}

const put = (input: PutEntryInput) => ours((ctx) => putEntry(ctx, input));

/** Tries something that must be refused, and that nothing was written. */
async function refusal(attempt: () => Promise<unknown>) {
  const before = await world.fingerprint();
  const error = await attempt().then(
    () => undefined,
    (reason: unknown) => reason,
  );
  expect(await world.fingerprint()).toEqual(before);
  expect(error).toBeInstanceOf(Error);
  return error as {
    readonly code?: string;
    readonly details?: unknown;
    readonly problems?: readonly { readonly field: string }[];
  };
}

const verdict = async (side: "left" | "right"): Promise<Verdict | undefined> => {
  const page = await ours((ctx) => carPage(ctx, steep));
  return page.factory.find((line) => line.characteristic === "front.camber" && line.side === side)?.verdict;
};

describe("a draft", () => {
  test("begins as a copy of the current version, which says the same and is none the less another", async () => {
    expect(await ours((ctx) => startDraft(ctx, { series, from: series }))).toBe(2);
    const [current, draft] = [await versionOf(1), await versionOf(2)];
    expect(draft).toMatchObject({ status: "draft", revision: 1, copiedFromId: current.id });
    expect(specificationDifference(current.entries, draft.entries)).toEqual([]);
    expect(new Set([...current.entries, ...draft.entries].map(({ id }) => id)).size).toBe(
      2 * current.entries.length,
    );
  });

  test("is the only one of its series: a second is refused with the number of the first", async () => {
    const error = await refusal(() => ours((ctx) => startDraft(ctx, { series, from: "empty" })));
    expect(error).toMatchObject({ code: "SPECIFICATION_DRAFT_EXISTS", details: { series, version: 2 } });
  });

  test("takes a changed entry, a new one with a new source, and gives one up; each counts its revision up", async () => {
    await put(await form(2, "front.camber", { upper: "0°45'", note: "bulletin 7" }));
    const added = await form(2, "front.toe", {
      nominal: "5' in per side",
      lower: "0' per side",
      newSource: "Service bulletin 7",
      newSourceKind: "publication",
      trust: "documented",
      serialFrom: "M1-061",
    });
    await put(added);
    const castor = await form(2, "front.castor");
    await ours((ctx) => removeEntry(ctx, { ...castor, entry: castor.entry ?? "" }));
    const draft = await versionOf(2);
    expect(draft.revision).toBe(4);
    const changes = specificationDifference((await versionOf(1)).entries, draft.entries);
    expect(
      changes.map((change) => [
        change.kind,
        "after" in change ? change.after.characteristic : change.before.characteristic,
      ]),
    ).toEqual([
      ["removed", "front.castor"],
      ["changed", "front.camber"],
      ["added", "front.toe"],
    ]);
    expect(draft.entries.find((one) => one.characteristic === "front.toe")).toMatchObject({
      applicability: { serialFrom: 61 },
      source: { title: "Service bulletin 7", trust: "documented" },
    });
    const lines = await world.inClub((db) => db.journalEntry.findMany({ orderBy: { sequence: "asc" } }));
    expect(lines.map(({ action }) => action)).toEqual([
      "specification.begin",
      "specification.changeEntry",
      "source.add",
      "specification.addEntry",
      "specification.removeEntry",
    ]);
    expect(lines[1]).toMatchObject({
      before: { upper: "0°30'" },
      after: { upper: "0°45'", note: "bulletin 7" },
    });
  });

  test("left as it was opened does not change by being saved", async () => {
    const before = (await versionOf(2)).entries;
    for (const { characteristic } of before.slice(0, 4)) await put(await form(2, characteristic));
    expect(specificationDifference(before, (await versionOf(2)).entries)).toEqual([]);
  });

  test.each([
    ["limits that cross", { lower: "1°", upper: "-1°" }, "lower"],
    ["a nominal outside its limits", { nominal: "2°" }, "nominal"],
    ["a value that does not read", { nominal: "steep" }, "nominal"],
    ["a span that ends before it begins", { serialFrom: "50", serialTo: "40" }, "serialTo"],
    ["a number the series has not", { serialFrom: "M1-500" }, "serialFrom"],
    ["an option the series never had", { option: "GT" }, "option"],
    ["a source that is none of the club's", { source: "Hearsay" }, "source"],
    ["two sources at once", { source: "Mark 1 workshop manual", newSource: "Another" }, "newSource"],
    [
      "a substitute that is the nominal",
      { alternatives: [{ role: "acceptedSubstitute", value: "0°" }] },
      "alternatives.0.value",
    ],
  ])("refuses %s at its field, and nothing is written", async (_, parts, field) => {
    const input = await form(2, "front.camber");
    const error = await refusal(() => put(putEntryInput.parse({ ...input, ...parts })));
    expect(error.problems?.map((problem) => problem.field)).toEqual([field]);
  });

  test("shows the second of two editors of one entry what the first made of it, and lets two entries be", async () => {
    const [first, second] = [await form(2, "front.camber"), await form(2, "front.camber")];
    const elsewhere = await form(2, "front.disc.thickness", { lower: "9.5 mm" });
    await put({ ...first, upper: "0°50'" });
    const error = await refusal(() => put({ ...second, upper: "1°" }));
    expect(error).toMatchObject({
      code: "CHANGED_MEANWHILE",
      details: {
        what: "this entry",
        differences: [{ field: "upper", was: "0°45'", theirs: "0°50'", yours: "1°" }],
      },
    });
    const { version } = error.details as { readonly version: number };
    await put({ ...second, upper: "0°45'", revision: version });
    await put(elsewhere);
    const { entries } = await versionOf(2);
    const book = await ours(bookOf);
    const text = (key: string) => {
      const entry = entries.find(({ characteristic }) => characteristic === key);
      return entry ? entryText(entry, book) : blankEntry;
    };
    expect([text("front.camber").upper, text("front.disc.thickness").lower]).toEqual(["0°45'", "9.5 mm"]);
  });

  test("an entry somebody took out meanwhile is not put back by saving it", async () => {
    const input = await form(2, "front.toe");
    await ours((ctx) => removeEntry(ctx, { ...input, entry: input.entry ?? "" }));
    expect(await refusal(() => put(input))).toMatchObject({ code: "SPECIFICATION_ENTRY_NOT_FOUND" });
  });
});

describe("making a draft current", () => {
  const look = () => ours((ctx) => draftReview(ctx, { series, version: 2 }));

  test("is looked at first: what changes, and which cars' verdicts move, worked out and not written", async () => {
    const before = await world.fingerprint();
    const review = await look();
    expect(review.changes.map(({ kind, label }) => [kind, label])).toEqual([
      ["changed", "Front disc thickness"],
      ["changed", "Front camber"],
      ["removed", "Front castor"],
    ]);
    expect(review.changes[1]?.fields).toEqual([
      { label: "Upper limit", before: "0°30'", after: "0°45'" },
      { label: "Note", before: "", after: "bulletin 7" },
    ]);
    // Castor 3°30' on both sides stood inside 3° to 4°; camber left 0°40' comes inside 0°45'.
    expect(review.moves).toMatchObject({
      cars: 2,
      carsMoved: 1,
      total: 3,
      counts: [
        { before: "insideLimits", after: undefined, count: 2 },
        { before: "outsideLimits", after: "insideLimits", count: 1 },
      ],
    });
    expect(review.moves.lines.find((line) => line.characteristic === "front.camber")).toEqual({
      car: steep,
      chassis: steep,
      claim: 1,
      characteristic: "front.camber",
      label: "Front camber",
      side: "left",
      actual: "0°40'",
      specifiedBefore: "0°00' (-0°30' to 0°30')",
      specifiedAfter: "0°00' (-0°30' to 0°45')",
      before: "outsideLimits",
      after: "insideLimits",
    });
    expect(await world.fingerprint()).toEqual(before);
  });

  test("is refused without a reason, and to whoever looked at another draft or another current version", async () => {
    const { revision } = await look();
    const input = { series, version: 2, revision, current: 1, reason: "Bulletin 7" };
    const attempt = (parts: Partial<typeof input>) =>
      refusal(() => ours((ctx) => makeCurrent(ctx, { ...input, ...parts })));
    expect((await attempt({ reason: "" })).problems).toMatchObject([{ field: "reason" }]);
    expect(await attempt({ revision: revision - 1 })).toMatchObject({
      code: "SPECIFICATION_MOVED_ON",
      details: { what: "draft" },
    });
    expect(await attempt({ current: 0 })).toMatchObject({
      code: "SPECIFICATION_MOVED_ON",
      details: { what: "current" },
    });
    expect(await attempt({ version: 1 })).toMatchObject({
      code: "SPECIFICATION_NOT_DRAFT",
      details: { status: "current" },
    });
    expect(await attempt({ version: 9 })).toMatchObject({ code: "SPECIFICATION_NOT_FOUND" });
  });

  test("is refused while two entries speak of one car, each told", async () => {
    const double = await form(2, "front.disc.face");
    const { entry: _, ...again } = double;
    const { entry } = await put({ ...again, nominal: "drilled" });
    const { problems } = await ours((ctx) => specificationPage(ctx, { series, version: 2 }));
    expect(problems.map(({ code }) => code)).toEqual(["OVERLAP"]);
    const { revision } = await look();
    const error = await refusal(() =>
      ours((ctx) => makeCurrent(ctx, { series, version: 2, revision, current: 1, reason: "x" })),
    );
    expect(error).toMatchObject({ code: "SPECIFICATION_CONTRADICTS" });
    await ours((ctx) => removeEntry(ctx, { series, version: 2, revision, entry, opened: {} }));
  });

  test("supersedes the one before, moves the verdicts on cars' pages, and says so in the journal", async () => {
    const member = await world.person({ roles: ["registrar"] });
    expect([await verdict("left"), await verdict("right")]).toEqual(["outsideLimits", "insideLimits"]);
    const { revision, current } = await look();
    const moves = await openMember(world.database, member, "ours", (ctx) =>
      makeCurrent(ctx, { series, version: 2, revision, current, reason: "Bulletin 7 widens camber" }),
    );
    expect(moves).toMatchObject({ cars: 2, carsMoved: 1, total: 3 });
    expect([await verdict("left"), await verdict("right")]).toEqual(["insideLimits", "insideLimits"]);
    const kept = await world.inClub((db) =>
      db.currentValue.findFirst({ where: { characteristic: "front.camber", side: "left" } }),
    );
    expect(kept).toMatchObject({ verdict: "insideLimits" });
    expect(await ours(async (ctx) => compareCurrentValues(ctx, await bookOf(ctx)))).toEqual([]);
    const [line] = await world.inClub((db) =>
      db.journalEntry.findMany({ orderBy: { sequence: "desc" }, take: 1 }),
    );
    expect(line).toMatchObject({
      action: "specification.makeCurrent",
      personId: member.personId,
      reason: "Bulletin 7 widens camber",
      before: { version: 1 },
      after: { version: 2, cars: 2, carsMoved: 1, verdictsMoved: 3 },
    });
    const page = await ours((ctx) => specificationPage(ctx, { series }));
    expect(page.shown).toMatchObject({
      version: 2,
      status: "current",
      note: "Bulletin 7 widens camber",
      by: member.name,
    });
    expect(page.versions.map(({ version, status }) => [version, status])).toEqual([
      [2, "current"],
      [1, "superseded"],
    ]);
  });

  test("leaves nothing to change in what is current or superseded", async () => {
    for (const version of [1, 2]) {
      const [entry] = (await versionOf(version)).entries;
      if (!entry) throw new Error("no entry");
      const reference = { series, version, revision: 1, opened: {}, entry: entry.id };
      const code = { code: "SPECIFICATION_NOT_DRAFT" };
      const changed = putEntryInput.parse({ ...reference, characteristic: "front.camber", nominal: "1°" });
      expect(await refusal(() => put(changed))).toMatchObject(code);
      expect(await refusal(() => ours((ctx) => removeEntry(ctx, reference)))).toMatchObject(code);
      expect(
        await refusal(() => ours((ctx) => discardDraft(ctx, { ...reference, reason: "" }))),
      ).toMatchObject(code);
      expect(await refusal(() => ours((ctx) => draftEntry(ctx, { series, version })))).toMatchObject(code);
    }
  });
});
