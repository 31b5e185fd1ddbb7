import { openWorld, type World } from "@trunnion/fixtures";
import { foldText } from "@trunnion/register";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Context } from "./context";
import { openOperator } from "./gate";

let world: World;

beforeAll(async () => {
  world = await openWorld();
}, 120_000);
afterAll(() => world?.close());

const inClub = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "ours", work);

describe("the folding of texts", () => {
  test("is the same in the database as in the program, for every character there is", () =>
    inClub(async (ctx) => {
      const characters: string[] = [];
      for (let code = 1; code <= 0x10ffff; code += 1) {
        const character = String.fromCodePoint(code);
        if (!/[\p{Cn}\p{Cs}]/u.test(character)) characters.push(character);
      }
      const rows = await ctx.db.$queryRaw<{ character: string; folded: string }[]>`
        SELECT one AS character, folded_text(one) AS folded FROM unnest(${characters}::text[]) AS t(one)
        WHERE unicode_assigned(one)`;
      expect(rows.length).toBeGreaterThan(140_000);
      const differing = rows.filter(({ character, folded }) => foldText(character) !== folded);
      expect(differing.map(({ character }) => character.codePointAt(0)?.toString(16))).toEqual([]);
    }));

  test("is the same for texts", () =>
    inClub(async (ctx) => {
      const texts = fc
        .sample(fc.string({ unit: "grapheme", maxLength: 40 }), { numRuns: 500 })
        .filter((one) => !one.includes("\0"));
      const rows = await ctx.db.$queryRaw<{ folded: string }[]>`
        SELECT folded_text(one) AS folded FROM unnest(${texts}::text[]) WITH ORDINALITY AS t(one, place) ORDER BY place`;
      expect(rows.map(({ folded }) => folded)).toEqual(texts.map(foldText));
    }));
});
