import { openWorld, type World, type WorldCar, type WorldPerson } from "@trunnion/fixtures";
import {
  emptyModification,
  Invalid,
  type ModificationDraft,
  Refusal,
  type SubmissionContent,
} from "@trunnion/register";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { compareCurrentValues, rebuildCurrentValues } from "../current-value";
import { openMember } from "../gate";
import { verifyJournal } from "../journal";
import { decideInput, decideSubmission } from "../submission-decision";
import { submissionView } from "./read";
import { createDraft, makerStepInput, saveDraft, stepSubmission, supersedeSubmission } from "./write";

let world: World;
let registrar: WorldPerson;
let owner: WorldPerson;
let stranger: WorldPerson;
let car: WorldCar;

beforeAll(async () => {
  world = await openWorld();
  registrar = await world.person({ roles: ["registrar"], name: "Registrar" });
  owner = await world.person({ roles: ["owner"], name: "Owner" });
  stranger = await world.person({ roles: ["owner"], name: "Stranger" });
}, 180_000);
afterAll(() => world?.close());

beforeEach(async () => {
  car = await world.car({
    built: "1972",
    keeper: { name: "Owner", membershipId: owner.membershipId },
    read: { "front.antiRollBar.diameter": "16 mm" },
    readOn: "2020-01-01",
  });
  await as(registrar, async (ctx) => rebuildCurrentValues(ctx, [car.id], await bookOf(ctx)));
});

const as = <T>(person: WorldPerson, work: (ctx: Context) => Promise<T>) =>
  openMember(world.database, person, "ours", work);

const bar = (more: Partial<ModificationDraft> = {}): SubmissionContent => ({
  units: "metric",
  modifications: [
    {
      ...emptyModification,
      fitted: "14 Nov 2026",
      changes: [{ characteristic: "front.antiRollBar.diameter", side: "whole", before: "", after: "20" }],
      ...more,
    },
  ],
  sheets: [],
});

const change = (characteristic: string, after: string, side: "whole" | "left" | "right" = "whole") =>
  ({ characteristic, side, before: "", after }) as const;

const key = () => crypto.randomUUID();
const begin = (content?: SubmissionContent, clientKey = key(), person = owner) =>
  as(person, (ctx) => createDraft(ctx, { clientKey, car: car.reference, ...(content ? { content } : {}) }));
const step = (
  { id, version }: { id: string; version: number },
  name: "submit" | "answer" | "withdraw",
  more: { text?: string; key?: string } = {},
  person = owner,
) =>
  as(person, (ctx) =>
    stepSubmission(ctx, makerStepInput.parse({ id, version, key: key(), step: name, ...more })),
  );
const decide = (
  { id, version }: { id: string; version: number },
  decision: "accept" | "decline" | "query",
  more: object = {},
  person = registrar,
) =>
  as(person, (ctx) =>
    decideSubmission(ctx, decideInput.parse({ id, version, key: key(), decision, ...more })),
  );

/** What was refused or told at fields, with proof that nothing was written. */
async function failing(work: () => Promise<unknown>): Promise<unknown> {
  const before = await world.fingerprint();
  const caught = await work().then(
    () => undefined,
    (error: unknown) => error,
  );
  expect(await world.fingerprint()).toEqual(before);
  return caught;
}
async function codeOf(work: () => Promise<unknown>) {
  const caught = await failing(work);
  if (!(caught instanceof Refusal)) throw new Error(`no refusal: ${String(caught)}`);
  return caught.code;
}
async function problemsOf(work: () => Promise<unknown>) {
  const caught = await failing(work);
  if (!(caught instanceof Invalid)) throw new Error(`nothing at fields: ${String(caught)}`);
  return caught.problems;
}

const valueNow = (key: string) =>
  world.inClub((db) => db.currentValue.findFirst({ where: { carId: car.id, characteristic: key } }));

describe("a draft", () => {
  test("sent five times under one key is one record", async () => {
    const clientKey = key();
    const marks = [];
    for (let round = 0; round < 5; round++) marks.push(await begin(bar(), clientKey));
    expect(new Set(marks.map(({ id }) => id)).size).toBe(1);
    const all = await Promise.all(Array.from({ length: 5 }, () => begin(bar(), clientKey)));
    expect(new Set(all.map(({ id }) => id))).toEqual(new Set([marks[0]?.id]));
    expect(await world.inClub((db) => db.submission.count({ where: { clientKey } }))).toBe(1);
  });

  test("keeps what cannot be right, tells it at the field, and is refused when handed in", async () => {
    const content = bar({
      fitted: "yesterweek",
      changes: [change("front.antiRollBar.diameter", "20 yards"), change("front.camber", "40°", "left")],
    });
    const draft = await begin(content);
    const view = await as(owner, (ctx) => submissionView(ctx, draft.id));
    expect(view.content).toEqual(content);
    expect(view.problems.map(({ field }) => field).sort()).toEqual([
      "modifications.0.changes.0.after",
      "modifications.0.changes.1.after",
      "modifications.0.fitted",
    ]);
    expect((await problemsOf(() => step(draft, "submit"))).length).toBe(3);
  });

  test("is begun by whoever keeps the car, and by the register's desk, and by nobody else", async () => {
    expect(await codeOf(() => begin(bar(), key(), stranger))).toBe("CAR_NOT_KEPT");
    expect(await begin(bar(), key(), registrar)).toMatchObject({ status: "draft" });
  });

  test("is not there for anybody who has nothing to do with it", async () => {
    const draft = await begin(bar());
    expect(await codeOf(() => as(stranger, (ctx) => submissionView(ctx, draft.id)))).toBe(
      "SUBMISSION_NOT_FOUND",
    );
  });

  test("edited on two phones shows both sides to the second, and writes nothing", async () => {
    const draft = await begin(bar());
    const save = (editor: string, count: number, after: string, version = draft.version) =>
      as(owner, (ctx) =>
        saveDraft(ctx, {
          id: draft.id,
          version,
          editor,
          count,
          content: bar({ changes: [change("front.antiRollBar.diameter", after)] }),
        }),
      );
    const [one, other] = [key(), key()];
    await save(one, 1, "18 mm");
    const caught = await failing(() => save(other, 1, "22 mm"));
    expect(caught).toMatchObject({
      code: "CHANGED_MEANWHILE",
      details: { differences: [{ label: "Front anti-roll bar diameter", theirs: "18 mm", yours: "22 mm" }] },
    });
  });

  test("is saved on by the form that saved it last, though it never heard of that save, and not by a late one", async () => {
    const draft = await begin(bar());
    const editor = key();
    const save = (count: number, reason: string) =>
      as(owner, (ctx) =>
        saveDraft(ctx, { id: draft.id, version: 1, editor, count, content: bar({ reason }) }),
      );
    await save(1, "a");
    await save(3, "abc");
    await save(2, "ab");
    const view = await as(owner, (ctx) => submissionView(ctx, draft.id));
    expect(view.content.modifications[0]?.reason).toBe("abc");
  });
});

describe("handing in", () => {
  const impossible: readonly [string, Partial<ModificationDraft>, string, RegExp][] = [
    [
      "a bar thicker than its bush",
      {
        changes: [
          change("front.antiRollBar.diameter", "20 mm"),
          change("front.antiRollBar.bushBore", "15 mm"),
        ],
      },
      "modifications.0.changes.0.after",
      /does not go into a bush bored "15 mm"/,
    ],
    [
      "a camber of 40°",
      { changes: [change("front.camber", "40°", "left")] },
      "modifications.0.changes.0.after",
      /too large/,
    ],
    [
      "lower mounts missing on both sides",
      {
        changes: [
          change("rear.damper.lowerMount", "not fitted", "left"),
          change("rear.damper.lowerMount", "not fitted", "right"),
        ],
      },
      "modifications.0.changes.1.after",
      /nothing would hold the rear dampers/,
    ],
    [
      "a tyre on a wheel of another size",
      { changes: [change("tyres.front.size", "175/70 R 13"), change("wheels.front.size", "5J x 14")] },
      "modifications.0.changes.0.after",
      /their rims differ/,
    ],
    [
      "something fitted before the car was built",
      { fitted: "March 1969" },
      "modifications.0.fitted",
      /not built before/,
    ],
    ["something fitted in the future", { fitted: "1 Jan 2031" }, "modifications.0.fitted", /future/],
    [
      "what the car had before",
      { changes: [change("front.antiRollBar.diameter", "16 mm")] },
      "modifications.0.changes.0.after",
      /had before/,
    ],
    [
      "one thing twice",
      {
        changes: [
          change("front.antiRollBar.diameter", "20 mm"),
          change("front.antiRollBar.diameter", "22 mm"),
        ],
      },
      "modifications.0.changes.1.after",
      /another line/,
    ],
    ["no change at all", { changes: [] }, "modifications.0.changes", /at least one part/],
    ["an odometer beyond belief", { odometer: "9 999 999 999" }, "modifications.0.odometer", /million/],
  ];
  test.each(impossible)("%s is refused at its field", async (_what, more, field, words) => {
    const draft = await begin(bar(more));
    const problems = await problemsOf(() => step(draft, "submit"));
    expect(problems.find((one) => one.field === field)?.message).toMatch(words);
  });

  test("toe in millimetres without a rim to read it over is refused, with a rim it is read", async () => {
    const toe = change("rear.toe", "2 mm toe-in per side", "left");
    const draft = await begin(bar({ changes: [toe] }));
    const view = await as(owner, (ctx) => submissionView(ctx, draft.id));
    // Neither the record nor the series' specification of this car says what wheels it has.
    expect(await valueNow("wheels.rear.size")).toBeNull();
    expect(view.problems).toEqual([
      {
        field: "modifications.0.changes.0.after",
        message: expect.stringMatching(
          /"2 mm toe-in per side".*only with the diameter of the rim.*add the rim, or write the angle.*on 13 in rim/,
        ),
      },
    ]);
    expect((await problemsOf(() => step(draft, "submit"))).map(({ field }) => field)).toEqual([
      "modifications.0.changes.0.after",
    ]);
    const other = await begin(bar({ changes: [toe, change("wheels.rear.size", "5½J x 14")] }));
    expect((await as(owner, (ctx) => submissionView(ctx, other.id))).problems).toEqual([]);
  });

  test("sent again under its key is one step, and is refused about a car that changed hands", async () => {
    const draft = await begin(bar());
    const once = key();
    const first = await step(draft, "submit", { key: once });
    for (let round = 0; round < 4; round++) expect(await step(draft, "submit", { key: once })).toEqual(first);
    const later = await begin(bar());
    await world.inClub((db) =>
      db.keepership.updateMany({ where: { carId: car.id }, data: { to: new Date("2026-11-20") } }),
    );
    expect(await codeOf(() => step(later, "submit"))).toBe("CAR_NOT_KEPT");
    expect(await codeOf(() => decide(first, "accept"))).toBe("KEEPER_CHANGED");
    expect(await decide(first, "accept", { keeperKnown: "yes" })).toMatchObject({ status: "accepted" });
  });
});

describe("a decision", () => {
  test("to accept puts record, current values, journal and a message in one, and not a moment before", async () => {
    const draft = await begin(
      bar({
        odometer: "48 210",
        donor: "van",
        reversible: "yes",
        fasteners: [
          {
            place: "link",
            thread: "M10x1.5",
            grade: "10.9",
            length: "50",
            spacerStack: "12",
            count: "2",
            note: "",
          },
        ],
      }),
    );
    const handedIn = await step(draft, "submit");
    expect((await valueNow("front.antiRollBar.diameter"))?.entered).toBe("16 mm");
    await decide(handedIn, "accept", { text: "seen on the photos" });
    expect(await valueNow("front.antiRollBar.diameter")).toMatchObject({
      entered: "20 mm",
      origin: "modification",
    });
    const row = await world.inClub((db) =>
      db.modification.findFirstOrThrow({
        where: { submissionId: draft.id },
        include: { changes: true, fasteners: true },
      }),
    );
    expect(row).toMatchObject({ odometer: 48_210_000, donor: "van", reversible: true, trust: "stated" });
    expect(row.changes[0]).toMatchObject({
      beforeEntered: "16 mm",
      afterEntered: "20 mm",
      afterNumber: 0.02,
    });
    expect(row.fasteners[0]).toMatchObject({
      thread: "M10x1.5",
      grade: "class 10.9",
      length: 0.05,
      spacerStack: 0.012,
      count: 2,
    });
    await as(registrar, async (ctx) => {
      expect(await compareCurrentValues(ctx, await bookOf(ctx))).toEqual([]);
      expect(await verifyJournal(ctx)).toEqual([]);
    });
    const told = await world.inClub((db) => db.notice.findMany({ where: { submissionId: draft.id } }));
    expect(told.filter(({ personId }) => personId === owner.personId).map(({ subject }) => subject)).toEqual([
      `${car.chassis}: your change is on the record`,
    ]);
  });

  test("is refused to the owner, and to nobody twice", async () => {
    const handedIn = await step(await begin(bar()), "submit");
    expect(await codeOf(() => decide(handedIn, "accept", {}, owner))).toBe("ROLE_NEEDED");
    const accepted = await decide(handedIn, "accept");
    expect(await codeOf(() => decide(accepted, "decline", { text: "no" }))).toBe("SUBMISSION_STEP");
    expect(await codeOf(() => step(accepted, "withdraw"))).toBe("SUBMISSION_STEP");
  });

  test("to decline or to ask needs words; the answer goes back, and may mend what was asked about", async () => {
    const handedIn = await step(await begin(bar()), "submit");
    expect(await problemsOf(() => decide(handedIn, "decline"))).toMatchObject([{ field: "text" }]);
    const queried = await decide(handedIn, "query", { text: "Which bush?" });
    const saved = await as(owner, (ctx) =>
      saveDraft(ctx, {
        id: queried.id,
        version: queried.version,
        count: 1,
        content: bar({ note: "Rubber, 19 mm" }),
      }),
    );
    const answered = await step(saved, "answer", { text: "A rubber one" });
    expect(answered.status).toBe("answered");
    const view = await as(registrar, (ctx) => submissionView(ctx, queried.id));
    expect(view.thread.map(({ text }) => text)).toEqual(["Which bush?", "A rubber one"]);
    expect(view.content.modifications[0]?.note).toBe("Rubber, 19 mm");
    expect((await decide(answered, "accept")).status).toBe("accepted");
  });

  test("is refused where the record moved to what is handed in meanwhile", async () => {
    const [one, other] = [await step(await begin(bar()), "submit"), await step(await begin(bar()), "submit")];
    await decide(one, "accept");
    expect((await problemsOf(() => decide(other, "accept")))[0]?.message).toMatch(/had before/);
  });

  test("on a correction supersedes what it corrects, which stays readable", async () => {
    const first = await decide(await step(await begin(bar()), "submit"), "accept");
    const correction = await as(owner, (ctx) => supersedeSubmission(ctx, { id: first.id, clientKey: key() }));
    const saved = await as(owner, (ctx) =>
      saveDraft(ctx, {
        id: correction.id,
        version: correction.version,
        count: 1,
        content: bar({ changes: [change("front.antiRollBar.diameter", "19 mm")] }),
      }),
    );
    await decide(await step(saved, "submit"), "accept");
    expect((await valueNow("front.antiRollBar.diameter"))?.entered).toBe("19 mm");
    const rows = await world.inClub((db) =>
      db.modification.findMany({ where: { carId: car.id }, orderBy: { sequence: "asc" } }),
    );
    expect(rows.map(({ supersededAt }) => supersededAt === null)).toEqual([false, true]);
    expect(
      await codeOf(() => as(owner, (ctx) => supersedeSubmission(ctx, { id: first.id, clientKey: key() }))),
    ).toBe("SUBMISSION_SUPERSEDED");
  });
});
