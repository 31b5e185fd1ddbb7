import type { Characteristic, UsualRange } from "../characteristic";
import { degree } from "./preset";

const si = (lowest: number, highest: number): UsualRange => ({ lowest, highest });
const mm = (lowest: number, highest: number) => si(lowest / 1000, highest / 1000);
const degrees = (lowest: number, highest: number) => si(lowest * degree, highest * degree);
const litres = mm;

/** Of each axle, after its name. */
const ofAxle: Readonly<Record<string, UsualRange>> = {
  "antiRollBar.diameter": mm(9, 30),
  "antiRollBar.bore": mm(5, 26),
  "antiRollBar.middleLength": mm(400, 1300),
  "antiRollBar.leverLength": mm(80, 400),
  "dropLink.length": mm(30, 400),
  "dropLink.spacerStack": mm(1, 60),
  "spring.rate": si(8_000, 150_000),
  "spring.freeLength": mm(120, 550),
  "damper.clicks": si(0, 40),
  "damper.reboundClicks": si(0, 40),
  track: mm(1100, 1600),
  unsprungMass: si(15, 150),
  "caliper.pistons": si(1, 6),
  "caliper.pistonDiameter": mm(30, 66),
  "disc.diameter": mm(200, 330),
  "disc.thickness": mm(6, 32),
  "disc.minimumThickness": mm(5, 30),
  "pad.thickness": mm(1, 20),
  camber: degrees(-4, 2),
  toe: degrees(-0.75, 0.75),
  rideHeight: mm(70, 400),
  cornerWeight: si(100, 450),
};

/** Of each axle, between a first word and the rest. */
const betweenAxle: readonly (readonly [before: string, after: string, range: UsualRange])[] = [
  ["tyres", "pressure", si(100_000, 350_000)],
  ["tyres", "treadDepth", mm(0.5, 10)],
  ["wheels", "spacer", mm(1, 50)],
];

const ofCar: Readonly<Record<string, UsualRange>> = {
  "front.castor": degrees(0, 9),
  "front.kingpinInclination": degrees(0, 18),
  "rear.drum.diameter": mm(177, 305),
  "rear.wheelCylinder.diameter": mm(14, 26),
  "steering.ratio": si(10, 22),
  "steering.lock": degrees(25, 45),
  "steering.arm.length": mm(80, 200),
  "brakes.masterCylinder.diameter": mm(14, 26),
  "brakes.pedalRatio": si(3, 7),
  "brakes.bias": si(0.45, 0.85),
  "wheels.boltCircle": mm(95, 150),
  "chassis.wheelbase": mm(1900, 2800),
  "chassis.kerbMass": si(450, 1_600),
  "chassis.centreOfGravityHeight": mm(300, 650),
  // Cubic metres.
  "engine.capacity": si(0.0007, 0.0055),
  "engine.bore": mm(60, 105),
  "engine.stroke": mm(48, 105),
  "engine.compressionRatio": si(7, 13),
  "fuel.tank.capacity": litres(20, 110),
  "oil.catchTank": litres(0.5, 6),
  "exhaust.bore": mm(32, 76),
  "exhaust.noise": si(70, 115),
  "driveline.ratio.first": si(2, 4.5),
  "driveline.ratio.second": si(1.4, 3),
  "driveline.ratio.third": si(1.1, 2),
  "driveline.ratio.fourth": si(0.9, 1.5),
  "driveline.ratio.fifth": si(0.7, 1),
  "driveline.ratio.overdrive": si(0.7, 0.9),
  "driveline.finalDrive.ratio": si(2.8, 5.5),
  "driveline.speedometer.turnsPerMile": si(700, 1_800),
};

/**
 * What a quantity usually is on a sports car of these years, road or track, SI: common practice, no source. Outside of it a
 * figure is taken and asked about, since a slip of the pen, or of the unit, is likelier than such a car. Far narrower than
 * what can be believed at all, and no specification.
 */
export const usualRanges: ReadonlyMap<string, UsualRange> = new Map([
  ...(["front", "rear"] as const).flatMap((axle) => [
    ...Object.entries(ofAxle).map(([part, range]) => [`${axle}.${part}`, range] as const),
    ...betweenAxle.map(([before, after, range]) => [`${before}.${axle}.${after}`, range] as const),
  ]),
  ...Object.entries(ofCar),
]);

/** A built-in characteristic with what is usual of it. */
export function withUsual(characteristic: Characteristic): Characteristic {
  const usual = usualRanges.get(characteristic.key);
  return usual === undefined || characteristic.kind !== "quantity"
    ? characteristic
    : { ...characteristic, usual };
}
