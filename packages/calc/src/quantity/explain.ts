import { nextInChain } from "./compound";
import { dimensionNames, type MeasuredDimension } from "./dimension";
import { NotationError } from "./notation-error";
import { dimensionsWith, type Unit, unitsOf } from "./unit";

const examples: Readonly<Record<MeasuredDimension, readonly string[]>> = {
  length: ["16 mm", "5/8 in"],
  area: ["84.3 mm²", "0.115 in²"],
  volume: ["500 cc", "9.5 l"],
  secondMoment: ["3217 mm⁴", "1 cm⁴"],
  angle: ["0°12'", "-1.5°", "45 min"],
  mass: ["790 kg", "15 cwt 2 qr"],
  force: ["250 N", "56 lbf", "25 kgf"],
  torque: ["40 N·m", "30 lbf ft"],
  pressure: ["28 psi", "1.9 bar"],
  rate: ["95 lb/in", "16.6 N/mm"],
  angularRate: ["180 N·m/°", "130 lbf ft/deg"],
  dampingRate: ["1500 N·s/m", "8.6 lbf·s/in"],
  temperature: ["90 °C", "194 °F"],
  temperatureDifference: ["40 °C", "40 K"],
  speed: ["100 km/h", "62 mph"],
  acceleration: ["0.8 g", "7.8 m/s²"],
  angularSpeed: ["4500 rev/min", "471 rad/s"],
  frequency: ["1.4 Hz", "84 cycles/min"],
  time: ["2.5 s", "20 min"],
  energy: ["120 kJ", "88500 ft lbf"],
  power: ["60 kW", "80 bhp", "82 PS"],
  density: ["7850 kg/m³", "0.74 kg/l"],
  momentOfInertia: ["0.9 kg·m²", "21 lb·ft²"],
  specificHeat: ["460 J/(kg·K)", "0.46 kJ/(kg·K)"],
  soundLevel: ["98 dB(A)"],
  anglePerLength: ["0.5 deg/m", "1 min/mm"],
  anglePerAcceleration: ["3.5 deg/g"],
  lengthPerAngle: ["1.25 mm/turn", "26.5 km/h per 1000 rev/min"],
  ratio: ["0.47", "47 %"],
  count: ["6", "6.5"],
};

/** Entries of a dimension that are understood, to show as examples. */
export function examplesOf(dimension: MeasuredDimension): readonly string[] {
  return examples[dimension];
}

interface UnitPlace {
  readonly text: string;
  readonly at: number;
  readonly dimension: MeasuredDimension;
  /** The unit before, in a compound. */
  readonly last: Unit | undefined;
}

/** What is wrong where a unit of the dimension was wanted at a place of the entry. */
export function unitProblem(found: UnitPlace): NotationError {
  const { text, dimension } = found;
  const spelt = text.slice(found.at).trim();
  const place = found.at + (text.slice(found.at).length - text.slice(found.at).trimStart().length);
  const wanted = dimensionNames[dimension];
  const understood = examplesOf(dimension);
  const known = unitsOf(dimension)
    .map(({ symbol }) => symbol)
    .filter((symbol) => symbol !== "")
    .join(", ");
  if (spelt === "") {
    const problem = `a unit is missing (${known}); ${wanted} is wanted`;
    return new NotationError({
      entered: text,
      code: "NO_UNIT",
      place,
      problem,
      understood: withUnits(found),
    });
  }
  const kinds = dimensionsWith(spelt);
  if (kinds.length > 0) {
    const is = kinds.slice(0, 3).map((kind) => dimensionNames[kind]);
    const problem = `is ${is.join(" or ")}; ${wanted} is wanted`;
    return new NotationError({ entered: text, code: "WRONG_KIND", place, problem, understood });
  }
  const problem = `"${spelt}" is no unit of ${wanted.replace(/^an? /, "")}${known === "" ? "" : ` (${known})`}`;
  return new NotationError({ entered: text, code: "UNKNOWN_UNIT", place, problem, understood });
}

/** The entry with the unit it lacks: the next of a compound (5 ft 6 in), else the two commonest. */
function withUnits({ text, dimension, last }: UnitPlace): readonly string[] {
  const next = last === undefined ? undefined : nextInChain(dimension, last);
  const units = next === undefined ? unitsOf(dimension).slice(0, 2) : [next];
  return units.map(({ symbol, tight }) => `${text.trim()}${tight ? "" : " "}${symbol}`);
}

/** A plus-minus, a "to" that makes no ratio, two dots or a dash between two figures or after a unit but ft. */
const rangeMarks = [
  /±|\+\/-/,
  /\bto\b(?! (?:1|one)\b)/,
  /(?<=\d *)\.\.+/,
  /(?<=\d *)-(?= *\d+(?! *\/|\d))/,
  /(?<=[\p{L}"°%²³⁴)] *)(?<!(?:ft|foot|feet)\.? *)-(?= *\d)/u,
];

/** Refuses two values in one entry (a range, or a value with its limits): each has a field of its own. */
export function refuseRange(text: string, at: number, dimension: MeasuredDimension): void {
  for (const mark of rangeMarks) {
    const index = text.slice(at).search(mark);
    if (index < 0) continue;
    const problem = "one value is wanted, not a range or a value with limits";
    const understood = examplesOf(dimension);
    throw new NotationError({
      entered: text,
      code: "RANGE_OR_LIMITS",
      place: at + index,
      problem,
      understood,
    });
  }
}
