import { type StudyCar, type StudySetting, settingNow, studyRoll, withoutBars } from "@trunnion/register";
import { type BenchRow, medianMs } from "./row";

/** One frame of a display at 60 Hz, milliseconds. */
const FRAME = 1000 / 60;

/**
 * The slowest of 3,000 cars drawn at random within what is believable, each the best of three tries (2026-11-29): both
 * axles can lift a wheel, so that both are searched for.
 */
const worst: StudyCar = {
  front: {
    track: 1.1945,
    mass: 466.58,
    unsprungMass: 47.205,
    unsprungHeight: 0.27882,
    rollCentreHeight: -0.027019,
    springRate: 71_502,
    motionRatio: 0.92131,
    barWheelRate: 17_998,
  },
  rear: {
    track: 1.1939,
    mass: 329.56,
    unsprungMass: 55.518,
    unsprungHeight: 0.27998,
    rollCentreHeight: -0.019847,
    springRate: 40_659,
    motionRatio: 0.69834,
    barWheelRate: 4940,
  },
  cgHeight: 0.57307,
};

/** What one movement of a slider works out: the car as it stands, as moved, and moved with bars left off. */
function frame(car: StudyCar, setting: StudySetting): readonly unknown[] {
  return [
    studyRoll(car, settingNow(car)),
    studyRoll(car, setting),
    ...(["none", "frontOnly", "rearOnly"] as const).map((fitting) =>
      studyRoll(car, withoutBars(setting, fitting)),
    ),
  ];
}

/** Springs and bars in roll: whether a slider is answered within a frame. */
export async function sliderBench(): Promise<readonly BenchRow[]> {
  let step = 0;
  const one = await medianMs(400, () => {
    step += 1;
    return frame(worst, {
      ...settingNow(worst),
      frontBar: 18_000 + (step % 97) * 40,
      acceleration: 4 + (step % 7) / 10,
    });
  });
  return [
    {
      group: "slider",
      name: "one movement of a slider: five cars in roll, the recorded worst case",
      value: one,
      unit: "ms",
      peer: { name: "a frame at 60 Hz", value: FRAME },
      ratio: FRAME / one,
    },
  ];
}
