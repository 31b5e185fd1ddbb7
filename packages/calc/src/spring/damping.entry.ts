import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { criticalDamping, damperForce, dampingCoefficient, dampingRatio } from "./damping";
import { sprungMassField, wheelRateField } from "./field";
import { givenSteps } from "./given";
import { worked } from "./worked";

/** A dynamometer sheet has a dozen points, not thousands. */
const mostPoints = 200;
const curve = (title: string) =>
  z
    .array(
      z.strictObject({
        speed: quantity("speed", { label: "Damper speed", above: 0, max: 10, unit: "mm/s" }),
        force: quantity("force", { label: "Damper force", min: 0, unit: "N" }),
      }),
    )
    .min(1)
    .max(mostPoints)
    .meta({ title });
const input = z.object({
  bump: curve("Bump (compression) points"),
  rebound: curve("Rebound (extension) points"),
  speed: quantity("speed", {
    label: "Damper speed to judge at",
    help: "Body control is judged at about 0.05 to 0.15 m/s",
    above: 0,
    max: 10,
    unit: "mm/s",
  }),
  damperMotionRatio: quantity("ratio", {
    label: "Damper motion ratio",
    help: "Damper movement per wheel movement",
    above: 0,
    max: 2,
  }),
  wheelRate: wheelRateField,
  sprungMass: sprungMassField,
});

export const springDampingComputation = defineComputation({
  name: "spring.damping",
  title: "Damping ratio",
  summary: "How strongly a corner is damped, in bump and rebound, from the damper's force-speed points.",
  input,
  outputs: {
    bumpRatio: { label: "Damping ratio in bump", dimension: "ratio", decimals: 2 },
    reboundRatio: { label: "Damping ratio in rebound", dimension: "ratio", decimals: 2 },
    meanRatio: { label: "Mean damping ratio", dimension: "ratio", decimals: 2 },
    bumpCoefficient: { label: "Damper coefficient in bump", dimension: "dampingRate", unit: "N·s/m" },
    reboundCoefficient: { label: "Damper coefficient in rebound", dimension: "dampingRate", unit: "N·s/m" },
    critical: { label: "Critical damping at the wheel", dimension: "dampingRate", unit: "N·s/m" },
    reboundOverBump: { how: ["q", "F_r/F_b"], label: "Rebound over bump", dimension: "ratio", decimals: 2 },
  },
  source: [{ title: "Single mass on spring and damper: ζ = c/(2√(k·m))", status: "memory" }],
  validity:
    "At the speed given only, by straight lines between the points and never beyond them; sprung mass of one corner on its wheel rate, tyre and unsprung mass left out.",
  example: {
    bump: [
      { speed: "50 mm/s", force: "110 N" },
      { speed: "130 mm/s", force: "230 N" },
      { speed: "300 mm/s", force: "400 N" },
    ],
    rebound: [
      { speed: "50 mm/s", force: "240 N" },
      { speed: "130 mm/s", force: "500 N" },
      { speed: "300 mm/s", force: "850 N" },
    ],
    speed: "100 mm/s",
    damperMotionRatio: 0.72,
    wheelRate: "14.5 N/mm",
    sprungMass: "185 kg",
  },
  compute(given) {
    const { bump, rebound, speed } = given;
    const [inBump, inRebound] = [dampingCoefficient(bump, speed), dampingCoefficient(rebound, speed)];
    const critical = criticalDamping(given);
    const [bumpRatio, reboundRatio] = [dampingRatio(inBump, given), dampingRatio(inRebound, given)];
    const meanRatio = (bumpRatio + reboundRatio) / 2;
    const working = () => [
      ...givenSteps(input, given, {
        symbols: { speed: "v", damperMotionRatio: "MR", wheelRate: "k_w", sprungMass: "m" },
      }),
      ...worked([
        ["F_b", "Force in bump", `between ${bump.length} points`, damperForce(bump, speed), "force", "N"],
        [
          "F_r",
          "Force in rebound",
          `between ${rebound.length} points`,
          damperForce(rebound, speed),
          "force",
          "N",
        ],
        ["c_b", "Coefficient in bump", "F_b/v", inBump, "dampingRate", "N·s/m"],
        ["c_r", "Coefficient in rebound", "F_r/v", inRebound, "dampingRate", "N·s/m"],
        ["c_c", "Critical damping at the wheel", "2·√(k_w·m)", critical, "dampingRate", "N·s/m"],
        ["ζ_b", "Damping ratio in bump", "c_b·MR²/c_c", bumpRatio, "ratio"],
        ["ζ_r", "Damping ratio in rebound", "c_r·MR²/c_c", reboundRatio, "ratio"],
        ["ζ", "Mean", "(ζ_b + ζ_r)/2", meanRatio, "ratio"],
      ]),
    ];
    const outputs = {
      bumpRatio,
      reboundRatio,
      meanRatio,
      bumpCoefficient: inBump,
      reboundCoefficient: inRebound,
      critical,
      reboundOverBump: inBump === 0 ? null : inRebound / inBump,
    };
    return {
      outputs,
      working,
      warnings: meanRatio > 1 ? ["More than critical: the wheel follows the road badly."] : [],
    };
  },
});
