import type { Role } from "@trunnion/db";
import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import type { Condition } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Context } from "../context";
import { openMember, openOperator } from "../gate";
import { changeFilter, filterNamed, listFilters, removeFilter, saveFilter, saveFilterInput } from "./index";

let world: World;
const condition: Condition = { op: "recorded", characteristic: "front.camber" };
const other: Condition = { op: "status", in: ["inUse"] };

beforeAll(async () => {
  world = await openWorld();
}, 120_000);
afterAll(() => world?.close());

const somebody = (role: Role = "owner") => world.person({ roles: [role] });
const as = <T>(person: WorldPerson, work: (ctx: Context) => Promise<T>) =>
  openMember(world.database, person, "ours", work);
const save = (
  person: WorldPerson,
  name: string,
  more: { shared?: "yes" | "no"; replace?: "yes" | "no" } = {},
) => as(person, (ctx) => saveFilter(ctx, { name, condition, shared: "no", replace: "no", ...more }));
const namesOf = (person: WorldPerson) =>
  as(person, async (ctx) =>
    (await listFilters(ctx)).map(({ name, own }) => `${name}${own ? "" : " (shared)"}`),
  );
const journalled = () => world.inClub((db) => db.journalEntry.count({ where: { noun: "savedFilter" } }));

describe("a saved filter", () => {
  test("is its owner's alone until it is shared, and then the whole club's, own ones first", async () => {
    const [anna, bo] = [await somebody(), await somebody()];
    const kept = await save(anna, "Zebra bars");
    await save(anna, "Anna's own");
    expect(await namesOf(anna)).toEqual(["Anna's own", "Zebra bars"]);
    expect(await namesOf(bo)).toEqual([]);
    await as(anna, (ctx) => changeFilter(ctx, { id: kept.id, name: "Zebra bars", shared: "yes" }));
    await save(bo, "Bo's");
    expect(await namesOf(bo)).toEqual(["Bo's", "Zebra bars (shared)"]);
    expect(await as(bo, (ctx) => filterNamed(ctx, "ZEBRA BARS"))).toMatchObject({
      condition,
      own: false,
      mayChange: false,
    });
  });

  test("of a name that is had already is refused, and replaced only on request", async () => {
    const anna = await somebody();
    await save(anna, "Stiff rear");
    const before = await world.fingerprint();
    await expect(save(anna, "STIFF  rear".replace("  ", " "))).rejects.toMatchObject({
      code: "FILTER_NAME_TAKEN",
    });
    expect(await world.fingerprint()).toEqual(before);
    const replaced = await as(anna, (ctx) =>
      saveFilter(ctx, { name: "Stiff Rear", condition: other, shared: "no", replace: "yes" }),
    );
    expect(replaced.condition).toEqual(other);
    expect(await namesOf(anna)).toEqual(["Stiff Rear", "Zebra bars (shared)"]);
  });

  test("may have the name of another's own, but not of another that is shared when it is shared itself", async () => {
    const [anna, bo] = [await somebody(), await somebody()];
    await save(anna, "Same name", { shared: "yes" });
    const own = await save(bo, "Same name");
    expect(await as(bo, (ctx) => filterNamed(ctx, "Same name"))).toMatchObject({ id: own.id, own: true });
    await expect(
      as(bo, (ctx) => changeFilter(ctx, { id: own.id, name: "Same name", shared: "yes" })),
    ).rejects.toMatchObject({ code: "FILTER_NAME_TAKEN" });
  });

  test("is shared once of a name, even by two at the same moment", async () => {
    const people = await Promise.all([somebody(), somebody(), somebody()]);
    const tries = await Promise.allSettled(
      people.map((person) => save(person, "At once", { shared: "yes" })),
    );
    expect(tries.filter(({ status }) => status === "fulfilled")).toHaveLength(1);
    for (const one of tries) {
      if (one.status === "rejected") expect(one.reason).toMatchObject({ code: "FILTER_NAME_TAKEN" });
    }
  });

  test("of another is changed and taken away by a registrar, where it is shared, and by nobody else", async () => {
    const [anna, bo, registrar] = [await somebody(), await somebody(), await somebody("registrar")];
    const shared = await save(anna, "Anna's shared", { shared: "yes" });
    const kept = await save(anna, "Anna's kept");
    const before = await world.fingerprint();
    await expect(as(bo, (ctx) => removeFilter(ctx, shared.id))).rejects.toMatchObject({
      code: "FILTER_OF_ANOTHER",
    });
    await expect(as(registrar, (ctx) => removeFilter(ctx, kept.id))).rejects.toMatchObject({
      code: "FILTER_NOT_FOUND",
    });
    expect(await world.fingerprint()).toEqual(before);
    await as(registrar, (ctx) => removeFilter(ctx, shared.id));
    expect(await namesOf(anna)).not.toContain("Anna's shared");
  });

  test("stands in the journal where the club sees it, and not where only its owner does", async () => {
    const anna = await somebody();
    const before = await journalled();
    const kept = await save(anna, "Quiet");
    await as(anna, (ctx) => changeFilter(ctx, { id: kept.id, name: "Still quiet", shared: "no" }));
    expect(await journalled()).toBe(before);
    await as(anna, (ctx) => changeFilter(ctx, { id: kept.id, name: "Loud", shared: "yes" }));
    await as(anna, (ctx) => changeFilter(ctx, { id: kept.id, name: "Loud", shared: "no" }));
    await as(anna, (ctx) => removeFilter(ctx, kept.id));
    expect(await journalled()).toBe(before + 2);
  });

  test("is nobody's on the command line", async () => {
    const asked = openOperator(world.database, "ours", (ctx) =>
      saveFilter(ctx, { name: "x", condition, shared: "no", replace: "no" }),
    );
    await expect(asked).rejects.toMatchObject({ code: "NOT_SIGNED_IN" });
  });

  test("of another club is not to be found", async () => {
    const stranger = await world.person({ roles: ["registrar"], club: world.theirs });
    const found = await openMember(world.database, stranger, "theirs", listFilters);
    expect(found).toEqual([]);
  });
});

describe("what a filter is saved with", () => {
  test.each([
    [{ name: "  " }],
    [{ name: "x".repeat(61) }],
    [{ name: "a\u0000b" }],
    [{ condition: { op: "sometimes" } }],
    [{ shared: true }],
  ])("%j is refused", (wrong) => {
    expect(saveFilterInput.safeParse({ name: "x", condition, ...wrong }).success).toBe(false);
  });
});
