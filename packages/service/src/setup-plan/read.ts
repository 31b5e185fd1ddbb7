import { createHash } from "node:crypto";
import { printQuantity, printToe, type Settings } from "@trunnion/calc";
import {
  adjustmentsOnRecord,
  makeSetupPlan,
  type PlanField,
  type PlanReading,
  type PlanResult,
  type PlanSide,
  planFields,
  readPlan,
  refused,
  SETUP_PLAN_LAYOUT,
  type SetupPlanModel,
  targetFields,
} from "@trunnion/register";
import { assessAll } from "../assessment";
import { findCar } from "../car";
import { bookOf } from "../characteristic";
import type { ClubFacts, Context } from "../context";
import type { CarRecord } from "../record";

export interface SetupPlanInput {
  /** The car's reference. */
  readonly car: string;
  readonly side: PlanSide;
  /** What was typed, by field. */
  readonly typed: Readonly<Record<string, string>>;
}

/** A front wheel's set-up plan: what the record gives, what it lacks, and the plan once there is one. */
export interface SetupPlanPage extends Omit<PlanReading, "plan"> {
  readonly club: ClubFacts;
  readonly of: { readonly reference: string; readonly chassis: string };
  readonly side: PlanSide;
  readonly fields: readonly PlanField[];
  /** How the arms are adjusted, as the record says; empty where it does not. */
  readonly adjustments: Readonly<Record<"upper" | "lower", string>>;
  /** The layout that the record says, where it is not the one planned for. */
  readonly otherLayout?: string;
  readonly result?: PlanResult;
}

async function workedOut(ctx: Context, { car, side, typed }: SetupPlanInput) {
  const record = await findCar(ctx, car);
  const book = await bookOf(ctx);
  const [assessment] = await assessAll(ctx, [record], book, ctx.today);
  if (!assessment) throw new Error(`no assessment of ${car}`);
  const { state } = assessment;
  const fields = planFields(state, book, side);
  const { plan, ...reading } = readPlan(fields, typed);
  const layout = state.get("front.layout whole")?.value;
  const other = layout?.kind === "choice" && layout.code !== "doubleWishbone" ? layout.entered : undefined;
  const page: SetupPlanPage = {
    club: ctx.club,
    of: { reference: record.reference, chassis: record.chassis },
    side,
    fields,
    adjustments: adjustmentsOnRecord(state, book),
    ...reading,
    ...(other === undefined ? {} : { otherLayout: other }),
    ...(plan === undefined ? {} : { result: makeSetupPlan(plan) }),
  };
  return { page, record };
}

/**
 * Which adjusters to move by how much to bring one front wheel to a setting. Works on what the record and the reader
 * give; what neither gives is told, and nothing is taken for granted.
 *
 * @throws Refusal CAR_NOT_FOUND
 */
export async function setupPlanPage(ctx: Context, input: SetupPlanInput): Promise<SetupPlanPage> {
  return (await workedOut(ctx, input)).page;
}

const angle = (si: number) => printQuantity(si, { dimension: "angle", unit: "°", decimals: 2 });
const toe = (si: number) => printToe(si, { share: "perSide", unit: "'", resolution: Math.PI / 180 / 600 });
const reading = ({ camber, castor, toeIn }: Settings) => ({
  camber: angle(camber),
  castor: castor === null ? "" : angle(castor),
  toe: toe(toeIn),
});

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
  {
    side,
    typed,
    plan,
  }: SetupPlanInput & { readonly plan: Extract<PlanResult, { readonly ok: true }>["plan"] },
): SetupPlanModel {
  const words =
    ctx.club.sideWords === "nearOff"
      ? { left: "nearside", right: "offside" }
      : { left: "left", right: "right" };
  const wanted = targetFields.flatMap(({ name, label }) => {
    const text = typed[name]?.trim() ?? "";
    return text === "" ? [] : [{ label, value: text }];
  });
  const given = JSON.stringify({ side, typed, chassis: record.chassis });
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
    wheel: `front ${words[side]} wheel`,
    wanted,
    before: reading(plan.before),
    steps: plan.steps.map(({ words: what, after }) => ({ what, ...reading(after) })),
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
