import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import { Invalid } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { carForm } from "../car-form";
import type { Context } from "../context";
import { openMember } from "../gate";
import { addNote, addNoteInput, correctNote, correctNoteInput, removeNote, removeNoteInput } from ".";

let world: World;
let registrar: WorldPerson;

beforeAll(async () => {
  world = await openWorld();
  registrar = await world.person({ roles: ["registrar"] });
}, 120_000);
afterAll(() => world?.close());

const inOurs = <T>(work: (ctx: Context) => Promise<T>) => openMember(world.database, registrar, "ours", work);
const form = (car: string) => inOurs((ctx) => carForm(ctx, car));

describe("a note in a car's history", () => {
  test("is added, corrected and taken away, and what it said is in no journal", async () => {
    const car = await world.car();
    const said = { car: car.reference, on: "c. 1975", text: "Raced at the coast\nby Jóhann Vík" };
    await inOurs((ctx) => addNote(ctx, addNoteInput.parse({ ...said, version: 1 })));
    const [note] = (await form(car.reference)).notes;
    expect(note).toMatchObject({ on: "c. 1975", text: said.text });
    const corrected = { ...said, id: note?.id, on: "1976", version: 2, trust: "stated" };
    await inOurs((ctx) => correctNote(ctx, correctNoteInput.parse(corrected)));
    expect((await form(car.reference)).notes).toMatchObject([{ id: note?.id, on: "1976", trust: "stated" }]);
    await inOurs((ctx) => removeNote(ctx, removeNoteInput.parse({ ...said, id: note?.id, version: 3 })));
    expect((await form(car.reference)).notes).toEqual([]);
    const lines = await world.inClub((db) =>
      db.journalEntry.findMany({ where: { carId: car.id }, orderBy: { sequence: "asc" } }),
    );
    expect(lines.map(({ action }) => action)).toEqual(["note.add", "note.correct", "note.remove"]);
    expect(
      JSON.stringify(lines, (_, part) => (typeof part === "bigint" ? Number(part) : part)),
    ).not.toContain("Jóhann");
  });

  test("without words is refused", async () => {
    const car = await world.car();
    const input = addNoteInput.parse({ car: car.reference, version: 1, on: "", text: " \n " });
    const error = await inOurs((ctx) => addNote(ctx, input)).then(
      () => undefined,
      (caught: unknown) => caught,
    );
    expect(error).toBeInstanceOf(Invalid);
  });
});
