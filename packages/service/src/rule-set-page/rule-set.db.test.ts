import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import { starterChecks, starterClasses } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Context } from "../context";
import { entryPage } from "../entry-page";
import { openMember } from "../gate";
import { takeInspection, takeInspectionInput } from "../inspection";
import { addRuleSet } from "../rule-set";
import {
  copyRuleSet,
  discardRuleSet,
  makeRuleSetCurrent,
  putCheck,
  putCheckInput,
  putClass,
  putLimit,
  putLimitInput,
  removeRow,
} from "../rule-set-draft";
import { carInRuleSet, listRuleSets, ruleSetPage } from "./index";

let world: World;
let scrutineer: WorldPerson;

const as = <T>(person: WorldPerson, work: (ctx: Context) => Promise<T>) =>
  openMember(world.database, person, "ours", work);
const draft = (version: number, revision: number) => ({ ruleSet: "house", version, revision });
const limit = (revision: number, lower: string) =>
  putLimitInput.parse({
    ...draft(2, revision),
    characteristic: "Front ride height",
    lower,
    sourceTitle: "House rules",
  });

beforeAll(async () => {
  world = await openWorld();
  scrutineer = await world.person({ name: "Åse Ørnhøi", roles: ["scrutineer"] });
  await as(scrutineer, (ctx) =>
    addRuleSet(ctx, {
      slug: "house",
      name: "House rules",
      edition: "2026",
      checks: starterChecks,
      classes: starterClasses,
    }),
  );
}, 180_000);
afterAll(() => world?.close());

describe("a rule set from year to year", () => {
  test("is copied into a draft, changed by form, and says what differs", async () => {
    const car = await world.car({ chassis: "M1-0009", modified: { "wheels.front.size": "6J x 14" } });
    await as(scrutineer, async (ctx) => {
      expect(await copyRuleSet(ctx, { ruleSet: "house", version: 1, edition: "2027" })).toBe(2);
      await expect(copyRuleSet(ctx, { ruleSet: "house", version: 1, edition: "2027" })).rejects.toMatchObject(
        {
          code: "RULE_SET_DRAFT_EXISTS",
        },
      );
      await putLimit(ctx, limit(1, "100 mm"));
      await expect(putLimit(ctx, limit(2, "12 bananas"))).rejects.toMatchObject({
        problems: [{ field: "lower" }],
      });
      await expect(putLimit(ctx, limit(1, "90 mm"))).rejects.toMatchObject({ code: "RULE_SET_MOVED_ON" });
      const check = putCheckInput.parse({
        ...draft(2, 2),
        was: "wheel-nuts",
        code: "wheel-nuts",
        station: "driverSide",
        assembly: "wheels",
        text: "Wheel nuts: all there.",
        criterion: "seen",
        condition: { op: "always" },
        sourceTitle: "House rules",
      });
      const { short: _, ...bare } = check;
      await expect(putCheck(ctx, { ...bare, short: "Wheel nuts: 4 at each wheel" })).rejects.toMatchObject({
        problems: [{ field: "short", message: expect.stringMatching(/would say 4, which neither text/) }],
      });
      await putCheck(ctx, check);
      await removeRow(ctx, { ...draft(2, 3), kind: "check", row: "camera-mounts" });
      await putClass(ctx, {
        ...draft(2, 4),
        was: "",
        code: "S",
        name: "Standard wheels",
        condition: { op: "verdict", characteristic: "wheels.front.size", in: ["asSpecified"] },
      });
      const page = await ruleSetPage(ctx, { ruleSet: "house", version: 2 });
      expect(page.differences.map(({ kind, what }) => `${kind}: ${what.slice(0, 40)}`)).toEqual([
        "added: Limit: Front ride height: at least 100 m",
        "added: Class S Standard wheels",
        expect.stringMatching(/^taken out: Check: Cameras/),
        expect.stringMatching(/^changed: Check: Wheel nuts/),
      ]);
      const met = await carInRuleSet(ctx, { ruleSet: "house", version: 2, car: car.reference });
      expect(met.checks.find(({ check: { id } }) => id === "limit-front-ride-height")?.why).toContain(
        "the rules ask for at least 100 mm",
      );
      const [standard] = met.classes.filter(({ code }) => code === "S");
      expect(standard?.truth).not.toBe("yes");
      await makeRuleSetCurrent(ctx, draft(2, 5));
      const statuses = (await listRuleSets(ctx)).map(({ version, status }) => [version, status]);
      expect(statuses).toEqual([
        [2, "current"],
        [1, "superseded"],
      ]);
      await expect(putLimit(ctx, limit(5, "80 mm"))).rejects.toMatchObject({ code: "RULE_SET_NOT_DRAFT" });
      expect(await copyRuleSet(ctx, { ruleSet: "house", version: 2, edition: "2028" })).toBe(3);
      await discardRuleSet(ctx, draft(3, 1));
      expect(await listRuleSets(ctx)).toHaveLength(2);
    });
  });

  test("is changed by nobody who only keeps a car", async () => {
    const owner = await world.person({ roles: ["owner"] });
    const attempt = as(owner, (ctx) => copyRuleSet(ctx, { ruleSet: "house", version: 1, edition: "2029" }));
    await expect(attempt).rejects.toMatchObject({ code: "ROLE_NEEDED" });
  });
});

describe("after scrutineering", () => {
  test("a refused car comes again with only what was open, and an advisory stands on the next event's sheet", async () => {
    const car = await world.car({ chassis: "M1-0031" });
    const entries = [{ number: "7", car }];
    const first = await world.event({ slug: "spring", on: "2026-04-11", entries });
    await world.event({ slug: "summer", on: "2026-06-13", entries });
    const [entry] = await world.inClub((db) => db.entry.findMany({ where: { eventId: first.id } }));
    const entryId = entry?.id ?? "";
    const found = (check: string, result: string, note = "") => ({
      key: uuid(),
      entryId,
      at: "2026-04-11T08:00:00.000Z",
      check,
      result,
      note,
    });
    await as(scrutineer, async (ctx) => {
      const before = await entryPage(ctx, { event: "spring", number: "7" });
      expect(before).toMatchObject({ again: false, decision: { state: "none" } });
      const codes = before.stations.flatMap(({ checks }) => checks.map(({ id }) => id));
      const findings = codes.map((code) =>
        code === "wheel-nuts" ? found(code, "refuse", "two missing") : found(code, "pass"),
      );
      const decisions = [{ key: uuid(), entryId, at: "2026-04-11T08:10:00.000Z", outcome: "refused" }];
      const deviceNow = ctx.now.toISOString();
      const sent = takeInspectionInput.parse({ event: "spring", deviceNow, findings, decisions });
      await takeInspection(ctx, sent);
      const again = await entryPage(ctx, { event: "spring", number: "7" });
      expect(again.again).toBe(true);
      expect(again.stations.flatMap(({ checks }) => checks.map(({ id }) => id))).toEqual(["wheel-nuts"]);
      expect(again.passedBefore).toBe(codes.length - 1);
      const all = await entryPage(ctx, { event: "spring", number: "7", all: true });
      expect(all.stations.flatMap(({ checks }) => checks)).toHaveLength(codes.length);

      const refusedKey = findings.find(({ check }) => check === "wheel-nuts")?.key;
      const better = { ...found("wheel-nuts", "advise", "two of another make"), replaces: [refusedKey] };
      await takeInspection(
        ctx,
        takeInspectionInput.parse({ event: "spring", deviceNow, findings: [better] }),
      );
      const next = await entryPage(ctx, { event: "summer", number: "7" });
      const [carried] = next.stations.flatMap(({ checks }) => checks);
      expect(carried).toMatchObject({
        id: "carried-wheel-nuts",
        why: "advised at Track day spring on 2026-04-11: “two of another make”",
        special: true,
      });
      const earlier = await entryPage(ctx, { event: "spring", number: "7", all: true });
      expect(earlier.stations.flatMap(({ checks }) => checks.map(({ id }) => id))).not.toContain(
        "carried-wheel-nuts",
      );
    });
  });
});
