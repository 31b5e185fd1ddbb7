import { openWorld, sampleChecks, type World, type WorldPerson } from "@trunnion/fixtures";
import { v7 as uuid } from "uuid";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Context } from "../context";
import { openMember } from "../gate";
import { takeInspection, takeInspectionInput } from "../inspection";
import { entryPage } from "./index";

let world: World;
let scrutineer: WorldPerson;
const NOW = "2026-05-01T09:00:00.000Z";

beforeAll(async () => {
  world = await openWorld();
  scrutineer = await world.person({ name: "Åse Ørnhøi", roles: ["scrutineer"] });
}, 180_000);
afterAll(() => world?.close());

const as = <T>(work: (ctx: Context) => Promise<T>) =>
  openMember(world.database, scrutineer, "ours", (ctx) => work({ ...ctx, now: new Date(NOW) }));

async function entered(slug: string) {
  const car = await world.car();
  const pressures = {
    ...sampleChecks[0],
    id: "pressures",
    text: "Tyre pressures, cold.",
    criterion: {
      kind: "measured",
      perCorner: true,
      characteristic: "tyres.front.pressure",
      text: "both sides are alike",
    },
  };
  const event = await world.event({
    slug,
    checks: [...sampleChecks, pressures] as never,
    entries: [{ number: "7", car }],
  });
  const [entry] = await world.inClub((db) => db.entry.findMany({ where: { eventId: event.id } }));
  return { entryId: entry?.id ?? "" };
}

const pageOf = (event: string, all?: boolean) =>
  as((ctx) => entryPage(ctx, { event, number: "7", ...(all === undefined ? {} : { all }) }));
const checkOf = (page: Awaited<ReturnType<typeof pageOf>>, id: string) =>
  page.stations.flatMap(({ checks }) => checks).find((check) => check.id === id);
const send = (event: string, batch: object) =>
  as((ctx) => takeInspection(ctx, takeInspectionInput.parse({ event, deviceNow: NOW, ...batch })));

describe("an entry's page", () => {
  test("asks a figure at each wheel where the check says so, and shows what stands with its verdict", async () => {
    const { entryId } = await entered("corners");
    const empty = checkOf(await pageOf("corners"), "pressures");
    expect(empty?.reads.map(({ key, label, entered: read }) => [key, label, read])).toEqual([
      ["front-left", "Front tyre pressure, left", ""],
      ["front-right", "Front tyre pressure, right", ""],
      ["rear-left", "Rear tyre pressure, left", ""],
      ["rear-right", "Rear tyre pressure, right", ""],
    ]);
    expect(empty?.reads[0]?.dimension).toBe("pressure");
    const readings = [
      { characteristic: "tyres.front.pressure", side: "left", entered: "28 psi" },
      { characteristic: "tyres.rear.pressure", side: "right", entered: "30 psi" },
    ];
    const one = { key: uuid(), entryId, at: NOW, check: "pressures", result: "pass", readings };
    await send("corners", { findings: [one] });
    const read = checkOf(await pageOf("corners"), "pressures")?.reads;
    expect(read?.map(({ entered: said }) => said)).toEqual(["28 psi", "", "", "30 psi"]);
    expect(read?.[0]?.verdict).not.toBe("");
  });

  test("of a car that was refused shows what was open, and everything when asked", async () => {
    const { entryId } = await entered("again");
    const at = { entryId, at: NOW };
    await send("again", {
      findings: [{ ...at, key: uuid(), check: "wheel-nuts", result: "pass" }],
      decisions: [{ ...at, key: uuid(), outcome: "refused" }],
    });
    const page = await pageOf("again");
    expect(page).toMatchObject({ again: true, passedBefore: 1 });
    expect(checkOf(page, "wheel-nuts")).toBeUndefined();
    expect(checkOf(await pageOf("again", true), "wheel-nuts")).toBeDefined();
  });
});
