import type { Role } from "@trunnion/db";
import { openWorld, type World, type WorldCar, type WorldPerson } from "@trunnion/fixtures";
import {
  type EvidenceTarget,
  type EvidenceTargetKind,
  evidenceTargetReference,
  Refusal,
} from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { carPage } from "../car-page";
import type { Context } from "../context";
import { openMember, openOperator } from "../gate";
import { verifyJournal } from "../journal";
import { prepareFile } from "../media";
import { samplePdf, samplePicture } from "../media/sample/picture";
import {
  addEvidence,
  addEvidenceInput,
  carEvidence,
  evidenceCounts,
  evidenceFile,
  evidenceFor,
  evidenceOf,
  evidencePiece,
  linkEvidence,
  type StoredFile,
  targetEvidence,
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

/** Something of each kind that evidence can support: of the car, of the specification, of a number. */
async function targets(): Promise<Readonly<Record<EvidenceTargetKind, string>>> {
  return world.inClub(async (db) => {
    const of = { where: { carId: car.id }, select: { id: true } } as const;
    const event = await db.event.findFirst({ select: { entries: { select: { id: true } } } });
    const entryId = event?.entries[0]?.id ?? "";
    const found = { entryId, checkCode: "wheel-nuts", result: "advise", foundAt: new Date() } as const;
    const clientKey = crypto.randomUUID();
    return {
      car: car.id,
      asBuiltValue: (await db.asBuiltValue.findFirstOrThrow(of)).id,
      modification: (await db.modification.findFirstOrThrow(of)).id,
      settingSheet: (await db.settingSheet.findFirstOrThrow(of)).id,
      finding: (await db.finding.create({ data: { ...found, clientKey } })).id,
      carIdentity: (await db.carIdentity.findFirstOrThrow(of)).id,
      carStatusSpan: (await db.carStatusSpan.findFirstOrThrow(of)).id,
      historyNote: (
        await db.historyNote.create({ data: { carId: car.id, text: "Seen in a barn", onText: "c. 1988" } })
      ).id,
      specificationEntry: (await db.specificationEntry.findFirstOrThrow({ select: { id: true } })).id,
      numberDecision: (
        await db.numberDecision.create({
          data: { kind: "chassis", numberKey: "M1001", outcome: "undecided", reason: "No stamp seen" },
        })
      ).id,
      submission: (
        await db.submission.create({
          data: { carId: car.id, clientKey: crypto.randomUUID(), status: "submitted" },
        })
      ).id,
      part: (
        await db.part.create({
          data: {
            slug: "van-caliper",
            assembly: "brakes",
            place: "Front caliper",
            placeKey: "front caliper",
            name: "Caliper of the van",
            kind: "donor",
          },
        })
      ).id,
    };
  });
}

describe("adding evidence", () => {
  test("puts a picture on the car's page under what it supports, with the day the camera says", async () => {
    const id = await add(registrar, carTarget(), { caption: "Front bar, before", locus: "left" });
    const { groups, mayAdd } = await as(registrar, (ctx) => carEvidence(ctx, "M1-001"));
    const piece = groups[0]?.pieces.find((one) => one.id === id);
    expect(piece).toMatchObject({
      caption: "Front bar, before",
      taken: "1 Jun 2019",
      locus: "left",
      picture: true,
      width: 96,
      height: 64,
      target: { kind: "car" },
    });
    expect(mayAdd).toBe(true);
  });

  test("takes the date that is written before the one the camera says, and none of a camera that errs", async () => {
    const written = await add(registrar, carTarget(), { taken: "c. 1971" });
    expect(await as(registrar, (ctx) => evidencePiece(ctx, written))).toMatchObject({ taken: "c. 1971" });
    const file = await keptFile({ taken: "2099-01-01" });
    const [piece] = await as(registrar, (ctx) => addEvidence(ctx, input(), [file]));
    expect(await as(registrar, (ctx) => evidencePiece(ctx, piece?.evidence ?? ""))).toMatchObject({
      taken: "",
    });
  });

  test("says in the journal what was added to which car, and neither the file's name nor anybody's", async () => {
    const id = await add(keeper);
    const entry = await world.inClub((db) => db.journalEntry.findFirstOrThrow({ where: { nounId: id } }));
    expect(entry).toMatchObject({
      action: "evidence.add",
      noun: "evidence",
      carId: car.id,
      personId: keeper.personId,
    });
    expect(entry.after).toMatchObject({
      mediaType: "image/jpeg",
      supports: `car:${car.id}`,
      taken: "1 Jun 2019",
    });
    expect(JSON.stringify(entry.after)).not.toMatch(/Tõnu|bar\.jpg/);
    expect(await openOperator(world.database, "ours", verifyJournal)).toEqual([]);
  });

  test("of one content twice makes one piece with two links, whoever names it what", async () => {
    const file = await keptFile();
    const [first] = await as(registrar, (ctx) =>
      addEvidence(ctx, input(carTarget(), { caption: "Bar" }), [file]),
    );
    const again = { ...file, fileName: "copy.jpg" };
    const [second] = await as(registrar, (ctx) =>
      addEvidence(ctx, input(carTarget(other), { caption: "Other" }), [again, again]),
    );
    expect(first).toMatchObject({ isNew: true });
    expect(second).toEqual({ evidence: first?.evidence, isNew: false });
    const piece = await as(registrar, (ctx) => evidencePiece(ctx, first?.evidence ?? ""));
    expect(piece).toMatchObject({ caption: "Bar", fileName: "Tõnu's bar.jpg" });
    expect(piece.links.map(({ target }) => target.id).sort()).toEqual([car.id, other.id].sort());
  });

  test("of one content by two at once makes one piece too", async () => {
    const file = await keptFile();
    const made = await Promise.all(
      [carTarget(), carTarget(other), carTarget(), carTarget(other)].map((target) =>
        as(registrar, (ctx) => addEvidence(ctx, input(target), [file])),
      ),
    );
    expect(new Set(made.flat().map(({ evidence }) => evidence)).size).toBe(1);
    expect(made.flat().filter(({ isNew }) => isNew)).toHaveLength(1);
    const piece = await as(registrar, (ctx) => evidencePiece(ctx, made[0]?.[0]?.evidence ?? ""));
    expect(piece.links).toHaveLength(2);
  });

  test("of one content in two clubs makes two pieces, and neither sees the other's", async () => {
    const file = await keptFile();
    const theirRegistrar = await world.person({ roles: ["registrar"], club: world.theirs });
    const theirCar = await world.car({ chassis: "M1-001", club: world.theirs });
    const [ours] = await as(registrar, (ctx) => addEvidence(ctx, input(), [file]));
    const [theirs] = await as(
      theirRegistrar,
      (ctx) => addEvidence(ctx, input(carTarget(theirCar)), [file]),
      world.theirs,
    );
    expect(theirs).toMatchObject({ isNew: true });
    const id = ours?.evidence ?? "";
    for (const look of [evidencePiece, evidenceFile]) {
      const code = await refused(() =>
        as(theirRegistrar, (ctx) => look(ctx, id) as Promise<unknown>, world.theirs),
      );
      expect(code).toBe("EVIDENCE_NOT_FOUND");
    }
    const link = { evidence: id, ...input(carTarget(theirCar)) };
    expect(await refused(() => as(theirRegistrar, (ctx) => linkEvidence(ctx, link), world.theirs))).toBe(
      "EVIDENCE_NOT_FOUND",
    );
    const across = () =>
      as(theirRegistrar, (ctx) => addEvidence(ctx, input(carTarget()), [file]), world.theirs);
    expect(await refused(across)).toBe("EVIDENCE_TARGET_NOT_FOUND");
  });

  test("is for registrar, scrutineer and fleet manager, and for whoever keeps the car now", async () => {
    for (const role of ["registrar", "scrutineer", "fleetManager"] as const satisfies readonly Role[]) {
      await add(await world.person({ roles: [role] }));
    }
    await add(keeper);
    expect(await refused(() => add(keeper, carTarget(other)))).toBe("EVIDENCE_NOT_YOURS");
    const stranger = await world.person({ roles: ["owner"] });
    expect(await refused(() => add(stranger))).toBe("EVIDENCE_NOT_YOURS");
    await world.inClub((db) =>
      db.keepership.updateMany({ where: { carId: car.id }, data: { to: new Date("2020-01-01") } }),
    );
    expect(await refused(() => add(keeper))).toBe("EVIDENCE_NOT_YOURS");
    await world.inClub((db) => db.keepership.updateMany({ where: { carId: car.id }, data: { to: null } }));
  });

  test("to what is not there is refused, and none of the files is on record", async () => {
    const nobody = { kind: "historyNote", id: "01900000-0000-7000-8000-000000000001" } as const;
    expect(await refused(() => add(registrar, nobody))).toBe("EVIDENCE_TARGET_NOT_FOUND");
    expect(() => addEvidenceInput.parse({ ...input(), for: "car:../x" })).toThrow(/Choose what it supports/);
  });
});

describe("what evidence can support", () => {
  test("is everything of the record: each is said in words and found again", async () => {
    await world.event({ slug: "open-day", entries: [{ number: "7", car }] });
    const ids = await targets();
    for (const [kind, id] of Object.entries(ids) as [EvidenceTargetKind, string][]) {
      const piece = await add(registrar, { kind, id }, { locus: "p. 3" });
      const page = await as(registrar, (ctx) => targetEvidence(ctx, { kind, id }));
      expect(
        page.group.pieces.map((one) => one.id),
        kind,
      ).toContain(piece);
      expect(page.group.target.label.length, kind).toBeGreaterThan(3);
      expect(page.car?.reference, kind).toBe(
        ["specificationEntry", "numberDecision", "part"].includes(kind) ? undefined : "M1-001",
      );
      const found = await as(registrar, (ctx) => evidenceFor(ctx, kind, [id]));
      expect(found.get(id)?.map(({ locus }) => locus)).toContain("p. 3");
    }
    const { groups } = await as(registrar, (ctx) => carEvidence(ctx, "M1-001"));
    const kinds = new Set(groups.map(({ target }) => target.kind));
    expect(kinds.size).toBe(8);
    const labels = groups.map(({ target }) => target.label);
    expect(labels).toContain("Rear anti-roll bar diameter: 16 mm");
    expect(labels).toContain("Engine number KV-1");
    expect(labels).toContain("Laid up");
    expect(labels).toContain("c. 1988: Seen in a barn");
  });

  test("of entries of a specification and decisions on numbers is for registrar and fleet manager alone", async () => {
    const ids = await world.inClub((db) => db.specificationEntry.findFirstOrThrow({ select: { id: true } }));
    const entry = { kind: "specificationEntry", id: ids.id } as const;
    const scrutineer = await world.person({ roles: ["scrutineer"] });
    expect(await refused(() => add(scrutineer, entry))).toBe("EVIDENCE_NOT_YOURS");
    expect(await refused(() => add(keeper, entry))).toBe("EVIDENCE_NOT_YOURS");
    await add(registrar, entry);
  });

  test("by a value that was corrected stays with it, and nothing new is added there", async () => {
    const fresh = await world.car({ chassis: "M1-050", asBuilt: { "rear.antiRollBar.diameter": "14 mm" } });
    const value = await world.inClub((db) =>
      db.asBuiltValue.findFirstOrThrow({ where: { carId: fresh.id } }),
    );
    const target = { kind: "asBuiltValue", id: value.id } as const;
    await add(registrar, target);
    await world.inClub((db) =>
      db.asBuiltValue.updateMany({ where: { id: value.id }, data: { supersededAt: new Date() } }),
    );
    const { groups, choices } = await as(registrar, (ctx) => carEvidence(ctx, "M1-050"));
    expect(groups).toMatchObject([{ target: { past: true }, pieces: [{}] }]);
    expect(choices.map(({ kind }) => kind)).toEqual(["car"]);
    expect(await refused(() => add(registrar, target))).toBe("EVIDENCE_TARGET_NOT_FOUND");
  });

  test("stands on the car's page beside each value that comes from it: as built, modified, measured", async () => {
    const fresh = await world.car({
      chassis: "M1-052",
      asBuilt: { "rear.antiRollBar.diameter": "14 mm" },
      modified: { "front.antiRollBar.diameter": "20 mm" },
      read: { "front.camber": "-0°20'" },
    });
    const of = { where: { carId: fresh.id }, select: { id: true } } as const;
    const ids = await world.inClub(async (db) => ({
      asBuiltValue: (await db.asBuiltValue.findFirstOrThrow(of)).id,
      modification: (await db.modification.findFirstOrThrow(of)).id,
      settingSheet: (await db.settingSheet.findFirstOrThrow(of)).id,
    }));
    const pieces = {
      built: await add(registrar, { kind: "asBuiltValue", id: ids.asBuiltValue }),
      modified: await add(registrar, { kind: "modification", id: ids.modification }),
      measured: await add(registrar, { kind: "settingSheet", id: ids.settingSheet }),
    };
    const page = await as(keeper, (ctx) => carPage(ctx, "M1-052"));
    const beside = (key: string) => page.support[key]?.map(({ id }) => id);
    expect(page.evidence).toBe(3);
    expect(beside("rear.antiRollBar.diameter whole")).toEqual([pieces.built]);
    expect(beside("front.antiRollBar.diameter whole")).toEqual([pieces.modified]);
    expect(beside("front.camber left")).toEqual([pieces.measured]);
    expect(beside("front.camber right")).toEqual([pieces.measured]);
    expect(beside(ids.modification)).toEqual([pieces.modified]);
    expect(beside("front.castor left")).toBeUndefined();
  });

  test("is counted per car by pieces, not by links", async () => {
    const fresh = await world.car({ chassis: "M1-051", engine: "KV-51" });
    const identity = await world.inClub((db) =>
      db.carIdentity.findFirstOrThrow({ where: { carId: fresh.id } }),
    );
    const id = await add(registrar, carTarget(fresh));
    const two = { evidence: id, ...input({ kind: "carIdentity", id: identity.id }) };
    await as(registrar, (ctx) => linkEvidence(ctx, two));
    await add(registrar, carTarget(fresh));
    const counts = await as(registrar, (ctx) => evidenceCounts(ctx, [fresh.id, other.id]));
    expect(counts.get(fresh.id)).toBe(2);
    const support = await as(registrar, (ctx) => evidenceOf(ctx, [fresh.id]));
    expect([...support.keys()].sort()).toEqual([fresh.id, identity.id].sort());
  });
});

test("a document has neither width nor turn of its own", async () => {
  const {
    content,
    preview: _,
    ...file
  } = await prepareFile({ name: "a.pdf", content: samplePdf(), keepLocation: false });
  const [piece] = await as(registrar, (ctx) =>
    addEvidence(ctx, input(), [{ ...file, bytes: content.length }]),
  );
  const line = await as(registrar, (ctx) => evidencePiece(ctx, piece?.evidence ?? ""));
  expect(line).toMatchObject({ picture: false, mediaType: "application/pdf", quarterTurns: 0 });
  expect(line.width).toBeUndefined();
});
