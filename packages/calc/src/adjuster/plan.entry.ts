import { z } from "zod";
import { type Computed, defineComputation, type Outputs, type WorkingStep } from "../catalogue/computation";
import { cornerLayout } from "../linkage/layout";
import { printQuantity } from "../quantity/print";
import { worked } from "../spring/worked";
import type { Adjuster } from "./adjuster";
import {
  caution,
  degrees,
  difference,
  exampleCorner,
  exampleJoint,
  millimetres,
  minutes,
  settingsInWords,
  sources,
} from "./entry-part";
import { adjusterField, assembleAdjusted, requireKnownPoints, targetField, toleranceField } from "./field";
import { type Plan, planAdjustment } from "./plan";

const perTravel = { dimension: "anglePerLength", unit: "'/mm", decimals: 3 } as const;

const planInput = z.object({
  corner: cornerLayout,
  adjusters: z.array(adjusterField).min(1).max(8).meta({ title: "Adjusters" }),
  target: targetField,
  tolerance: toleranceField,
});

const planOutputs = {
  plan: {
    how: ["plan", "the steps above in the order of work: castor first, then camber, then toe, tie rods last"],
    label: "What to do, in order",
    dimension: "text",
  },
  verdict: { how: ["verdict", "each error against its tolerance"], label: "Verdict", dimension: "text" },
  camber: { how: ["γ", "reading after the last step"], label: "Camber reached", ...degrees },
  castor: { how: ["τ", "reading after the last step"], label: "Castor reached", ...degrees },
  toeIn: { how: ["θ", "reading after the last step"], label: "Toe-in of this wheel reached", ...minutes },
  camberError: {
    how: ["Δγ", "reading after the last step less what was wanted"],
    label: "Camber, reached less wanted",
    ...minutes,
  },
  castorError: { how: ["Δτ", "as above"], label: "Castor, reached less wanted", ...minutes },
  toeInError: { how: ["Δθ", "as above"], label: "Toe-in, reached less wanted", ...minutes },
  kingpinChange: {
    how: ["Δσ", "after the last step less as it stands"],
    label: "Change of kingpin inclination",
    ...degrees,
  },
  trackChange: {
    how: ["Δy", "contact point outboard, after the last step less as it stands"],
    label: "Track change, this wheel",
    ...millimetres,
  },
  wheelShift: {
    how: ["Δx", "contact point forwards, after the last step less as it stands"],
    label: "Wheel forwards of where it was",
    ...millimetres,
  },
  scrubChange: {
    how: ["Δr_k", "after the last step less as it stands"],
    label: "Change of scrub radius",
    ...millimetres,
  },
  trailChange: {
    how: ["Δn_k", "after the last step less as it stands"],
    label: "Change of trail",
    ...millimetres,
  },
  bumpSteerBefore: {
    how: ["θ′₀", "change of toe-in per rise of the wheel centre, as it stands"],
    label: "Bump steer before",
    ...perTravel,
  },
  bumpSteerAfter: { how: ["θ′", "as above, after the last step"], label: "Bump steer after", ...perTravel },
  rollCentreChange: {
    how: ["Δz_RC", "after the last step less as it stands"],
    label: "Change of roll-centre height",
    ...millimetres,
  },
} as const satisfies Outputs;

/** Catalogue entry `adjuster.plan`. */
export const adjusterPlanComputation = defineComputation({
  name: "adjuster.plan",
  title: "Turns and shims to reach a setting",
  summary:
    "Which adjusters to move by how much for camber, castor and toe together, in steps that can be set.",
  input: planInput,
  outputs: planOutputs,
  source: sources,
  validity:
    "Rigid parts, wheel centre's height over the chassis held. All whole settings within three steps of the best unrounded one are weighed by a linear model and the most promising solved exactly; a better one further off is not looked for. Hardpoints as measured: an error in them is an error in the plan, so measure after each step.",
  caution,
  example: {
    corner: exampleCorner,
    adjusters: [
      exampleJoint,
      {
        kind: "shims",
        name: "upper arm washers",
        points: ["upperArmFront", "upperArmRear"],
        axis: { x: -1, y: 0, z: 0 },
        thickness: "1.6 mm",
        fitted: 3,
        most: 6,
      },
      { kind: "tieRod", name: "track rod end", pitch: "1/14 in", step: 1 / 12, lowest: -6, highest: 6 },
    ],
    target: { camber: "-1°0'", castor: "4°40'", toeIn: "0°8' toe-in per side" },
  },
  compute(given) {
    requireKnownPoints(given.corner, given.adjusters);
    const { adjusters, target, tolerance } = given;
    const plan = planAdjustment({ assemble: assembleAdjusted(given.corner), adjusters, target, tolerance });
    return answer(plan, given);
  },
});

function answer(plan: Plan, given: z.output<typeof planInput>): Computed<typeof planOutputs> {
  const { before, after, error } = plan;
  return {
    outputs: {
      plan: plan.moves.length === 0 ? "nothing to move" : plan.moves.map(({ words }) => words).join("; "),
      verdict: plan.withinTolerance
        ? "every angle within its tolerance"
        : "the nearest that can be set, outside tolerance",
      camber: after.camber,
      castor: after.castor,
      toeIn: after.toeIn,
      camberError: error.camber,
      castorError: error.castor,
      toeInError: error.toeIn,
      kingpinChange: difference(after.kingpin, before.kingpin),
      trackChange: after.trackChange - before.trackChange,
      wheelShift: after.forwardShift - before.forwardShift,
      scrubChange: difference(after.scrub, before.scrub),
      trailChange: difference(after.trail, before.trail),
      bumpSteerBefore: before.toeGain,
      bumpSteerAfter: after.toeGain,
      rollCentreChange: difference(after.rollCentreHeight, before.rollCentreHeight),
    },
    working: () => [...weights(given), ...steps(plan), ...ideals(plan, given)],
    warnings: warningsOf(plan),
  };
}

function weights({ tolerance }: z.output<typeof planInput>): WorkingStep[] {
  return worked([
    ["u_γ", "Tolerance of camber", "errors are weighed in tolerances", tolerance.camber, "angle", "'"],
    ["u_τ", "Tolerance of castor", "as above", tolerance.castor, "angle", "'"],
    ["u_θ", "Tolerance of this wheel's toe", "as above", tolerance.toeIn, "angle", "'"],
  ]);
}

function steps({ moves, before, weighed, solved }: Plan): WorkingStep[] {
  return [
    { symbol: "0", label: "As it stands", value: settingsInWords(before) },
    ...moves.map(({ words, after }, index) => ({
      symbol: String(index + 1),
      label: `${words.charAt(0).toUpperCase()}${words.slice(1)}`,
      value: settingsInWords(after),
      note: "expected reading after this step",
    })),
    { symbol: "n", label: "Whole settings weighed, of which solved exactly", value: `${weighed}, ${solved}` },
  ];
}

function ideals({ ideal }: Plan, { adjusters }: z.output<typeof planInput>): WorkingStep[] {
  return adjusters.map(({ name, kind }) => {
    const change = ideal[name] ?? 0;
    const value = changeInWords(kind, change);
    return { symbol: name, label: `Best without steps: ${name}`, value, note: "from where it stands" };
  });
}

function changeInWords(kind: Adjuster<string>["kind"], change: number): string {
  switch (kind) {
    case "eccentric":
    case "camberBolt":
      return printQuantity(change, { dimension: "angle", unit: "°" });
    case "slot":
      return printQuantity(change, { dimension: "length", unit: "mm" });
    case "shims":
      return `${change.toFixed(3)} shims`;
    case "screwedJoint":
    case "tieRod":
      return `${change.toFixed(3)} turns`;
  }
}

function warningsOf({ atLimit, held, withinTolerance }: Plan): string[] {
  const warnings = atLimit.map((name) => `The target lies beyond the limit of ${name}.`);
  if (held.length > 0)
    warnings.push(`Not asked for, so held where it stands: ${held.map((name) => names[name]).join(", ")}.`);
  if (!withinTolerance && atLimit.length === 0)
    warnings.push(
      "The steps of the adjusters are too coarse, or too few angles can be reached with them, for the tolerances given.",
    );
  return warnings;
}
const names = { camber: "camber", castor: "castor", toeIn: "toe" } as const;
