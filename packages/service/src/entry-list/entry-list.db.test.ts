import { openWorld, type World, type WorldCar, type WorldPerson } from "@trunnion/fixtures";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Context } from "../context";
import { changeEntry, enterCar } from "../entry";
import { changeEvent, entriesOf, findEvent, planEvent } from "../event";
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

  test("of 500 lines goes in whole; one more, or too many characters, is refused with the limit and enters nothing", async () => {
    const event = await world.event({ slug: "huge", entries: [] });
    const lines = (count: number) =>
      `number,car,driver\n${Array.from({ length: count }, (_, at) => `${at + 1},kit car ${at + 1},Driver ${at + 1}`).join("\n")}\n`;
    await expect(take("huge", lines(501))).rejects.toMatchObject({
      code: "ENTRY_LIST_TOO_LONG",
      details: { what: "entries", found: 501, limit: 500 },
    });
    const read = (text: string) => as(registrar, (ctx) => readEntryList(ctx, { event: "huge", text }));
    await expect(read(`${lines(2)}${"x".repeat(200_000)}`)).rejects.toMatchObject({
      code: "ENTRY_LIST_TOO_LONG",
      details: { what: "characters", limit: 200_000 },
    });
    expect(await numbers(event.id)).toEqual([]);
    expect(await take("huge", lines(500))).toBe(500);
    const entered = await numbers(event.id);
    expect([entered.length, entered[0], entered.at(-1)]).toEqual([500, "1", "500"]);
  });

  test("with a text that is too long or no text says where, cuts nothing, and goes in without that line", async () => {
    const event = await world.event({ slug: "unfit", entries: [] });
    const text = `number,car,driver\n1234567890123,kit car,Åse\n2,kit car,${"Ø".repeat(121)}\n3,kit car,Zo\u0085ë\n4,kit car,مرحبا 🚗\n`;
    const { entries } = await as(registrar, (ctx) => readEntryList(ctx, { event: "unfit", text }));
    expect(entries.map(({ remarks }) => remarks.map((one) => one.text))).toEqual([
      ["Number has 13 characters; at most 12 may stand there."],
      ["Driver has 121 characters; at most 120 may stand there."],
      ["Driver has control characters."],
      [],
    ]);
    await expect(take("unfit", text)).rejects.toMatchObject({
      problems: [{ field: "choices.2" }, { field: "choices.3" }, { field: "choices.4" }],
    });
    expect(await numbers(event.id)).toEqual([]);
    expect(await take("unfit", text, { "2": "leave", "3": "leave", "4": "leave" })).toBe(1);
    const [only] = await as(registrar, (ctx) => entriesOf(ctx, event.id));
    expect(only?.driver).toBe("مرحبا 🚗");
  });

  test("whose number two cars claim, or that is only like one, is asked with each car it may mean", async () => {
    await world.event({ slug: "doubt", entries: [] });
    await world.car({ chassis: "M1-0700" });
    await world.car({ chassis: "M1-0700", claim: 2 });
    const text = "number,car\n1,M1-0700\n2,M1-0071\n3,M1-07OO\n";
    const { entries } = await as(registrar, (ctx) => readEntryList(ctx, { event: "doubt", text }));
    expect(entries.map(({ match }) => match.state)).toEqual(["doubtful", expect.any(String), "doubtful"]);
    const [first] = entries;
    expect(
      first?.match.state === "doubtful" && first.match.candidates.map(({ reference }) => reference),
    ).toEqual(["M1-0700", "M1-0700~2"]);
    await expect(take("doubt", text, { "2": "none" })).rejects.toMatchObject({ problems: expect.any(Array) });
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
        version: 1,
        opened: {},
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

describe("two who change the same", () => {
  const code = (work: Promise<unknown>) => work.catch((error: { readonly code?: string }) => error);

  test("entry: the second is shown both, loses nothing, and may save knowingly over it", async () => {
    const { id } = await world.event({ slug: "both", entries: [] });
    const blank = { event: "both", car: "", group: "", eventClass: "" } as const;
    await as(registrar, (ctx) =>
      enterCar(ctx, { ...blank, number: "4", describedAs: "guest", driver: "Åse" }),
    );
    const [entry] = await as(registrar, (ctx) => entriesOf(ctx, id));
    const change = (version: number, said: object) =>
      as(registrar, (ctx) =>
        changeEntry(ctx, {
          ...blank,
          entry: entry?.id ?? "",
          number: "4",
          describedAs: "guest",
          driver: "Åse",
          withdrawn: "no",
          opened: {
            number: "4",
            driver: "Åse",
            describedAs: "guest",
            group: "",
            car: "",
            eventClass: "",
            withdrawn: "no",
          },
          version,
          ...said,
        }),
      );
    await change(1, { group: "A" });
    const refusal = await code(change(1, { driver: "Łucja" }));
    expect(refusal).toMatchObject({
      code: "CHANGED_MEANWHILE",
      details: { version: 2, differences: [{ field: "group", was: "", theirs: "A", yours: "" }] },
    });
    const now = () => as(registrar, async (ctx) => (await entriesOf(ctx, id))[0]);
    expect(await now()).toMatchObject({ driver: "Åse", group: "A" });
    await change(2, { driver: "Łucja", group: "A" });
    expect(await now()).toMatchObject({ driver: "Łucja", group: "A" });
  });

  test("event: the second is shown both, and nothing of his is written", async () => {
    const { ruleSetId } = await world.event({ slug: "facts", entries: [] });
    const { name, on, venue, ruleSet } = await as(registrar, (ctx) => findEvent(ctx, "facts"));
    const change = (version: number, said: object) =>
      as(registrar, (ctx) =>
        changeEvent(ctx, {
          event: "facts",
          name,
          on,
          venue,
          ruleSet: ruleSetId,
          opened: { name, on, venue, ruleSet },
          version,
          ...said,
        }),
      );
    await change(1, { venue: "Grusvik airfield" });
    expect(await code(change(1, { name: "Another name" }))).toMatchObject({
      code: "CHANGED_MEANWHILE",
      details: { differences: [{ field: "venue", was: venue, theirs: "Grusvik airfield", yours: venue }] },
    });
    expect(await as(registrar, (ctx) => findEvent(ctx, "facts"))).toMatchObject({ name, version: 2 });
  });
});
