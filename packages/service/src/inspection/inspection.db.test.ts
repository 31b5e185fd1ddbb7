import { openWorld, sampleChecks, type World, type WorldPerson } from "@trunnion/fixtures";
import { checkStandings } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { addEvidenceInput, requireMayAdd } from "../evidence/add";
import { openMember, openOperator } from "../gate";
import { devicesOf } from "../inspection-device";
import { eventPack, inspectionOf, takeInspection, takeInspectionInput } from "./index";

let world: World;
let scrutineer: WorldPerson;
let other: WorldPerson;

beforeAll(async () => {
  world = await openWorld();
  scrutineer = await world.person({ name: "Åse Ørnhøi", roles: ["scrutineer"] });
  other = await world.person({ name: "Łucja", roles: ["scrutineer"] });
}, 120_000);
afterAll(() => world?.close());

const as = <T>(person: WorldPerson, work: Parameters<typeof openMember<T>>[3]) =>
  openMember(world.database, person, "ours", work);

async function entered(slug: string, modified: Readonly<Record<string, string>> = {}) {
  const car = await world.car({ modified });
  const checks = [
    ...sampleChecks,
    {
      ...sampleChecks[0],
      id: "camber",
      text: "Measure the camber.",
      criterion: { kind: "measured", characteristic: "front.camber", text: "inside its limits" },
    },
  ] as never;
  const event = await world.event({ slug, checks, entries: [{ number: "7", car, driver: "Żaneta" }] });
  const [entry] = await world.inClub((db) => db.entry.findMany({ where: { eventId: event.id } }));
  return { car, event, entryId: entry?.id ?? "" };
}

const NOW = "2026-05-01T09:00:00.000Z";
const found = (entryId: string, more: object = {}) => ({
  key: uuid(),
  entryId,
  at: "2026-05-01T08:30:00.000Z",
  check: "wheel-nuts",
  result: "pass",
  ...more,
});
const send = (person: WorldPerson, event: string, batch: object, deviceNow = NOW) =>
  as(person, (ctx) =>
    takeInspection({ ...ctx, now: new Date(NOW) }, takeInspectionInput.parse({ event, deviceNow, ...batch })),
  );
const records = (eventId: string) => as(scrutineer, (ctx) => inspectionOf(ctx, eventId));

describe("what is taken along", () => {
  test("is every entry's sheet with its checks, what they read, and what was found so far", async () => {
    const { event, entryId } = await entered("along", { "front.disc.face": "drilled" });
    await send(scrutineer, "along", { findings: [found(entryId, { result: "advise", note: "one loose" })] });
    const pack = await as(scrutineer, (ctx) => eventPack(ctx, "along"));
    expect(pack.event.id).toBe(event.id);
    expect(pack.inspector).toBe("Åse Ørnhøi");
    const [entry] = pack.entries;
    expect(entry?.sheet.entry).toMatchObject({ runningNumber: "7", driver: "Żaneta" });
    const codes = entry?.sheet.stations.flatMap(({ checks }) => checks.map(({ id }) => id));
    expect(codes).toEqual(expect.arrayContaining(["wheel-nuts", "drilled-disc", "camber"]));
    expect(pack.characteristics.map(({ key }) => key)).toEqual(["front.camber"]);
    expect(pack.findings).toMatchObject([
      { entryId, check: "wheel-nuts", note: "one loose", by: "Åse Ørnhøi" },
    ]);
  });

  test("is refused to whoever is not to know the entrants", async () => {
    const owner = await world.person({ roles: ["owner"] });
    await entered("secret");
    await expect(as(owner, (ctx) => eventPack(ctx, "secret"))).rejects.toMatchObject({ code: "ROLE_NEEDED" });
  });
});

describe("what a device sends", () => {
  test("is taken once, however often and in whatever order it comes", async () => {
    const { event, entryId } = await entered("twice");
    const first = found(entryId, { result: "refuse" });
    const second = found(entryId, { replaces: [first.key] });
    const decision = { key: uuid(), entryId, at: NOW, outcome: "pass" };
    const all = { findings: [second, first, second], decisions: [decision] };
    const told = await send(scrutineer, "twice", all);
    expect(told.map(({ problem }) => problem)).toEqual(["", "", "", ""]);
    await Promise.all([1, 2, 3].map(() => send(scrutineer, "twice", all)));
    const { findings, decisions } = await records(event.id);
    expect(findings).toHaveLength(2);
    expect(decisions).toHaveLength(1);
    expect(checkStandings([], findings).get("wheel-nuts")).toMatchObject({ state: "found", result: "pass" });
  });

  test("by two scrutineers apart stands side by side", async () => {
    const { event, entryId } = await entered("apart");
    await send(scrutineer, "apart", { findings: [found(entryId)] });
    await send(other, "apart", { findings: [found(entryId, { result: "refuse", note: "cracked" })] });
    const { findings } = await records(event.id);
    const standing = checkStandings([], findings).get("wheel-nuts");
    expect(standing?.state).toBe("conflict");
    expect(findings.map(({ by, result }) => [by, result])).toEqual([
      ["Åse Ørnhøi", "pass"],
      ["Łucja", "refuse"],
    ]);
  });

  test("from a clock that is a year out is dated by how far it is out, and never later than now", async () => {
    const { event, entryId } = await entered("clock");
    const late = found(entryId, { at: "2027-05-01T08:45:00.000Z" });
    await send(scrutineer, "clock", { findings: [late] }, "2027-05-01T09:00:00.000Z");
    const ahead = found(entryId, { check: "harness-date", at: "2031-01-01T00:00:00.000Z" });
    await send(scrutineer, "clock", { findings: [ahead] });
    const { findings } = await records(event.id);
    expect(findings.map(({ at }) => at)).toEqual(["2026-05-01T08:45:00.000Z", NOW]);
  });

  test("keeps a reading as entered, and one that cannot be read in the note", async () => {
    const { event, entryId } = await entered("reading");
    const readings = [
      { characteristic: "front.camber", side: "left", entered: "-1°15'" },
      { characteristic: "front.camber", side: "right", entered: "about one" },
      { characteristic: "no.such", entered: "12" },
    ];
    await send(scrutineer, "reading", { findings: [found(entryId, { check: "camber", readings })] });
    const [finding] = (await records(event.id)).findings;
    expect(finding?.readings).toEqual([{ characteristic: "front.camber", side: "left", entered: "-1°15'" }]);
    expect(finding?.note).toBe("Written as Front camber, right: “about one”; no.such: “12”");
  });

  test("of an entry of another event is told, and keeps nothing else back", async () => {
    const mine = await entered("mine");
    const elsewhere = await entered("elsewhere");
    const findings = [found(elsewhere.entryId), found(mine.entryId)];
    const told = await send(scrutineer, "mine", { findings });
    expect(told.map(({ problem }) => problem === "")).toEqual([false, true]);
    expect((await records(mine.event.id)).findings).toHaveLength(1);
  });

  test("is in the journal of the car, without the note and the signature", async () => {
    const { car, entryId } = await entered("journal");
    const decision = {
      key: uuid(),
      entryId,
      at: NOW,
      outcome: "refused",
      note: "brake hose",
      signedBy: "Żaneta",
      signature: "M1 1 L2 2",
    };
    await send(scrutineer, "journal", { findings: [found(entryId)], decisions: [decision] });
    const lines = await world.inClub((db) => db.journalEntry.findMany({ where: { carId: car.id } }));
    const added = lines.filter(({ action }) => ["finding.add", "decision.add"].includes(action));
    expect(added).toHaveLength(2);
    expect(JSON.stringify(added.map(({ after }) => after))).not.toMatch(/hose|Żaneta|M1 1/);
  });

  test("is refused from whoever is no scrutineer", async () => {
    const owner = await world.person({ roles: ["owner"] });
    const { entryId } = await entered("owner");
    const attempt = send(owner, "owner", { findings: [found(entryId)] });
    await expect(attempt).rejects.toMatchObject({ code: "ROLE_NEEDED" });
    const nobody = await openOperator(world.database, "ours", (ctx) => eventPack(ctx, "owner"));
    expect(nobody.findings).toEqual([]);
  });
});

describe("a device that is heard of", () => {
  const devices = (eventId: string) => as(scrutineer, (ctx) => devicesOf(ctx, eventId));

  test("is known by name, with what it made, what it held and how far its clock is out", async () => {
    const { event, entryId } = await entered("heard");
    const device = { id: uuid(), made: 5, held: 4 };
    await send(
      scrutineer,
      "heard",
      { device, findings: [found(entryId, { at: "2027-05-01T08:30:00.000Z" })] },
      "2027-05-01T09:00:00.000Z",
    );
    const year = 365 * 86_400;
    expect(await devices(event.id)).toMatchObject([
      { id: device.id, by: "Åse Ørnhøi", heardAt: NOW, made: 5, held: 4, clockOff: year },
    ]);
    await send(scrutineer, "heard", { device: { ...device, held: 0 } });
    expect(await devices(event.id)).toMatchObject([{ held: 0, clockOff: 0 }]);
  });

  test("holds what was not taken from it, and one that holds something stands first", async () => {
    const { event } = await entered("holding");
    const elsewhere = await entered("another");
    await send(other, "holding", { device: { id: uuid(), made: 1, held: 0 } });
    await send(scrutineer, "holding", {
      device: { id: uuid(), made: 1, held: 0 },
      findings: [found(elsewhere.entryId)],
    });
    expect((await devices(event.id)).map(({ by, held }) => [by, held])).toEqual([
      ["Åse Ørnhøi", 1],
      ["Łucja", 0],
    ]);
  });
});

describe("a photo of a finding", () => {
  test("may be added by who inspects, of a car that is not on the register too", async () => {
    const event = await world.event({
      slug: "visitor",
      checks: sampleChecks as never,
      entries: [{ number: "9", describedAs: "kit car" }],
    });
    const [entry] = await world.inClub((db) => db.entry.findMany({ where: { eventId: event.id } }));
    const one = found(entry?.id ?? "");
    await send(scrutineer, "visitor", { findings: [one] });
    const asked = addEvidenceInput.parse({
      for: `finding:${one.key}`,
      caption: "",
      taken: "",
      locus: "",
      keepLocation: false,
    });
    const target = await as(scrutineer, (ctx) => requireMayAdd(ctx, asked));
    expect(target).toMatchObject({ kind: "finding", id: one.key });
    const owner = await world.person({ roles: ["owner"] });
    await expect(as(owner, (ctx) => requireMayAdd(ctx, asked))).rejects.toMatchObject({
      code: "EVIDENCE_NOT_YOURS",
    });
  });
});
