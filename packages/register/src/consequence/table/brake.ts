import type { Binding, Feed } from "../binding";
import { type Axle, assumed, axles, of, perhaps } from "./feed";

/** Pistons of one face: a caliper of two or more has half on each; of a sliding one the single piston counts. */
const pistons = (axle: Axle): Feed => ({
  from: "values",
  of: [{ key: `${axle}.caliper.pistons` }, { key: `${axle}.caliper.pistonDiameter` }],
  says: "the pistons of one face of the caliper",
  value: ([count = 1, diameter = 0]) =>
    Array.from({ length: Math.max(1, Math.round(count / 2)) }, () => diameter),
});

const disc = (axle: Axle, name: string): Binding => ({
  id: `${axle}.brake.disc`,
  title: `${name} brake`,
  computation: "brake.discTorque",
  mode: "each",
  inputs: {
    pressure: assumed(50e5, "the same line pressure, 50 bar"),
    pistonDiameters: pistons(axle),
    friction: assumed(0.38, "the same pad friction, 0.38"),
    discDiameter: of(`${axle}.disc.diameter`),
    padHeight: assumed(0.045, "pads 45 mm high, flush with the disc's edge"),
  },
  figures: [{ output: "torque", label: `${name} brake torque for the same line pressure`, only: "ratio" }],
});

const pedal: Binding = {
  id: "brake.pedal",
  title: "Brake pedal",
  computation: "brake.pressure",
  mode: "each",
  inputs: {
    pedalForce: assumed(200, "the same push on the pedal, 200 N"),
    pedalRatio: of("brakes.pedalRatio"),
    masterBore: of("brakes.masterCylinder.diameter"),
    servoGain: perhaps("brakes.servo"),
  },
  figures: [{ output: "pressure", label: "Line pressure for the same push on the pedal", only: "ratio" }],
};

export const brakeBindings: readonly Binding[] = [...axles.map(({ axle, name }) => disc(axle, name)), pedal];
