import { openWorld, type World, type WorldCar, type WorldPerson } from "@trunnion/fixtures";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Context } from "../context";
import { changeEntry, enterCar, entriesOf, planEvent } from "../event";
import { openMember } from "../gate";
import { readEntryList, takeEntryList } from "./index";

let world: World;
let registrar: WorldPerson;
let first: WorldCar;
let second: WorldCar;

const as = <T>(person: WorldPerson, work: (ctx: Context) => Promise<T>) =>
  openMember(world.database, person, "ours", work);
const take = (event: string, text: string, choices: Record<string, string> = {}) =>
  as(registrar, (ctx) => takeEntryList(ctx, { event, text, choices }));
const numbers = async (id: string) =>
  (await as(registrar, (ctx) => entriesOf(ctx, id))).map(({ runningNumber }) => runningNumber);

beforeAll(async () => {
  world = await openWorld();
  registrar = await world.person({ name: "Ragnhild Tveitås", roles: ["registrar"] });
  [first, second] = [await world.car({ chassis: "M1-0417" }), await world.car({ chassis: "M1-0002" })];
}, 180_000);
afterAll(() => world?.close());

describe("a pasted list of entries", () => {
  test("goes in whole once its doubtful line is settled, and nothing of it before", async () => {
    const event = await world.event({ slug: "pasted", entries: [] });
    const text = "Number\tChassis\tDriver\n7\tM1-0002\tŁucja\n12\tM1-O417\tÅse\n3\tkit car, blue\tZoë\n";
    const read = await as(registrar, (ctx) => readEntryList(ctx, { event: "pasted", text }));
    expect(read.entries.map(({ match }) => match.state)).toEqual(["matched", "doubtful", "none"]);
    await expect(take("pasted", text)).rejects.toMatchObject({ problems: [{ field: "choices.3" }] });
    expect(await numbers(event.id)).toEqual([]);
    await expect(take("pasted", text, { "3": second.id })).rejects.toThrow("say which car it is");
    expect(await take("pasted", text, { "3": first.id })).toBe(3);
    const entries = await as(registrar, (ctx) => entriesOf(ctx, event.id));
    expect(entries.map(({ runningNumber, carId }) => [runningNumber, carId])).toEqual([
      ["3", null],
      ["7", second.id],
      ["12", first.id],
    ]);
    expect(entries[0]).toMatchObject({ describedAs: "kit car, blue", driver: "Zoë" });
  });

  test("that names a car twice is told so, and goes in when one line is left out", async () => {
    const event = await world.event({ slug: "car-twice", entries: [] });
    const text = "number,car\n1,M1-0417\n2,M1-0417\n";
    const read = await as(registrar, (ctx) => readEntryList(ctx, { event: "car-twice", text }));
    expect(read.entries[0]?.remarks).toMatchObject([{ kind: "carTwice" }]);
    await expect(take("car-twice", text)).rejects.toThrow("the same car twice");
    expect(await take("car-twice", text, { "3": "leave" })).toBe(1);
    await expect(take("car-twice", "number,car\n9,M1-0417\n")).rejects.toThrow(
      "entered already, as number 1",
    );
    expect(await numbers(event.id)).toEqual(["1"]);
  });

  test("keeps the driver out of the journal", async () => {
    await world.event({ slug: "quiet", entries: [] });
    await take("quiet", "number,car,driver\n1,M1-0417,Secretive Person\n");
    const lines = await world.inClub((db) => db.journalEntry.findMany());
    expect(JSON.stringify(lines.map(({ after }) => after))).not.toContain("Secretive");
  });

  test("is refused to an owner", async () => {
    const owner = await world.person({ roles: ["owner"] });
    await world.event({ slug: "mine", entries: [] });
    const attempt = as(owner, (ctx) => readEntryList(ctx, { event: "mine", text: "1,M1-0417" }));
    await expect(attempt).rejects.toMatchObject({ code: "ROLE_NEEDED" });
  });
});

describe("an entry by hand", () => {
  test("is found by number or described, changed, and withdrawn", async () => {
    const { id, ruleSetId } = await world.event({ slug: "hand", entries: [] });
    await as(registrar, async (ctx) => {
      const blank = { event: "hand", driver: "", group: "", eventClass: "" } as const;
      await enterCar(ctx, { ...blank, number: "12", car: "m1 0417", describedAs: "" });
      await enterCar(ctx, { ...blank, number: "9", car: "", describedAs: "guest" });
      await expect(
        enterCar(ctx, { ...blank, number: "13", car: "M1-0417", describedAs: "" }),
      ).rejects.toThrow("entered already, as number 12");
      await expect(enterCar(ctx, { ...blank, number: "14", car: "XX9", describedAs: "" })).rejects.toThrow(
        "no car of the register",
      );
      const [guest] = await entriesOf(ctx, id);
      await changeEntry(ctx, {
        ...blank,
        entry: guest?.id ?? "",
        number: "20",
        car: "",
        describedAs: "guest",
        withdrawn: "no",
      });
      expect((await entriesOf(ctx, id)).map(({ runningNumber }) => runningNumber)).toEqual(["12", "20"]);
      const facts = { name: "Hand again", on: "2026-08-01", venue: "Kvitnes ring", slug: "" };
      expect(await planEvent(ctx, { ...facts, ruleSet: ruleSetId })).toBe("hand-again-2026");
    });
  });
});
