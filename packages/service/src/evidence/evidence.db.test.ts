import type { Role } from "@trunnion/db";
import { openWorld, type World, type WorldCar, type WorldPerson } from "@trunnion/fixtures";
import {
  type EvidenceTarget,
  type EvidenceTargetKind,
  evidenceTargetReference,
  Refusal,
} from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Context } from "../context";
import { openMember, openOperator } from "../gate";
import { verifyJournal } from "../journal";
import { prepareFile } from "../media";
import { samplePdf, samplePicture } from "../media/sample/picture";
import {
  addEvidence,
  addEvidenceInput,
  carEvidence,
  correctEvidence,
  evidenceCounts,
  evidenceFile,
  evidenceFor,
  evidenceOf,
  evidencePiece,
  linkEvidence,
  restoreEvidence,
  type StoredFile,
  targetEvidence,
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
        kind === "specificationEntry" || kind === "numberDecision" ? undefined : "M1-001",
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
