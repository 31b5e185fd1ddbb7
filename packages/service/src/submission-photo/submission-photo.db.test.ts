import { openWorld, type World, type WorldCar, type WorldPerson } from "@trunnion/fixtures";
import { emptyModification, Refusal, type SubmissionContent, submissionLimits } from "@trunnion/register";
import sharp from "sharp";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { carPage } from "../car-page";
import type { Context } from "../context";
import { addEvidence, addEvidenceInput, evidencePiece, type StoredFile } from "../evidence";
import { openMember } from "../gate";
import { prepareFile } from "../media";
import { createDraft, makerStepInput, stepSubmission, supersedeSubmission } from "../submission";
import { decideInput, decideSubmission } from "../submission-decision";
import { submissionPage } from "../submission-page";
import { photosOf } from "./read";
import { aboutPhoto, removePhoto } from "./write";

let world: World;
let registrar: WorldPerson;
let owner: WorldPerson;
let stranger: WorldPerson;
let car: WorldCar;
let shade = 0;

beforeAll(async () => {
  world = await openWorld();
  registrar = await world.person({ roles: ["registrar"], name: "Registrar" });
  owner = await world.person({ roles: ["owner"], name: "Owner" });
  stranger = await world.person({ roles: ["owner"], name: "Stranger" });
}, 180_000);
afterAll(() => world?.close());
beforeEach(async () => {
  car = await world.car({ built: "1972", keeper: { name: "Owner", membershipId: owner.membershipId } });
});

const as = <T>(person: WorldPerson, work: (ctx: Context) => Promise<T>) =>
  openMember(world.database, person, "ours", work);

const bar = "front.antiRollBar.diameter";
const disc = "front.disc.diameter";
const change = (characteristic: string, after: string) => ({
  ...emptyModification,
  fitted: "14 Nov 2026",
  changes: [{ characteristic, side: "whole", before: "", after } as const],
});
const content: SubmissionContent = {
  units: "metric",
  modifications: [change(bar, "20"), change(disc, "260")],
  sheets: [],
};

const key = () => crypto.randomUUID();
const begin = (said = content) =>
  as(owner, (ctx) => createDraft(ctx, { clientKey: key(), car: car.reference, content: said }));
const submit = (at: { id: string; version: number }) =>
  as(owner, (ctx) => stepSubmission(ctx, makerStepInput.parse({ ...at, key: key(), step: "submit" })));
const accept = (at: { id: string; version: number }) =>
  as(registrar, (ctx) => decideSubmission(ctx, decideInput.parse({ ...at, key: key(), decision: "accept" })));

/** A picture of a content that nobody sent before. */
async function picture(): Promise<StoredFile> {
  const background = { r: ++shade, g: 90, b: 90 };
  const content = await sharp({ create: { width: 8, height: 8, channels: 3, background } })
    .png()
    .toBuffer();
  const {
    content: kept,
    preview: _preview,
    ...file
  } = await prepareFile({
    name: "bar.png",
    content,
    keepLocation: false,
  });
  return { ...file, bytes: kept.length };
}

async function send(id: string, about = "", file?: StoredFile, person = owner): Promise<string> {
  const one = file ?? (await picture());
  const input = addEvidenceInput.parse({
    ...{ for: `submission:${id}`, caption: "", taken: "", locus: "", keepLocation: false },
    about,
  });
  const [piece] = await as(person, (ctx) => addEvidence(ctx, input, [one]));
  return piece?.evidence ?? "";
}

async function refused(work: Promise<unknown>): Promise<string> {
  const caught = await work.then(
    () => undefined,
    (error: unknown) => error,
  );
  if (!(caught instanceof Refusal)) throw new Error(`no refusal: ${String(caught)}`);
  return caught.code;
}

const stateSupport = async (characteristic: string) => {
  const page = await as(registrar, (ctx) => carPage(ctx, car.reference));
  return (page.support[`${characteristic} whole`] ?? []).map(({ id }) => id);
};

describe("a photo in a draft", () => {
  test("sent five times over a flaky line is one photo", async () => {
    const { id } = await begin();
    const file = await picture();
    const ids = new Set<string>();
    for (let time = 0; time < 5; time += 1) ids.add(await send(id, bar, file));
    expect(ids.size).toBe(1);
    expect(await as(owner, (ctx) => photosOf(ctx, id))).toMatchObject([
      { characteristic: bar, picture: true },
    ]);
  });

  test("is one of at most as many as are allowed, and the one too many is refused with the number", async () => {
    const { id } = await begin();
    const [piece] = [await send(id)];
    await world.inClub(async (db) => {
      const data = Array.from({ length: submissionLimits.photos - 1 }, () => ({
        evidenceId: piece,
        submissionId: id,
      }));
      await db.evidenceLink.createMany({ data });
    });
    expect(await refused(send(id))).toBe("SUBMISSION_PHOTOS_FULL");
  });

  test("shows the part it is said to show, until it is handed in", async () => {
    const { id, version } = await begin();
    const evidence = await send(id);
    await as(owner, (ctx) => aboutPhoto(ctx, { id, evidence, about: disc }));
    expect(await as(owner, (ctx) => photosOf(ctx, id))).toMatchObject([{ characteristic: disc }]);
    await expect(as(owner, (ctx) => aboutPhoto(ctx, { id, evidence, about: "no.such" }))).rejects.toThrow();
    expect(await refused(as(stranger, (ctx) => aboutPhoto(ctx, { id, evidence, about: bar })))).toBe(
      "SUBMISSION_NOT_FOUND",
    );
    await submit({ id, version });
    expect(await refused(as(owner, (ctx) => aboutPhoto(ctx, { id, evidence, about: bar })))).toBe(
      "SUBMISSION_STEP",
    );
  });

  test("taken out is gone from it, withdrawn where it was nowhere else, and back when it is sent again", async () => {
    const { id } = await begin();
    const file = await picture();
    const evidence = await send(id, bar, file);
    for (const _twice of [1, 2]) await as(owner, (ctx) => removePhoto(ctx, { id, evidence }));
    expect(await as(owner, (ctx) => photosOf(ctx, id))).toEqual([]);
    expect((await as(registrar, (ctx) => evidencePiece(ctx, evidence))).withdrawn).toBeDefined();
    expect(await send(id, bar, file)).toBe(evidence);
    expect((await as(registrar, (ctx) => evidencePiece(ctx, evidence))).withdrawn).toBeUndefined();
  });

  test("that supports the car as well stays there when it is taken out", async () => {
    const { id } = await begin();
    const file = await picture();
    const evidence = await send(id, bar, file);
    const more = { for: `car:${car.id}`, caption: "", taken: "", locus: "", keepLocation: false };
    await as(owner, (ctx) => addEvidence(ctx, addEvidenceInput.parse(more), [file]));
    await as(owner, (ctx) => removePhoto(ctx, { id, evidence }));
    const piece = await as(registrar, (ctx) => evidencePiece(ctx, evidence));
    expect(piece.withdrawn).toBeUndefined();
    expect(piece.links.map(({ target }) => target.kind)).toEqual(["car"]);
  });
});

describe("once accepted", () => {
  test("a photo supports the value it shows and no other; one of the whole supports both", async () => {
    const { id, version } = await begin();
    const [ofBar, ofDisc, ofAll] = [await send(id, bar), await send(id, disc), await send(id)];
    const handed = await submit({ id, version });
    const page = await as(registrar, (ctx) => submissionPage(ctx, id));
    expect(page.evidence.map(({ characteristic }) => characteristic)).toEqual([bar, disc, ""]);
    await accept(handed);
    expect(new Set(await stateSupport(bar))).toEqual(new Set([ofBar, ofAll]));
    expect(new Set(await stateSupport(disc))).toEqual(new Set([ofDisc, ofAll]));
    const after = await as(owner, (ctx) => photosOf(ctx, id));
    expect(new Set(after.map((one) => one.id))).toEqual(new Set([ofBar, ofDisc, ofAll]));
  });

  test("a correction of it keeps the photos", async () => {
    const { id, version } = await begin();
    const ofBar = await send(id, bar);
    await accept(await submit({ id, version }));
    const next = await as(owner, (ctx) => supersedeSubmission(ctx, { id, clientKey: key() }));
    await accept(await submit(next));
    expect(await stateSupport(bar)).toEqual([ofBar]);
  });
});
