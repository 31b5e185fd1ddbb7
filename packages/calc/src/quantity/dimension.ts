/**
 * Every kind of quantity the calculator knows, with its SI unit. Closed: a new kind is added here and in
 * `unit.ts`, nowhere else.
 *
 * `temperature` is a reading on a scale (0 °C is 273.15 K); `temperatureDifference` is a step (1 °C is 1 K).
 * `rate` is force per length, `angularRate` torque per angle. `text` is for answers in words and has no units.
 */
export const siUnits = {
  length: "m",
  area: "m²",
  volume: "m³",
  secondMoment: "m⁴",
  angle: "rad",
  mass: "kg",
  force: "N",
  torque: "N·m",
  pressure: "Pa",
  rate: "N/m",
  angularRate: "N·m/rad",
  dampingRate: "N·s/m",
  temperature: "K",
  temperatureDifference: "K",
  speed: "m/s",
  acceleration: "m/s²",
  angularSpeed: "rad/s",
  frequency: "Hz",
  time: "s",
  energy: "J",
  power: "W",
  density: "kg/m³",
  momentOfInertia: "kg·m²",
  specificHeat: "J/(kg·K)",
  soundLevel: "dB",
  anglePerLength: "rad/m",
  anglePerAcceleration: "rad·s²/m",
  lengthPerAngle: "m/rad",
  ratio: "",
  count: "",
  text: "",
} as const;

/** A kind of quantity; see {@link siUnits}. */
export type Dimension = keyof typeof siUnits;

/** A kind of quantity that has units, i.e. any but `text`. */
export type MeasuredDimension = Exclude<Dimension, "text">;

/** All dimensions, in the order of {@link siUnits}. */
export const dimensions = Object.keys(siUnits) as readonly Dimension[];

/** How a dimension is called in a sentence: "a pressure", "an angle". */
export const dimensionNames: Readonly<Record<Dimension, string>> = {
  length: "a length",
  area: "an area",
  volume: "a volume",
  secondMoment: "a second moment of area",
  angle: "an angle",
  mass: "a mass",
  force: "a force",
  torque: "a torque",
  pressure: "a pressure",
  rate: "a rate (force per length)",
  angularRate: "an angular rate (torque per angle)",
  dampingRate: "a damping rate",
  temperature: "a temperature",
  temperatureDifference: "a temperature difference",
  speed: "a speed",
  acceleration: "an acceleration",
  angularSpeed: "a speed of rotation",
  frequency: "a frequency",
  time: "a time",
  energy: "an energy",
  power: "a power",
  density: "a density",
  momentOfInertia: "a moment of inertia",
  specificHeat: "a specific heat capacity",
  soundLevel: "a sound level",
  anglePerLength: "an angle per length",
  anglePerAcceleration: "an angle per acceleration",
  lengthPerAngle: "a length per angle",
  ratio: "a ratio",
  count: "a number",
  text: "a text",
};
