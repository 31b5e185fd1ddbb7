import { openWorld, sampleSpecification, type World } from "@trunnion/fixtures";
import { checkSpecification } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import { openOperator } from "../gate";
import { addSpecification, currentSpecifications, type SpecificationLine } from "./index";

let world: World;

beforeAll(async () => {
  world = await openWorld();
}, 120_000);
afterAll(() => world?.close());

function add(lines: readonly SpecificationLine[]) {
  return openOperator(world.database, "ours", async (ctx) =>
    addSpecification(ctx, {
      seriesId: world.ours.seriesId,
      source: { title: "Workshop manual, supplement", kind: "publication", edition: "1974" },
      lines,
      book: await bookOf(ctx),
    }),
  );
}

const current = () =>
  openOperator(world.database, "ours", async (ctx) => {
    const map = await currentSpecifications(ctx, [world.ours.seriesId]);
    return { specification: map.get(world.ours.seriesId), book: await bookOf(ctx) };
  });

describe("a specification", () => {
  test("is read back as it was written: values, limits, alternatives, spans and sources", async () => {
    const { specification, book } = await current();
    expect(specification?.version).toBe(1);
    expect(specification?.entries).toHaveLength(sampleSpecification.length);
    expect(checkSpecification({ entries: specification?.entries ?? [] }, book)).toEqual([]);
    const camber = specification?.entries.find(({ characteristic }) => characteristic === "front.camber");
    expect(camber).toMatchObject({ nominal: { kind: "quantity", entered: "0°00'" }, applicability: {} });
    expect(camber?.limits?.lower).toBeCloseTo(-Math.PI / 360, 12);
    expect(camber?.limits?.upper).toBeCloseTo(Math.PI / 360, 12);
    const thickness = specification?.entries.find(
      ({ characteristic }) => characteristic === "front.disc.thickness",
    );
    expect(thickness?.limits).toEqual({ lower: 0.009 });
    expect(thickness).not.toHaveProperty("nominal");
    const spans = specification?.entries.filter(
      ({ characteristic }) => characteristic === "front.disc.diameter",
    );
    expect(spans?.map(({ applicability }) => applicability)).toEqual([{ serialTo: 60 }, { serialFrom: 61 }]);
    const bar = specification?.entries.find(
      ({ characteristic }) => characteristic === "front.antiRollBar.diameter",
    );
    expect(bar?.source).toEqual({ title: "Mark 1 workshop manual", trust: "documented", locus: "section A" });
    expect(bar?.alternatives).toMatchObject([{ role: "periodOption", value: { entered: "5/8 in" } }]);
  });

  test("that contradicts itself is refused with every line that is wrong, and nothing is written", async () => {
    const before = await world.fingerprint();
    const attempt = add([
      { characteristic: "front.camber", nominal: "steep" },
      { characteristic: "front.disc.face", nominal: "corrugated" },
      { characteristic: "front.wings", nominal: "2" },
      { characteristic: "front.castor", nominal: "3°", lower: "4°", upper: "2°" },
      { characteristic: "front.lowerArm.bush", nominal: "rubber" },
      { characteristic: "front.lowerArm.bush", nominal: "bronze" },
    ]);
    const error = await attempt.catch((reason: unknown) => reason);
    expect(error).toMatchObject({ code: "SPECIFICATION_CONTRADICTS" });
    const { problems } = (error as { readonly details: { readonly problems: readonly string[] } }).details;
    for (const told of [/"steep"/, /"corrugated"/, /front\.wings/, /[Cc]astor/, /lower arm bush/]) {
      expect(problems.some((problem) => told.test(problem))).toBe(true);
    }
    expect(await world.fingerprint()).toEqual(before);
  });

  test("takes the place of the one before, which is kept", async () => {
    await add([{ characteristic: "front.disc.face", nominal: "grooved", trust: "stated", locus: "p. 3" }]);
    const { specification } = await current();
    expect(specification).toMatchObject({
      version: 2,
      entries: [{ characteristic: "front.disc.face", source: { trust: "stated", locus: "p. 3" } }],
    });
    const all = await world.inClub((db) => db.specification.findMany({ orderBy: { version: "asc" } }));
    expect(all.map(({ version, status }) => [version, status])).toEqual([
      [1, "superseded"],
      [2, "current"],
    ]);
    expect(
      all.map(({ madeCurrentAt, supersededAt }) => [madeCurrentAt !== null, supersededAt !== null]),
    ).toEqual([
      // The world writes its first version straight in.
      [false, true],
      [true, false],
    ]);
    const lines = await world.inClub((db) => db.journalEntry.findMany({ orderBy: { sequence: "asc" } }));
    expect(lines.map(({ action }) => action)).toEqual(["source.add", "specification.add"]);
    expect(lines[1]).toMatchObject({ after: { version: 2, entries: 1, cars: 0, verdictsMoved: 0 } });
  });
});
