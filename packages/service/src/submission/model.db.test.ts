import { openWorld, type World, type WorldCar, type WorldPerson } from "@trunnion/fixtures";
import {
  emptyModification,
  moveSubmission,
  Refusal,
  type SubmissionContent,
  type SubmissionParty,
  type SubmissionStatus,
  type SubmissionStep,
} from "@trunnion/register";
import fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { compareCurrentValues, rebuildCurrentValues } from "../current-value";
import { openMember } from "../gate";
import { verifyJournal } from "../journal";
import { decideInput, decideSubmission } from "../submission-decision";
import { submissionView } from "./read";
import { createDraft, makerStepInput, saveDraft, stepSubmission } from "./write";

let world: World;
let registrar: WorldPerson;
let owner: WorldPerson;

beforeAll(async () => {
  world = await openWorld();
  registrar = await world.person({ roles: ["registrar"] });
  owner = await world.person({ roles: ["owner"] });
}, 180_000);
afterAll(() => world?.close());

type Who = "owner" | "registrar";
const person = (who: Who) => (who === "owner" ? owner : registrar);
const parties: Readonly<Record<Who, ReadonlySet<SubmissionParty>>> = {
  owner: new Set(["maker"]),
  registrar: new Set(["reviewer"]),
};

/** What the database must come to, by the pure machine alone. */
interface Model {
  status: SubmissionStatus;
  version: number;
  diameter: string;
  messages: number;
}

interface Real {
  readonly id: string;
  readonly car: WorldCar;
  /** The last step taken, to be sent again. */
  last: (() => Promise<unknown>) | undefined;
}

const as = <T>(who: Who, work: (ctx: Context) => Promise<T>) =>
  openMember(world.database, person(who), "ours", work);

const content = (diameter: string): SubmissionContent => ({
  units: "metric",
  modifications: [
    {
      ...emptyModification,
      fitted: "2020",
      changes: [{ characteristic: "front.antiRollBar.diameter", side: "whole", before: "", after: diameter }],
    },
  ],
  sheets: [],
});

const codeOf = (error: unknown) => (error instanceof Refusal ? error.code : String(error));

async function outcome(work: () => Promise<unknown>): Promise<string> {
  return work().then(
    () => "done",
    (error: unknown) => codeOf(error),
  );
}

/** What the machine says of a step, as the service would refuse it. */
function expected(model: Model, who: Who, step: SubmissionStep, seen: number): string {
  const move = moveSubmission(model.status, step, parties[who]);
  if (!move.ok && move.because === "party" && who === "owner" && step !== "save") return "ROLE_NEEDED";
  if (!move.ok) return move.because === "party" ? "SUBMISSION_NOT_YOURS" : "SUBMISSION_STEP";
  return seen === model.version ? "done" : "CHANGED_MEANWHILE";
}

class Step implements fc.AsyncCommand<Model, Real> {
  constructor(
    private readonly who: Who,
    private readonly step: Exclude<SubmissionStep, "save">,
    private readonly stale: boolean,
  ) {}

  check = () => true;

  async run(model: Model, real: Real): Promise<void> {
    const seen = this.stale ? model.version + 1 : model.version;
    const given = { id: real.id, version: seen, key: crypto.randomUUID(), text: `${this.who} ${this.step}` };
    const { who, step } = this;
    const work = () =>
      step === "accept" || step === "decline" || step === "query"
        ? as(who, (ctx) => decideSubmission(ctx, decideInput.parse({ ...given, decision: step })))
        : as(who, (ctx) => stepSubmission(ctx, makerStepInput.parse({ ...given, step })));
    const told = await outcome(work);
    expect(told, `${who} ${step} from ${model.status}`).toBe(expected(model, who, step, seen));
    if (told !== "done") return;
    const move = moveSubmission(model.status, step, parties[who]);
    if (move.ok) model.status = move.status;
    model.version += 1;
    model.messages += 1;
    real.last = work;
  }

  toString = () => `${this.who} ${this.step}${this.stale ? " (stale)" : ""}`;
}

class Again implements fc.AsyncCommand<Model, Real> {
  check = () => true;
  async run(model: Model, real: Real): Promise<void> {
    if (!real.last) return;
    const before = await world.fingerprint();
    const told = await outcome(real.last);
    // Taken again it changes nothing: answered as before, or refused since something else was done meanwhile.
    expect(["done", "SUBMISSION_STEP", "CHANGED_MEANWHILE"]).toContain(told);
    expect(await world.fingerprint()).toEqual(before);
    expect(model.version).toBeGreaterThan(0);
  }
  toString = () => "the last step again";
}

class Save implements fc.AsyncCommand<Model, Real> {
  constructor(
    private readonly who: Who,
    private readonly diameter: string,
  ) {}
  check = () => true;
  async run(model: Model, real: Real): Promise<void> {
    const { who, diameter } = this;
    const told = await outcome(() =>
      as(who, (ctx) =>
        saveDraft(ctx, { id: real.id, version: model.version, content: content(diameter), count: 1 }),
      ),
    );
    expect(told, `${who} saves from ${model.status}`).toBe(expected(model, who, "save", model.version));
    if (told !== "done" || diameter === model.diameter) return;
    model.version += 1;
    model.diameter = diameter;
  }
  toString = () => `${this.who} saves ${this.diameter}`;
}

async function holds(model: Model, real: Real): Promise<void> {
  const view = await as("registrar", (ctx) => submissionView(ctx, real.id));
  expect([view.status, view.version, view.thread.length]).toEqual([
    model.status,
    model.version,
    model.messages,
  ]);
  const modifications = await world.inClub((db) => db.modification.count({ where: { carId: real.car.id } }));
  expect(modifications).toBe(model.status === "accepted" ? 1 : 0);
  const value = await world.inClub((db) =>
    db.currentValue.findFirstOrThrow({
      where: { carId: real.car.id, characteristic: "front.antiRollBar.diameter" },
    }),
  );
  expect(value.entered).toBe(model.status === "accepted" ? model.diameter : "16 mm");
}

test("the service goes exactly the ways of the machine, whoever tries what in whatever order, however often", async () => {
  const who = fc.constantFrom<Who>("owner", "registrar");
  const steps = ["submit", "query", "answer", "accept", "decline", "withdraw"] as const;
  const commands = fc.commands(
    [
      fc
        .tuple(who, fc.constantFrom(...steps), fc.integer({ min: 0, max: 9 }))
        .map(([by, step, luck]) => new Step(by, step, luck === 0)),
      // The likely ways more often, so that runs come to their ends.
      fc.constantFrom(new Step("owner", "submit", false), new Step("registrar", "query", false)),
      fc.constantFrom(new Step("owner", "answer", false), new Step("registrar", "accept", false)),
      fc.tuple(who, fc.constantFrom("20 mm", "22 mm")).map(([by, diameter]) => new Save(by, diameter)),
      fc.constant(new Again()),
    ],
    { maxCommands: 14 },
  );
  await fc.assert(
    fc.asyncProperty(commands, async (list) => {
      const car = await world.car({
        keeper: { name: "Owner", membershipId: owner.membershipId },
        read: { "front.antiRollBar.diameter": "16 mm" },
        readOn: "2019-01-01",
      });
      await as("registrar", async (ctx) => rebuildCurrentValues(ctx, [car.id], await bookOf(ctx)));
      const { id, version } = await as("owner", (ctx) =>
        createDraft(ctx, { clientKey: crypto.randomUUID(), car: car.reference, content: content("20 mm") }),
      );
      const model: Model = { status: "draft", version, diameter: "20 mm", messages: 0 };
      const real: Real = { id, car, last: undefined };
      await fc.asyncModelRun(() => ({ model, real }), list);
      await holds(model, real);
    }),
    { numRuns: 25 },
  );
  await as("registrar", async (ctx) => {
    expect(await verifyJournal(ctx)).toEqual([]);
    expect(
      (await compareCurrentValues(ctx, await bookOf(ctx))).filter(({ problem }) => problem === "different"),
    ).toEqual([]);
  });
}, 240_000);
