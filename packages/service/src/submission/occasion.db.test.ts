import { openWorld, type World, type WorldCar, type WorldPerson } from "@trunnion/fixtures";
import { emptyModification, type SubmissionContent } from "@trunnion/register";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Context } from "../context";
import { openMember } from "../gate";
import { decideInput, decideSubmission } from "../submission-decision";
import { submissionPage } from "../submission-page";
import { submissionView } from "./read";
import { createDraft, makerStepInput, stepSubmission } from "./write";

let world: World;
let registrar: WorldPerson;
let owner: WorldPerson;
let car: WorldCar;

beforeAll(async () => {
  world = await openWorld();
  registrar = await world.person({ roles: ["registrar"], name: "Registrar" });
  owner = await world.person({ roles: ["owner"], name: "Owner" });
  car = await world.car({ built: "1972", keeper: { name: "Owner", membershipId: owner.membershipId } });
}, 180_000);
afterAll(() => world?.close());

const as = <T>(person: WorldPerson, work: (ctx: Context) => Promise<T>) =>
  openMember(world.database, person, "ours", work);

const change = (characteristic: string, after: string) =>
  ({ characteristic, side: "whole", before: "", after }) as const;
const bar = {
  ...emptyModification,
  fitted: "14 Nov 2026",
  changes: [change("front.antiRollBar.diameter", "20")],
};
const disc = { ...emptyModification, fitted: "3/2020", changes: [change("front.disc.face", "drilled")] };
const content: SubmissionContent = { units: "metric", modifications: [bar], sheets: [] };

const begin = (content: SubmissionContent) =>
  as(owner, (ctx) => createDraft(ctx, { clientKey: crypto.randomUUID(), car: car.reference, content }));
const handIn = ({ id, version }: { id: string; version: number }, text?: string) =>
  as(owner, (ctx) =>
    stepSubmission(
      ctx,
      makerStepInput.parse({
        id,
        version,
        key: crypto.randomUUID(),
        step: "submit",
        ...(text ? { text } : {}),
      }),
    ),
  );

test("a draft keeps the unsent word to the registrar, which is a message and no draft any more once it was handed in", async () => {
  const draft = await begin({ ...content, word: "The old bar is on the shelf" });
  expect((await as(owner, (ctx) => submissionView(ctx, draft.id))).content.word).toBe(
    "The old bar is on the shelf",
  );
  await handIn(draft, "The old bar is on the shelf");
  const view = await as(owner, (ctx) => submissionView(ctx, draft.id));
  expect(view.content).toEqual(content);
  const messages = await world.inClub((db) =>
    db.submissionMessage.findMany({ where: { submissionId: draft.id } }),
  );
  expect(messages.map(({ text }) => text)).toEqual(["The old bar is on the shelf"]);
});

test("a draft of two occasions becomes two modifications, each with its own day", async () => {
  const draft = await begin({ ...content, modifications: [bar, disc] });
  const handed = await handIn(draft);
  await as(registrar, (ctx) =>
    decideSubmission(
      ctx,
      decideInput.parse({
        id: handed.id,
        version: handed.version,
        key: crypto.randomUUID(),
        decision: "accept",
      }),
    ),
  );
  const rows = await world.inClub((db) =>
    db.modification.findMany({
      where: { submissionId: draft.id },
      select: { fittedText: true, changes: { select: { characteristic: true } } },
      orderBy: { sequence: "asc" },
    }),
  );
  expect(rows).toEqual([
    { fittedText: "14 Nov 2026", changes: [{ characteristic: "front.antiRollBar.diameter" }] },
    { fittedText: "3/2020", changes: [{ characteristic: "front.disc.face" }] },
  ]);
});

const accept = ({ id, version }: { id: string; version: number }) =>
  as(registrar, (ctx) =>
    decideSubmission(ctx, decideInput.parse({ id, version, key: crypto.randomUUID(), decision: "accept" })),
  );

test("what is accepted cannot be withdrawn, by whoever handed it in or by the registrar, and stays on the record", async () => {
  const brakes = { ...emptyModification, fitted: "5/2021", changes: [change("rear.disc.face", "drilled")] };
  const decided = await accept(await handIn(await begin({ ...content, modifications: [brakes] })));
  for (const person of [owner, registrar]) {
    const sent = { ...decided, key: crypto.randomUUID(), step: "withdraw" };
    const refused = await as(person, (ctx) => stepSubmission(ctx, makerStepInput.parse(sent))).catch(
      (error: unknown) => error,
    );
    expect(refused).toMatchObject({ code: person === owner ? "SUBMISSION_STEP" : "SUBMISSION_NOT_YOURS" });
  }
  const rows = await world.inClub((db) =>
    db.modification.findMany({ where: { submissionId: decided.id }, select: { supersededAt: true } }),
  );
  expect(rows).toEqual([{ supersededAt: null }]);
});

test("a before that differs from the record is shown beside it; the same written otherwise, or nothing written, is the record's", async () => {
  const measured = await world.car({
    built: "1972",
    keeper: { name: "Owner", membershipId: owner.membershipId },
    read: { "front.antiRollBar.diameter": "16 mm" },
    readOn: "2020-01-01",
  });
  const lineOf = async (before: string) => {
    const changes = [
      { characteristic: "front.antiRollBar.diameter", side: "whole", before, after: "20" } as const,
    ];
    const draft = await as(owner, (ctx) =>
      createDraft(ctx, {
        clientKey: crypto.randomUUID(),
        car: measured.reference,
        content: { ...content, modifications: [{ ...bar, changes }] },
      }),
    );
    const { lines } = await as(owner, (ctx) => submissionPage(ctx, draft.id));
    return lines[0];
  };
  const record = { before: "16 mm", beforeSaid: false, recorded: "" };
  expect(await lineOf("")).toMatchObject(record);
  expect(await lineOf("1.6 cm")).toMatchObject({ beforeSaid: false, recorded: "" });
  expect(await lineOf("18 mm")).toMatchObject({ before: "18 mm", beforeSaid: true, recorded: "16 mm" });
});
