import { openWorld, type World, type WorldCar, type WorldPerson } from "@trunnion/fixtures";
import { type EvidenceTarget, evidenceTargetReference, Refusal } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Context } from "../context";
import { openMember } from "../gate";
import { prepareFile } from "../media";
import { samplePicture } from "../media/sample/picture";
import {
  addEvidence,
  addEvidenceInput,
  correctEvidence,
  evidenceFile,
  evidenceOf,
  evidencePiece,
  linkEvidence,
  restoreEvidence,
  type StoredFile,
  turnEvidence,
  unlinkEvidence,
  withdrawEvidence,
} from "./index";

let world: World;
let registrar: WorldPerson;
let keeper: WorldPerson;
let car: WorldCar;
let other: WorldCar;

beforeAll(async () => {
  world = await openWorld();
  registrar = await world.person({ roles: ["registrar"] });
  keeper = await world.person({ roles: ["owner"] });
  car = await world.car({
    chassis: "M1-001",
    engine: "KV-1",
    status: "laidUp",
    keeper: { name: "Tõnu Bråtvær", membershipId: keeper.membershipId },
    asBuilt: { "rear.antiRollBar.diameter": "16 mm" },
    modified: { "front.antiRollBar.diameter": "20 mm" },
    read: { "front.camber": "-0°20'" },
  });
  other = await world.car({ chassis: "M1-002" });
}, 180_000);
afterAll(() => world?.close());

const as = <T>(person: WorldPerson, work: (ctx: Context) => Promise<T>, club = world.ours) =>
  openMember(world.database, person, club.slug, work);

let seed = 100;

/** A picture nobody has added yet, as the store has it. */
async function keptFile(more: Partial<StoredFile> = {}): Promise<StoredFile> {
  const content = await samplePicture("jpeg", { seed: ++seed });
  const {
    content: kept,
    preview: _,
    ...file
  } = await prepareFile({ name: "Tõnu's bar.jpg", content, keepLocation: false });
  return { ...file, bytes: kept.length, ...more };
}

const carTarget = (one: WorldCar = car): EvidenceTarget => ({ kind: "car", id: one.id });

function input(target: EvidenceTarget = carTarget(), more: object = {}) {
  const said = { caption: "", taken: "", locus: "", keepLocation: false };
  return addEvidenceInput.parse({ for: evidenceTargetReference(target), ...said, ...more });
}

async function add(person = registrar, target = carTarget(), more: object = {}): Promise<string> {
  const file = await keptFile();
  const [piece] = await as(person, (ctx) => addEvidence(ctx, input(target, more), [file]));
  return piece?.evidence ?? "";
}

/** The code of the refusal, with proof that nothing was written. */
async function refused(work: () => Promise<unknown>): Promise<Refusal["code"]> {
  const before = await world.fingerprint();
  const caught = await work().then(
    () => undefined,
    (error: unknown) => error,
  );
  expect(await world.fingerprint()).toEqual(before);
  if (!(caught instanceof Refusal)) throw new Error(`no refusal: ${String(caught)}`);
  return caught.code;
}

describe("changing a piece", () => {
  test("says what it shows and when, counts its version up, and tells the second of two what the first made of it", async () => {
    const id = await add(registrar, carTarget(), { caption: "Bar" });
    const opened = { caption: "Bar", taken: "1 Jun 2019" };
    const change = { evidence: id, version: 1, opened, caption: "Front bar", taken: "before March 1972" };
    await as(registrar, (ctx) => correctEvidence(ctx, change));
    expect(await as(registrar, (ctx) => evidencePiece(ctx, id))).toMatchObject({
      caption: "Front bar",
      taken: "before March 1972",
      version: 2,
    });
    const late = () => as(keeper, (ctx) => correctEvidence(ctx, { ...change, caption: "Rear bar" }));
    expect(await refused(late)).toBe("CHANGED_MEANWHILE");
    await expect(late()).rejects.toMatchObject({
      details: {
        version: 2,
        differences: [
          { field: "caption", was: "Bar", theirs: "Front bar", yours: "Rear bar" },
          { field: "taken", was: "1 Jun 2019", theirs: "before March 1972", yours: "before March 1972" },
        ],
      },
    });
  });

  test("refuses a date that is none at its field", async () => {
    const id = await add();
    const change = { evidence: id, version: 1, opened: {}, caption: "", taken: "last summer or so" };
    await expect(as(registrar, (ctx) => correctEvidence(ctx, change))).rejects.toMatchObject({
      problems: [{ field: "taken", message: expect.stringContaining("last summer or so") }],
    });
  });

  test("turns it so that width and height change places, and does a turn sent twice once", async () => {
    const id = await add();
    for (const _ of [1, 2]) await as(keeper, (ctx) => turnEvidence(ctx, { evidence: id, quarterTurns: 1 }));
    const piece = await as(registrar, (ctx) => evidencePiece(ctx, id));
    expect(piece).toMatchObject({ quarterTurns: 1, width: 64, height: 96 });
    const turns = await world.inClub((db) =>
      db.journalEntry.count({ where: { nounId: id, action: "evidence.turn" } }),
    );
    expect(turns).toBe(1);
  });

  test("links it to more, once each, and takes links away but the last", async () => {
    const id = await add();
    const sheet = await world.inClub((db) => db.settingSheet.findFirstOrThrow({ where: { carId: car.id } }));
    const link = { evidence: id, ...input({ kind: "settingSheet", id: sheet.id }, { locus: "corner" }) };
    await as(keeper, (ctx) => linkEvidence(ctx, link));
    expect(await refused(() => as(keeper, (ctx) => linkEvidence(ctx, link)))).toBe("EVIDENCE_LINKED_ALREADY");
    const { links } = await as(keeper, (ctx) => evidencePiece(ctx, id));
    expect(links.map(({ target, locus, mayUnlink }) => [target.kind, locus, mayUnlink])).toEqual([
      ["car", "", true],
      ["settingSheet", "corner", true],
    ]);
    const [first, second] = links.map(({ id: linkId }) => ({ evidence: id, link: linkId }));
    if (!first || !second) throw new Error("two links");
    const both = await Promise.allSettled(
      [first, second].map((one) => as(keeper, (ctx) => unlinkEvidence(ctx, one))),
    );
    // At once, too, one of them is the last.
    expect(both.map(({ status }) => status).sort()).toEqual(["fulfilled", "rejected"]);
    const left = await as(keeper, (ctx) => evidencePiece(ctx, id));
    expect(left.links).toHaveLength(1);
  });

  test("does not link it to a car that the owner does not keep", async () => {
    const id = await add(keeper);
    const link = { evidence: id, ...input(carTarget(other)) };
    expect(await refused(() => as(keeper, (ctx) => linkEvidence(ctx, link)))).toBe("EVIDENCE_NOT_YOURS");
  });

  test("is not for an owner of another car, in any way", async () => {
    const id = await add();
    const stranger = await world.person({ roles: ["owner"] });
    const [link] = (await as(registrar, (ctx) => evidencePiece(ctx, id))).links;
    const tries = [
      (ctx: Context) =>
        correctEvidence(ctx, { evidence: id, version: 1, opened: {}, caption: "x", taken: "" }),
      (ctx: Context) => turnEvidence(ctx, { evidence: id, quarterTurns: 2 }),
      (ctx: Context) => withdrawEvidence(ctx, { evidence: id, reason: "x" }),
      (ctx: Context) => restoreEvidence(ctx, { evidence: id }),
      (ctx: Context) => linkEvidence(ctx, { evidence: id, ...input(carTarget(other)) }),
      (ctx: Context) => unlinkEvidence(ctx, { evidence: id, link: link?.id ?? "" }),
    ];
    for (const one of tries) expect(await refused(() => as(stranger, one))).toBe("EVIDENCE_NOT_YOURS");
    const seen = await as(stranger, (ctx) => evidencePiece(ctx, id));
    expect(seen).toMatchObject({ mayChange: false, mayWithdraw: false, choices: [] });
  });
});

describe("withdrawing a piece", () => {
  test("takes it off every page and out of everybody's hands, keeps it and its reason, and can be taken back", async () => {
    const id = await add(keeper);
    await as(keeper, (ctx) => withdrawEvidence(ctx, { evidence: id, reason: "Shows my house" }));
    const support = await as(registrar, (ctx) => evidenceOf(ctx, [car.id]));
    expect([...support.values()].flat().map((piece) => piece.id)).not.toContain(id);
    const seen = await as(keeper, (ctx) => evidencePiece(ctx, id));
    expect(seen).toMatchObject({
      withdrawn: { reason: "Shows my house" },
      mayChange: false,
      mayRestore: false,
    });
    expect(await refused(() => as(registrar, (ctx) => evidenceFile(ctx, id)))).toBe("EVIDENCE_WITHDRAWN");
    const again = () => as(keeper, (ctx) => withdrawEvidence(ctx, { evidence: id, reason: "x" }));
    expect(await refused(again)).toBe("EVIDENCE_WITHDRAWN");
    expect(await refused(() => as(keeper, (ctx) => restoreEvidence(ctx, { evidence: id })))).toBe(
      "EVIDENCE_NOT_YOURS",
    );
    await as(registrar, (ctx) => restoreEvidence(ctx, { evidence: id }));
    expect(await as(registrar, (ctx) => evidenceFile(ctx, id))).toMatchObject({ mediaType: "image/jpeg" });
    expect(await refused(() => as(registrar, (ctx) => restoreEvidence(ctx, { evidence: id })))).toBe(
      "EVIDENCE_NOT_WITHDRAWN",
    );
  });

  test("is for whoever added it and for the registrar, not for a keeper who did not", async () => {
    const id = await add(registrar);
    const withdraw = (person: WorldPerson) =>
      as(person, (ctx) => withdrawEvidence(ctx, { evidence: id, reason: "x" }));
    expect(await refused(() => withdraw(keeper))).toBe("EVIDENCE_NOT_YOURS");
    await withdraw(registrar);
  });

  test("keeps the same content from coming back by another door", async () => {
    const file = await keptFile();
    const [piece] = await as(keeper, (ctx) => addEvidence(ctx, input(), [file]));
    await as(registrar, (ctx) =>
      withdrawEvidence(ctx, { evidence: piece?.evidence ?? "", reason: "Another car" }),
    );
    const fresh = await keptFile();
    const again = () => as(keeper, (ctx) => addEvidence(ctx, input(), [fresh, file]));
    expect(await refused(again)).toBe("EVIDENCE_WITHDRAWN");
  });
});

test("an id that names nothing, or is none, is refused in words", async () => {
  for (const id of ["01900000-0000-7000-8000-000000000001", "1", "../x", "x".repeat(36)]) {
    expect(await refused(() => as(registrar, (ctx) => evidencePiece(ctx, id)))).toBe("EVIDENCE_NOT_FOUND");
    const turn = { evidence: id, quarterTurns: 1 };
    expect(await refused(() => as(registrar, (ctx) => turnEvidence(ctx, turn)))).toBe("EVIDENCE_NOT_FOUND");
  }
});
