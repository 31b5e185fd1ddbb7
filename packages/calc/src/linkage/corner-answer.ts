import type { Computed, Outputs, WorkingStep } from "../catalogue/computation";
import { worked } from "../spring/worked";
import type { Corner } from "./corner";
import { pointInWords } from "./field";
import { type CornerReading, readCorner } from "./reading";

const degrees = { dimension: "angle", unit: "°", decimals: 3 } as const;
const millimetres = { dimension: "length", unit: "mm", decimals: 2 } as const;

/** What every corner tells. */
export const cornerOutputs = {
  camber: { how: ["γ", "−asin n_z, n the spin axis pointing outboard"], label: "Camber", ...degrees },
  toeIn: {
    how: ["θ", "atan2(n_x, s·n_y), s = +1 left, −1 right"],
    label: "Toe-in of this wheel",
    dimension: "angle",
    unit: "'",
    decimals: 2,
  },
  trackChange: {
    how: ["Δy", "contact point now less in the design position, outboard"],
    label: "Track change, this wheel",
    ...millimetres,
  },
  wheelbaseChange: {
    how: ["Δx", "contact point now less in the design position, along the car; longer is positive"],
    label: "Wheelbase change",
    ...millimetres,
  },
  camberGain: {
    how: ["γ′", "turn of the spin axis per rise of the wheel centre, rack held"],
    label: "Camber change per travel",
    dimension: "anglePerLength",
    unit: "°/m",
    decimals: 2,
  },
  bumpSteer: {
    how: ["θ′", "as above, of the toe-in"],
    label: "Toe-in change per travel (bump steer)",
    dimension: "anglePerLength",
    unit: "'/mm",
    decimals: 3,
  },
  instantCentreY: {
    how: ["y_IC", "where the traces named below meet in the transverse plane through the wheel centre"],
    label: "Instant centre, outboard of the centre plane",
    ...millimetres,
  },
  instantCentreZ: { how: ["z_IC", "as above"], label: "Instant centre, height in the car", ...millimetres },
  swingArm: {
    how: ["f", "contact point across to the instant centre"],
    label: "Front-view swing arm, positive inboard",
    ...millimetres,
  },
  rollCentreHeight: {
    how: ["z_RC", "where the line from contact point to instant centre meets the centre plane"],
    label: "Roll-centre height over the ground",
    ...millimetres,
  },
  springRatio: {
    how: ["MR_s", "shortening of the spring per rise of the wheel centre"],
    label: "Motion ratio of the spring",
    dimension: "ratio",
    decimals: 4,
  },
  damperRatio: {
    how: ["MR_d", "shortening of the damper per rise of the wheel centre"],
    label: "Motion ratio of the damper",
    dimension: "ratio",
    decimals: 4,
  },
  barRatio: {
    how: ["MR_b", "movement of the bar's arm end on its circle per rise of the wheel centre"],
    label: "Motion ratio of the bar's arm end",
    dimension: "ratio",
    decimals: 4,
  },
} as const satisfies Outputs;

/** What a steered corner tells besides. */
export const steeredOutputs = {
  ...cornerOutputs,
  castor: {
    how: ["τ", "atan2(−k_x, k_z), k from the lower to the upper point of the steering axis"],
    label: "Castor",
    ...degrees,
  },
  kingpin: { how: ["σ", "atan2(−s·k_y, k_z), k and s as above"], label: "Kingpin inclination", ...degrees },
  scrub: {
    how: ["r_k", "contact point to the steering axis at the ground, inboard along the wheel's axis"],
    label: "Scrub radius, positive inboard",
    ...millimetres,
  },
  trail: {
    how: ["n_k", "contact point to the steering axis at the ground, ahead along the wheel"],
    label: "Trail, positive ahead",
    ...millimetres,
  },
  steerGain: {
    how: [
      "δ′",
      "turn of the wheel about the steering axis per travel of the rack, wheel centre's height held",
    ],
    label: "Steer towards this side per rack travel",
    dimension: "anglePerLength",
    unit: "°/mm",
    decimals: 4,
  },
} as const satisfies Outputs;

/** Where a corner is asked for. */
export interface Asked {
  readonly bump: number;
  readonly rack?: number;
  /** Tells whether a shift forwards makes the wheelbase longer. */
  readonly axle: "front" | "rear";
}

/** The answer of an unsteered corner. */
export function answerCorner(corner: Corner, asked: Asked): Computed<typeof cornerOutputs> {
  const { reading, working } = read(corner, asked);
  return {
    outputs: common(reading, asked),
    working,
    warnings: warningsOf(reading),
  };
}

/** The answer of a steered corner. */
export function answerSteered(corner: Corner, asked: Asked): Computed<typeof steeredOutputs> {
  const { reading, working } = read(corner, asked);
  const { castor, kingpin, scrub, trail, steerGain } = reading;
  return {
    outputs: { ...common(reading, asked), castor, kingpin, scrub, trail, steerGain },
    working,
    warnings: warningsOf(reading),
  };
}

/** The working searches for the ends of travel, which takes many times the position's own time. */
function read(corner: Corner, asked: Asked): { reading: CornerReading; working: () => WorkingStep[] } {
  const { bump, rack = 0 } = asked;
  corner.moveTo(0, 0);
  const design = readCorner(corner);
  corner.moveTo(bump, rack);
  const reading = readCorner(corner);
  return { reading, working: () => workingOf(corner, { design, reading }) };
}

function workingOf(
  corner: Corner,
  { design, reading }: { readonly design: CornerReading; readonly reading: CornerReading },
): WorkingStep[] {
  const { bump, rack } = reading;
  const reach = corner.reach(rack);
  corner.moveTo(bump, rack);
  const working = worked([
    ["z", "Travel of the wheel centre", "asked for", bump, "length", "mm"],
    ["s", "Travel of the rack", "asked for", rack, "length", "mm"],
    [
      "z_max",
      "Travel that can be reached, up",
      "where a link or arm comes into line, 0.5 m at most",
      reach?.bump ?? null,
      "length",
      "mm",
    ],
    ["z_min", "Travel that can be reached, down", "as above", reach?.droop ?? null, "length", "mm"],
    ["γ₀", "Camber in the design position", "given", design.camber, "angle", "°"],
    ["Δγ", "Change of camber", "γ − γ₀", reading.camber - design.camber, "angle", "°"],
    ["Δθ", "Change of toe-in", "θ − θ₀", reading.toeIn - design.toeIn, "angle", "'"],
    ["Δτ", "Change of castor", "τ − τ₀", difference(reading.castor, design.castor), "angle", "°"],
    ["l_s", "Length of the spring", "between its ends", reading.spring?.length ?? null, "length", "mm"],
    ["l_d", "Length of the damper", "between its ends", reading.damper?.length ?? null, "length", "mm"],
    [
      "φ_b",
      "Turn of the bar's arm from the design position",
      "about its axis",
      reading.bar?.angle ?? null,
      "angle",
      "°",
    ],
  ]);
  return [...working, ...positions(corner, reading), convention];
}

function difference(now: number | null, before: number | null): number | null {
  return now === null || before === null ? null : now - before;
}

function positions(corner: Corner, { contact }: CornerReading): WorkingStep[] {
  const points = { ...corner.joints(), contact };
  return Object.entries(points).map(([name, at]) => ({
    symbol: name,
    label: `Position of ${name}`,
    value: pointInWords(at),
    note: "y outboard",
  }));
}

const convention: WorkingStep = {
  symbol: "convention",
  label: "Signs and constructions",
  value:
    "ISO 8855 axes; trade signs. Contact is the lowest point of a rigid disc. Instant centre from the arms' traces in the transverse plane through the wheel centre; others project the joints into one plane and differ where pivots are raked. Motion ratio is movement of the part per movement of the wheel centre; others give its inverse.",
};

function common(reading: CornerReading, { axle }: Asked): Computed<typeof cornerOutputs>["outputs"] {
  return {
    camber: reading.camber,
    toeIn: reading.toeIn,
    trackChange: reading.trackChange,
    wheelbaseChange: axle === "front" ? reading.forwardShift : 0 - reading.forwardShift,
    camberGain: reading.camberGain,
    bumpSteer: reading.toeGain,
    instantCentreY: reading.instantCentre?.y ?? null,
    instantCentreZ: reading.instantCentre?.z ?? null,
    swingArm: reading.swingArm,
    rollCentreHeight: reading.rollCentreHeight,
    springRatio: reading.spring?.ratio ?? null,
    damperRatio: reading.damper?.ratio ?? null,
    barRatio: reading.bar?.ratio ?? null,
  };
}

function warningsOf(reading: CornerReading): string[] {
  const warnings: string[] = [];
  if (reading.instantCentre === null) {
    warnings.push("The instant centre lies at infinity: the wheel moves without leaning at this moment.");
  }
  if (reading.rollCentreHeight === null) {
    warnings.push(
      "The line from the contact point to the instant centre does not cross the centre plane: no roll centre.",
    );
  }
  const missing = (["spring", "damper", "bar"] as const).filter((name) => reading[name] === null);
  if (missing.length > 0) warnings.push(`Not given, so without a motion ratio: ${missing.join(", ")}.`);
  return warnings;
}
