import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import { Invalid } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { rebuildAllCurrentValues } from "../current-value";
import { openMember } from "../gate";
import { addPartNote, addPartNoteInput, withdrawPartNote } from "../part-note";
import { carMixes, partForm, partPage, partsPage } from "../part-page";
import { addPart, addPartInput, changePart, changePartInput, withdrawPart } from ".";

let world: World;
let registrar: WorldPerson;
let owner: WorldPerson;

beforeAll(async () => {
  world = await openWorld();
  registrar = await world.person({ roles: ["registrar"] });
  owner = await world.person({ name: "Óttar Løvfall", roles: ["owner"] });
}, 120_000);
afterAll(() => world?.close());

const as = <T>(person: WorldPerson, work: (ctx: Context) => Promise<T>) =>
  openMember(world.database, person, "ours", work);
const ours = <T>(work: (ctx: Context) => Promise<T>) => as(registrar, work);

const caliper = (more: object = {}) => ({
  assembly: "brakes",
  place: "Front caliper",
  name: "Front caliper",
  kind: "donor",
  origin: "van",
  fits: [{ series: "mark-1", standing: "original" }],
  features: [{ about: "Front caliper bolt thread", value: "M12x1.25", tells: "yes" }],
  ...more,
});
const add = (more?: object) => ours((ctx) => addPart(ctx, addPartInput.parse(caliper(more))));
const note = (more: object) =>
  addPartNoteInput.parse({
    part: "",
    on: "2026-05-01",
    kind: "found",
    clientKey: crypto.randomUUID(),
    ...more,
  });

/** What an attempt is refused with; nothing may have been written. */
async function refusal(attempt: () => Promise<unknown>) {
  const before = await world.fingerprint();
  const error: unknown = await attempt().then(
    () => undefined,
    (reason: unknown) => reason,
  );
  expect(await world.fingerprint()).toEqual(before);
  if (error instanceof Invalid) return error.problems.map(({ field }) => field);
  return (error as { readonly code?: string }).code;
}

describe("a part", () => {
  test("is put on the list, changed, and what changed is in the journal", async () => {
    const slug = await add({ name: "Caliper, early" });
    expect(slug).toBe("caliper-early");
    expect(await add({ name: "Caliper, early" })).toBe("caliper-early-van");
    expect(await add({ name: "Caliper, early" })).toBe("caliper-early-2");
    const { part, opened } = await ours((ctx) => partForm(ctx, slug));
    const form = { ...caliper({ name: "Caliper, early", partNumber: "V 12" }), part: slug, opened };
    const wanted = changePartInput.parse({ ...form, version: part?.version });
    await ours((ctx) => changePart(ctx, wanted));
    const lines = await world.inClub((db) =>
      db.journalEntry.findMany({ where: { nounId: part?.id ?? "" }, orderBy: { sequence: "asc" } }),
    );
    expect(lines.map(({ action, after }) => [action, (after as { partNumber?: string }).partNumber])).toEqual(
      [
        ["part.add", ""],
        ["part.change", "V 12"],
      ],
    );
    expect(await refusal(() => ours((ctx) => changePart(ctx, { ...wanted, partNumber: "V 13" })))).toBe(
      "CHANGED_MEANWHILE",
    );
  });

  test("saved without a change writes nothing", async () => {
    const slug = await add({ name: "As it is" });
    const { part, opened } = await ours((ctx) => partForm(ctx, slug));
    const before = await world.fingerprint();
    const same = changePartInput.parse({
      ...caliper({ name: "As it is" }),
      part: slug,
      opened,
      version: part?.version,
    });
    await ours((ctx) => changePart(ctx, same));
    expect(await world.fingerprint()).toEqual(before);
  });

  test.each([
    [
      "a thread that is none",
      { features: [{ about: "Front caliper bolt thread", value: "M12x9" }] },
      ["features.0.value"],
    ],
    ["a series of nobody", { fits: [{ series: "mark-9", standing: "fits" }] }, ["fits.0.series"]],
    [
      "a serial past the last",
      { fits: [{ series: "mark-1", standing: "fits", serialTo: "999" }] },
      ["fits.0.serialTo"],
    ],
  ])("with %s is refused at its field", async (_, more, fields) => {
    expect(await refusal(() => add(more))).toEqual(fields);
  });

  test("is no owner's to add, change or take off", async () => {
    const slug = await add({ name: "Kept" });
    const input = addPartInput.parse(caliper());
    expect(await refusal(() => as(owner, (ctx) => addPart(ctx, input)))).toBe("ROLE_NEEDED");
    expect(await refusal(() => as(owner, (ctx) => withdrawPart(ctx, { part: slug, reason: "x" })))).toBe(
      "ROLE_NEEDED",
    );
  });

  test("taken off the list is not found again, and stays in the database", async () => {
    const slug = await add({ name: "Gone" });
    await ours((ctx) => withdrawPart(ctx, { part: slug, reason: "the same as another" }));
    expect(await refusal(() => ours((ctx) => partPage(ctx, slug)))).toBe("PART_NOT_FOUND");
    expect(await world.inClub((db) => db.part.count({ where: { slug } }))).toBe(1);
  });

  test("is narrowed to by assembly and series", async () => {
    await add({ name: "A windscreen", assembly: "body", place: "Windscreen", features: [], fits: [] });
    const body = await ours((ctx) => partsPage(ctx, { assembly: "body" }));
    expect(body.needs.map(({ part }) => part.name)).toEqual(["A windscreen"]);
    const series = await ours((ctx) => partsPage(ctx, { assembly: "body", series: "mark-1" }));
    expect(series.needs).toEqual([]);
  });

  test("of another club is nobody's here", async () => {
    const slug = await add({ name: "Ours alone" });
    const theirs = await world.person({ club: world.theirs, roles: ["registrar"] });
    const attempt = () => openMember(world.database, theirs, "theirs", (ctx) => partPage(ctx, slug));
    expect(await refusal(attempt)).toBe("PART_NOT_FOUND");
  });
});

describe("a dated note", () => {
  test("by any member tells where a part was last found; sent five times it is one; what it says is in no journal", async () => {
    const slug = await add({ name: "Noted" });
    const found = note({ part: slug, text: "At the yard of Jóhann Vík", count: "2" });
    for (let sent = 0; sent < 5; sent += 1) await as(owner, (ctx) => addPartNote(ctx, found));
    const { notes, need } = await ours((ctx) => partPage(ctx, slug));
    expect(notes).toMatchObject([{ on: "2026-05-01", by: "Óttar Løvfall", count: 2, mayWithdraw: true }]);
    expect(need.scarcity).toMatchObject({ lastFound: "2026-05-01", foundLately: 2 });
    const lines = await world.inClub((db) => db.journalEntry.findMany({ where: { action: "partNote.add" } }));
    expect(JSON.stringify(lines.map(({ after }) => after))).not.toContain("Jóhann");
  });

  test.each([
    ["of a day to come", { on: "2126-01-01" }, ["on"]],
    ["counting what was not found", { kind: "notFound", count: "3" }, ["count"]],
    ["on a car nobody knows", { car: "M9-999" }, ["car"]],
  ])("%s is refused at its field", async (_, more, fields) => {
    const slug = await add({ name: "Refused note" });
    expect(await refusal(() => as(owner, (ctx) => addPartNote(ctx, note({ part: slug, ...more }))))).toEqual(
      fields,
    );
  });

  test("is taken back by whoever made it, or who keeps the list", async () => {
    const slug = await add({ name: "Taken back" });
    await ours((ctx) => addPartNote(ctx, note({ part: slug })));
    const [mine] = (await as(owner, (ctx) => partPage(ctx, slug))).notes;
    expect(mine?.mayWithdraw).toBe(false);
    const input = { part: slug, note: mine?.id ?? "" };
    expect(await refusal(() => as(owner, (ctx) => withdrawPartNote(ctx, input)))).toBe("ROLE_NEEDED");
    await ours((ctx) => withdrawPartNote(ctx, input));
    expect((await ours((ctx) => partPage(ctx, slug))).notes).toEqual([]);
  });
});

describe("what must not be mixed", () => {
  test("is told on both parts, with the cars that are recorded with both, and on the car", async () => {
    const upright = await add({
      assembly: "frontSuspension",
      place: "Front upright",
      name: "Early upright",
      features: [
        { about: "Front disc diameter", value: "9 1/2 in", tells: "yes" },
        { about: "Front caliper bolt thread", value: "7/16-20 UNF" },
      ],
    });
    const car = await world.car({
      chassis: "M1-030",
      modified: { "front.caliper.boltThread": "M12x1.25", "front.disc.diameter": "9 1/2 in" },
    });
    await ours(async (ctx) => rebuildAllCurrentValues(ctx, await bookOf(ctx)));
    const { mismatches } = await ours((ctx) => partPage(ctx, upright));
    const early = mismatches.find(({ part }) => part.slug === "caliper-early");
    expect(early?.cars).toEqual([{ reference: car.reference, chassis: "M1-030" }]);
    expect(early?.warnings[0]).toMatch(/does not hold: never mix them/);
    const mixes = await ours((ctx) => carMixes(ctx, car.reference));
    expect(mixes.some(({ kind, text }) => kind === "mixed" && text.includes("Early upright"))).toBe(true);
  });
});
