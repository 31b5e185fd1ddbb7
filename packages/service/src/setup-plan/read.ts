import { createHash } from "node:crypto";
import type { Settings } from "@trunnion/calc";
import {
  adjustmentsOnRecord,
  layoutOf,
  makeSetupPlan,
  type PlanAxle,
  type PlanField,
  type PlanLayout,
  type PlanReading,
  type PlanResult,
  type PlanSide,
  planFields,
  planLayout,
  type RecordedAdjustment,
  readPlan,
  refused,
  SETUP_PLAN_LAYOUT,
  type SetupPlan,
  type SetupPlanModel,
  sayAngle,
  sayMove,
  sayToe,
  sideEffectsOf,
  targetsOf,
} from "@trunnion/register";
import { assessAll } from "../assessment";
import { findCar } from "../car";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import type { CarRecord } from "../record";

export interface SetupPlanInput {
  /** The car's reference. */
  readonly car: string;
  readonly axle: PlanAxle;
  readonly side: PlanSide;
  /** What was typed, by field; `layout` says how the wheels are guided where the record does not. */
  readonly typed: Readonly<Record<string, string>>;
}

/** A wheel's set-up plan: what the record gives, what it lacks, and the plan once there is one. */
export interface SetupPlanPage extends Omit<PlanReading, "plan"> {
  readonly club: ClubFacts;
  readonly of: { readonly reference: string; readonly chassis: string };
  readonly axle: PlanAxle;
  readonly side: PlanSide;
  /** How the axle's wheels are guided; everything below is empty unless that can be planned with. */
  readonly layout: PlanLayout;
  readonly fields: readonly PlanField[];
  /** How the wheel is adjusted, as the record says. */
  readonly adjustments: readonly RecordedAdjustment[];
  readonly result?: PlanResult;
}

async function workedOut(ctx: Context, { car, axle, side, typed }: SetupPlanInput) {
  const record = await findCar(ctx, car);
  const book = await bookOf(ctx);
  const [assessment] = await assessAll(ctx, [record], book, ctx.today);
  if (!assessment) throw new Error(`no assessment of ${car}`);
  const { state } = assessment;
  const of = { reference: record.reference, chassis: record.chassis };
  const layout = planLayout(state, book, { axle, said: typed.layout ?? "" });
  const planned = layout.known === "planned" ? layoutOf(axle, layout.code) : undefined;
  const base = { club: ctx.club, of, axle, side, layout };
  if (planned === undefined) {
    const nothing = { problems: [], lacking: [], asked: false, fields: [], adjustments: [] };
    return { page: { ...base, ...nothing } satisfies SetupPlanPage as SetupPlanPage, record };
  }
  const fields = planFields(state, book, { axle, side, code: planned.code });
  const { plan, ...reading } = readPlan({ layout: planned, fields }, typed);
  const page: SetupPlanPage = {
    ...base,
    fields,
    adjustments: adjustmentsOnRecord(state, book, planned),
    ...reading,
    ...(plan === undefined ? {} : { result: makeSetupPlan(plan) }),
  };
  return { page, record };
}

/**
 * Which adjusters to move by how much to bring one wheel to a setting. Works on what the record and the reader
 * give; what neither gives is told, and nothing is taken for granted.
 *
 * @throws Refusal CAR_NOT_FOUND
 */
export async function setupPlanPage(ctx: Context, input: SetupPlanInput): Promise<SetupPlanPage> {
  return (await workedOut(ctx, input)).page;
}

const reading = ({ camber, castor, toeIn }: Settings) => ({
  camber: sayAngle(camber),
  castor: castor === null ? "" : sayAngle(castor),
  toe: sayToe(toeIn),
});

function leftOver({ camber, castor, toeIn }: SetupPlan["error"]) {
  const say = (si: number | null) => (si === null ? "" : sayMove(si));
  return { camber: say(camber), castor: say(castor), toe: say(toeIn) };
}

/**
 * A plan as a page for the garage: its model, from which the same bytes come again.
 *
 * @throws Refusal CAR_NOT_FOUND; SETUP_PLAN_NOT_READY while something lacks, is wrong or cannot be planned
 */
export async function setupPlanModel(ctx: Context, input: SetupPlanInput): Promise<SetupPlanModel> {
  const { page, record } = await workedOut(ctx, input);
  const { result } = page;
  if (!result?.ok) throw refused("SETUP_PLAN_NOT_READY", { car: record.reference });
  return modelOf(ctx, record, { ...input, plan: result.plan });
}

function modelOf(
  ctx: Context,
  record: CarRecord,
  { axle, side, typed, plan }: SetupPlanInput & { readonly plan: SetupPlan },
): SetupPlanModel {
  const words =
    ctx.club.sideWords === "nearOff"
      ? { left: "nearside", right: "offside" }
      : { left: "left", right: "right" };
  const wanted = targetsOf({ steers: plan.before.castor !== null }).flatMap(({ name, label }) => {
    const text = typed[name]?.trim() ?? "";
    return text === "" ? [] : [{ label, value: text }];
  });
  const given = JSON.stringify({ axle, side, typed, chassis: record.chassis });
  return {
    layoutVersion: SETUP_PLAN_LAYOUT,
    hash: createHash("sha256").update(given).digest("hex"),
    preparedAt: ctx.now.toISOString(),
    club: ctx.club.name,
    car: {
      chassis: record.chassis,
      marque: record.series?.marque.name ?? "",
      series: record.series?.name ?? "series not settled",
    },
    wheel: `${axle} ${words[side]} wheel`,
    wanted,
    before: reading(plan.before),
    steps: plan.steps.map(({ words: what, after }) => ({ what, ...reading(after) })),
    left: leftOver(plan.error),
    sideEffects: sideEffectsOf(plan).map(({ label, value }) => `${label} ${value}`),
    verdict: plan.withinTolerance
      ? "Every angle comes within its tolerance: camber 5', castor 15', toe 2'."
      : "This is the nearest that can be set; it stays outside tolerance (camber 5', castor 15', toe 2').",
    remarks: [
      ...plan.atLimit.map((name) => `The target lies beyond the limit of the ${name}.`),
      ...(plan.held.length === 0
        ? []
        : [
            `Held where it stands, since nothing else was asked: ${plan.held.map((name) => (name === "toeIn" ? "toe" : name)).join(", ")}.`,
          ]),
    ],
    cautions: [
      plan.caution,
      "Worked out from the hardpoints as given, with the wheel centre's height over the chassis held: an error in them is an error in the plan.",
    ].filter((text) => text !== ""),
  };
}
