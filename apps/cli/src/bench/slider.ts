import { type StudyCar, type StudySetting, settingNow, studyRoll, withoutBars } from "@trunnion/register";
import { type BenchRow, medianMs } from "./row";

/** One frame of a display at 60 Hz, milliseconds. */
const FRAME = 1000 / 60;

/**
 * The slowest of 200,000 cars drawn at random within what is believable (2026-11-29): a wheel of each axle can lift, so
 * that both are searched for, and the roll angle takes most rounds.
 */
const worst: StudyCar = {
  front: {
    track: 1.18,
    mass: 402,
    unsprungMass: 68,
    unsprungHeight: 0.3,
    rollCentreHeight: -0.03,
    springRate: 14_000,
    motionRatio: 0.92,
    barWheelRate: 1200,
  },
  rear: {
    track: 1.16,
    mass: 455,
    unsprungMass: 88,
    unsprungHeight: 0.3,
    rollCentreHeight: 0.06,
    springRate: 12_500,
    motionRatio: 0.95,
    barWheelRate: 0,
  },
  cgHeight: 0.55,
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
      frontBar: 1200 + (step % 97) * 40,
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
