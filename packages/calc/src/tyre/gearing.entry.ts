import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { CalcRefusal } from "../catalogue/refusal";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { resolveTyre, tyreSchema, tyreSources } from "./field";
import {
  cableTurnsPerWheelTurn,
  engineSpeedAt,
  roadSpeed,
  travelPerEngineAngle,
  wheelTurns,
} from "./gearing";

const ratio = (label: string, help: string) => quantity("ratio", { label, help, above: 0, max: 20 });
const input = z.object({
  tyre: tyreSchema,
  gearRatio: ratio("Gear ratio", "Engine over gearbox output; 1 in direct top"),
  finalDrive: ratio("Final drive ratio", "Crown wheel over pinion"),
  engineSpeed: quantity("angularSpeed", {
    label: "Engine speed",
    help: "Where the road speed is wanted",
    min: 0,
    max: 3000,
    unit: "rev/min",
  }).optional(),
  speed: quantity("speed", {
    label: "Road speed",
    help: "Where the engine speed is wanted",
    min: 0,
    max: 150,
    unit: "km/h",
  }).optional(),
  drivingTeeth: quantity("count", {
    label: "Speedometer drive: teeth on the gearbox shaft",
    above: 0,
    max: 100,
  }).optional(),
  drivenTeeth: quantity("count", {
    label: "Speedometer drive: teeth on the cable pinion",
    above: 0,
    max: 100,
  }).optional(),
});

export const tyreGearingComputation = defineComputation({
  name: "tyre.gearing",
  title: "Gearing and speedometer drive",
  summary: "Road speed against engine speed in a gear, and turns of the speedometer cable per mile.",
  input,
  outputs: {
    speedPer1000: {
      label: "Speed per 1000 rev/min",
      dimension: "lengthPerAngle",
      unit: "km/h per 1000 rev/min",
      decimals: 2,
    },
    roadSpeed: { label: "Road speed at the engine speed", dimension: "speed", unit: "km/h", decimals: 1 },
    engineSpeed: {
      label: "Engine speed at the road speed",
      dimension: "angularSpeed",
      unit: "rev/min",
      decimals: 0,
    },
    wheelTurnsPerMile: { label: "Wheel turns per mile", dimension: "count", decimals: 1 },
    cableTurnsPerMile: {
      how: ["n_c", "wheel turns per mile times final drive and the teeth of the speedometer's drive"],
      label: "Speedometer cable turns per mile",
      dimension: "count",
      decimals: 1,
    },
  },
  source: [
    { title: "Geometry of a rolling wheel behind two gear pairs", status: "common practice, no source" },
    ...tyreSources,
  ],
  validity:
    "No slip of clutch, converter or tyres; the cable driven from the gearbox output, before the final drive.",
  example: {
    tyre: { size: "155/80 R 13" },
    gearRatio: 1,
    finalDrive: 3.9,
    engineSpeed: "5000 rev/min",
    speed: "100 km/h",
    drivingTeeth: 6,
    drivenTeeth: 17,
  },
  compute(given) {
    const { tyre, gearRatio, finalDrive, drivingTeeth, drivenTeeth } = given;
    const { circumference, steps, warnings } = resolveTyre(tyre, { words: "Tyre", place: "tyre" });
    const gearing = { circumference, overallRatio: gearRatio * finalDrive };
    const speedPer1000 = travelPerEngineAngle(gearing);
    const speed = given.engineSpeed === undefined ? null : roadSpeed(given.engineSpeed, gearing);
    const engineSpeed = given.speed === undefined ? null : engineSpeedAt(given.speed, gearing);
    const wheelTurnsPerMile = wheelTurns(1609.344, circumference);
    if ((drivingTeeth === undefined) !== (drivenTeeth === undefined))
      throw new CalcRefusal(
        "HALF_A_DRIVE",
        "the speedometer drive needs the teeth of both gears",
        "drivingTeeth",
      );
    const cableTurnsPerMile =
      drivingTeeth === undefined || drivenTeeth === undefined
        ? null
        : wheelTurnsPerMile *
          cableTurnsPerWheelTurn({ finalDrive, driving: drivingTeeth, driven: drivenTeeth });
    const working = () => [
      ...steps(),
      ...givenSteps(input, given, {
        symbols: {
          gearRatio: "i_g",
          finalDrive: "i_f",
          engineSpeed: "n",
          speed: "v",
          drivingTeeth: "z₁",
          drivenTeeth: "z₂",
        },
      }),
      ...worked([
        ["i", "Overall ratio", "i_g·i_f", gearing.overallRatio, "ratio"],
        [
          "v₁₀₀₀",
          "Speed per 1000 rev/min",
          "1000/min·U/i",
          speedPer1000,
          "lengthPerAngle",
          "km/h per 1000 rev/min",
        ],
        ["v_n", "Road speed at the engine speed", "n·U/i, n in revolutions", speed, "speed", "km/h"],
        [
          "n_v",
          "Engine speed at the road speed",
          "v·i/U, in revolutions",
          engineSpeed,
          "angularSpeed",
          "rev/min",
        ],
        ["N_w", "Wheel turns per mile", "1609.344 m/U", wheelTurnsPerMile, "count"],
        ["N_c", "Cable turns per mile", "N_w·i_f·z₁/z₂", cableTurnsPerMile, "count"],
      ]),
    ];
    return {
      outputs: { speedPer1000, roadSpeed: speed, engineSpeed, wheelTurnsPerMile, cableTurnsPerMile },
      working,
      warnings,
    };
  },
});
