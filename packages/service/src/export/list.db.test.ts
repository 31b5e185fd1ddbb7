import { readFile } from "node:fs/promises";
import { buffer, text } from "node:stream/consumers";
import type { Role } from "@trunnion/db";
import { openWorld, type World } from "@trunnion/fixtures";
import { parse } from "csv-parse/sync";
import { readXlsx } from "hucre/xlsx";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import { rebuildAllCurrentValues } from "../current-value";
import { openMember, openOperator } from "../gate";
import { importRegister } from "../import-run";
import { writeJournal } from "../journal";
import { registerList } from "../register-list";
import { type ListFileInput, listFile } from "./index";

let world: World;
const event = "day-1";

beforeAll(async () => {
  world = await openWorld();
  const car = await world.car({
    chassis: "M1-001",
    built: "c. 1971",
    status: "inUse",
    options: ["OD", "H"],
    registration: "=BRÅ 1",
    engine: "@77",
    keeper: { name: "Tõnu Bråtvær" },
    read: { "front.camber": "-0°45'" },
  });
  await world.car({ chassis: "M1-002" });
  await world.car({ chassis: "M1-001", claim: 2 });
  await world.car({ chassis: "M1-009", club: world.theirs });
  await world.event({
    slug: event,
    entries: [
      { number: "7", car, driver: "Åse, “the hat”" },
      { number: "8", describedAs: "+spare" },
    ],
  });
  await openOperator(world.database, "ours", async (ctx) => {
    await rebuildAllCurrentValues(ctx, await bookOf(ctx));
    for (let count = 0; count < 120; count++) {
      await writeJournal(ctx, [
        { action: "car.change", noun: "car", nounId: car.id, carId: car.id, reason: `reason ${count}` },
      ]);
    }
  });
}, 120_000);
afterAll(() => world?.close());

async function fileOf(
  input: Omit<ListFileInput, "personalData"> & { personalData?: boolean },
  role: Role = "registrar",
) {
  const member = await world.person({ roles: [role] });
  const file = await openMember(world.database, member, "ours", (ctx) =>
    listFile(world.database, ctx, { personalData: false, ...input }),
  );
  return { ...file, content: await buffer(file.open()) };
}

async function csvOf(input: Parameters<typeof fileOf>[0], role: Role = "registrar") {
  const { content } = await fileOf(input, role);
  return parse(content, { bom: true }) as string[][];
}

describe("the list of cars", () => {
  test("is CSV in UTF-8 with a mark, every car of the club by its number, formulas made harmless", async () => {
    const { content, name, bytes, mediaType } = await fileOf({ list: "cars", format: "csv" });
    expect([...content.subarray(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
    expect(name).toBe("ours-cars.csv");
    expect(mediaType).toContain("text/csv; charset=utf-8");
    expect(content).toHaveLength(bytes);
    const [headings = [], ...rows] = parse(content, { bom: true }) as string[][];
    const cell = (row: number, heading: string) => rows[row]?.[headings.indexOf(heading)];
    expect(rows.map((row) => row.slice(0, 3))).toEqual([
      ["M1-001", "1", "mark-1"],
      ["M1-001", "2", "mark-1"],
      ["M1-002", "1", "mark-1"],
    ]);
    expect(cell(0, "Registration")).toBe("'=BRÅ 1");
    expect(cell(0, "Engine no")).toBe("'@77");
    expect(cell(0, "Options")).toBe("H OD");
    expect(cell(0, "Built")).toBe("c. 1971");
    expect(cell(0, "Characteristics that differ from factory")).toBe("2");
    expect(headings).not.toContain("Keeper");
  });

  test.each(["csv", "xlsx"] as const)(
    "as %s, read in again, changes nothing and leaves out what follows from the record",
    async (format) => {
      const { content, name } = await fileOf({ list: "cars", format, personalData: true });
      const report = await openOperator(world.database, "ours", async (ctx) =>
        importRegister(ctx, {
          file: name,
          bytes: content,
          book: await bookOf(ctx),
          asOf: ctx.today,
          dryRun: true,
        }),
      );
      expect(report).toMatchObject({
        rowsRead: 3,
        refusedRows: [],
        carsAdded: 0,
        carsChanged: 0,
        carsUnchanged: 3,
        unknownHeadings: [],
        derivedHeadings: ["Characteristics that differ from factory", "Characteristics compared"],
      });
    },
  );

  test("is plain CSV on request, without the mark", async () => {
    const { content } = await fileOf({ list: "cars", format: "csv-plain" });
    expect(content.toString()).toMatch(/^Chassis,Claim,/);
  });

  test("holds what was searched for", async () => {
    expect(await csvOf({ list: "cars", format: "csv", search: "M1002" })).toHaveLength(2);
    expect(await csvOf({ list: "cars", format: "csv", series: "mark-9" })).toHaveLength(1);
  });

  test("has the keepers for those who may see them, where asked for", async () => {
    const [headings = [], first = []] = await csvOf({ list: "cars", format: "csv", personalData: true });
    expect(first[headings.indexOf("Keeper")]).toBe("Tõnu Bråtvær");
  });

  test.each(["owner", "scrutineer"] as const)(
    "refuses the keepers to a member who is only %s",
    async (role) => {
      const asked = fileOf({ list: "cars", format: "csv", personalData: true }, role);
      await expect(asked).rejects.toMatchObject({ code: "ROLE_NEEDED" });
      expect(await csvOf({ list: "cars", format: "csv" }, role)).toHaveLength(4);
    },
  );

  test("is a workbook whose numbers are numbers and whose texts no formulas", async () => {
    const { content, name } = await fileOf({ list: "cars", format: "xlsx" });
    expect(name).toBe("ours-cars.xlsx");
    const { sheets } = await readXlsx(content);
    const [headings = [], first = []] = sheets[0]?.rows ?? [];
    expect(sheets[0]?.name).toBe("Register of cars");
    expect(first[headings.indexOf("Claim")]).toBe(1);
    expect(first[headings.indexOf("Registration")]).toBe("'=BRÅ 1");
    expect(sheets[0]?.rows).toHaveLength(4);
  });
});

describe("the state of a car", () => {
  test("has every characteristic with what the car has and how it stands; the number in SI", async () => {
    const [headings = [], ...rows] = await csvOf({ list: "state", format: "csv", car: "M1-001" });
    const camber = rows.find((row) => row[headings.indexOf("Key")] === "front.camber");
    const cell = (heading: string) => camber?.[headings.indexOf(heading)];
    expect(cell("On the car")).toBe("'-0°45'");
    expect(cell("Against factory")).toBe("outside limits");
    // 45 minutes of arc in radians: 0.75 · π / 180.
    expect(Number(cell("Number [SI]"))).toBeCloseTo(-0.0130899694, 9);
  });

  test("is of one car, which has to be said and there", async () => {
    await expect(fileOf({ list: "state", format: "csv" })).rejects.toMatchObject({ code: "LIST_NEEDS" });
    await expect(fileOf({ list: "state", format: "csv", car: "M1-009" })).rejects.toMatchObject({
      code: "CAR_NOT_FOUND",
    });
  });
});

describe("the journal as a list", () => {
  test("has every entry, page after page, without who it was unless asked for", async () => {
    const [headings = [], ...rows] = await csvOf({ list: "journal", format: "csv", car: "M1-001" });
    expect(rows).toHaveLength(120);
    expect(new Set(rows.map((row) => row[headings.indexOf("Why")])).size).toBe(120);
    expect(headings).not.toContain("Who");
    const [more = []] = await csvOf({ list: "journal", format: "csv", personalData: true });
    expect(more).toContain("Who");
  });
});

describe("the entries of an event", () => {
  test("have drivers for those who print sheets, and nobody else", async () => {
    const asked = { list: "entries", format: "csv", event, personalData: true } as const;
    const [headings = [], ...rows] = await csvOf(asked, "scrutineer");
    expect(rows.map((row) => row[headings.indexOf("Driver")])).toEqual(["Åse, “the hat”", ""]);
    expect(rows[1]?.[headings.indexOf("Described as")]).toBe("'+spare");
    await expect(fileOf(asked, "owner")).rejects.toMatchObject({ code: "ROLE_NEEDED" });
  });
});

describe("the cars as found", () => {
  test("has the columns chosen, in their order, the order of the page and the cars of its filter", async () => {
    const condition = { op: "series" as const, in: ["mark-1"] };
    const columns = ["body.colour", "front.camber", "no.such.thing"];
    const asked = { list: "found", format: "csv" as const, condition, columns, order: "differing" as const };
    const [headings, ...rows] = await csvOf(asked, "owner");
    expect(headings).toEqual([
      "Chassis",
      "Claim",
      "Series",
      "Built",
      "Colour",
      "Registration",
      "Status",
      "Body colour",
      "Front camber",
      "Characteristics that differ from factory",
      "Characteristics compared",
    ]);
    const page = await openOperator(world.database, "ours", (ctx) =>
      registerList(ctx, { condition, columns, order: "differing" }),
    );
    expect(rows.map(([chassis, claim]) => [chassis, claim])).toEqual(
      page.cars.map(({ chassis, claim }) => [chassis, String(claim)]),
    );
    expect(rows.find(([chassis, claim]) => chassis === "M1-001" && claim === "1")?.[8]).toBe("'-0°45'");
  });

  test("goes on beyond what is read at once, in the order of every page", async () => {
    await world.inClub(async (db) => {
      const many = Array.from({ length: 1_100 }, (_, index) => `M1-${2_000 + index}`);
      await db.car.createMany({
        data: many.map((chassis) => ({ chassis, chassisKey: chassis.replace("-", "") })),
      });
    });
    for (const order of ["chassis", "built", "differing"] as const) {
      const rows = await csvOf({ list: "found", format: "csv", search: "M12", order });
      const found = rows.slice(1).map(([chassis = ""]) => chassis);
      expect(found.length).toBeGreaterThan(900);
      expect(new Set(found).size).toBe(found.length);
      expect(found).toEqual(found.toSorted());
    }
  });

  test("has no personal data, whoever asks", async () => {
    const [headings = []] = await csvOf({ list: "found", format: "csv", personalData: true });
    expect(headings.join()).not.toContain("Keeper");
  });
});

test("a list that is none is refused with those there are", async () => {
  await expect(fileOf({ list: "keepers", format: "csv" })).rejects.toMatchObject({
    code: "LIST_UNKNOWN",
    details: { known: ["cars", "found", "state", "journal", "entries"] },
  });
});

test("a file that was sent is not left lying about", async () => {
  const member = await world.person({ roles: ["registrar"] });
  const file = await openMember(world.database, member, "ours", (ctx) =>
    listFile(world.database, ctx, { list: "cars", format: "csv", personalData: false }),
  );
  const stream = file.open() as ReturnType<typeof file.open> & { readonly path: string };
  const { path } = stream;
  await text(stream);
  await expect
    .poll(() =>
      readFile(path).then(
        () => "there",
        () => "gone",
      ),
    )
    .toBe("gone");
});
