import { unitNamed } from "../unit";
import { refuseDesignation, tidyDesignation } from "./refuse";

/** The strength class of a bolt or screw. */
export interface Grade {
  readonly kind: "grade";
  readonly system: "ISO 898-1" | "SAE J429";
  /** "8.8", "5". */
  readonly class: string;
  /** "class 8.8", "grade 5". */
  readonly canonical: string;
}

/** Nominal strengths of a bolt's material, Pa. */
export interface GradeStrength {
  /** Least tensile strength, Rm. */
  readonly tensile: number;
  /** Yield: lower yield (4.6, 5.6), 0.0048 d limit (4.8, 5.8, 6.8), else 0.2 % proof strength; SAE: yield strength. */
  readonly yield: number;
  /** Stress under proof load, Sp. */
  readonly proof: number;
}

/** Strengths for thread diameters up to and including `upTo` (mm or inches as the standard has it). */
interface Band {
  readonly upTo: number;
  readonly strength: readonly [tensile: number, yieldStress: number, proof: number];
}

/** ISO 898-1:2013, table 3, MPa, diameters in mm; the standard covers M1.6 to M39. */
const isoClasses: Readonly<Record<string, readonly Band[]>> = {
  "4.6": [{ upTo: 39, strength: [400, 240, 225] }],
  "4.8": [{ upTo: 39, strength: [420, 340, 310] }],
  "5.6": [{ upTo: 39, strength: [500, 300, 280] }],
  "5.8": [{ upTo: 39, strength: [520, 420, 380] }],
  "6.8": [{ upTo: 39, strength: [600, 480, 440] }],
  "8.8": [
    { upTo: 16, strength: [800, 640, 580] },
    { upTo: 39, strength: [830, 660, 600] },
  ],
  "9.8": [{ upTo: 16, strength: [900, 720, 650] }],
  "10.9": [{ upTo: 39, strength: [1040, 940, 830] }],
  "12.9": [{ upTo: 39, strength: [1220, 1100, 970] }],
};

/** SAE J429, ksi, diameters in inches; the standard covers 1/4 to 1 1/2. */
const saeGrades: Readonly<Record<string, readonly Band[]>> = {
  "2": [
    { upTo: 0.75, strength: [74, 57, 55] },
    { upTo: 1.5, strength: [60, 36, 33] },
  ],
  "5": [
    { upTo: 1, strength: [120, 92, 85] },
    { upTo: 1.5, strength: [105, 81, 74] },
  ],
  "8": [{ upTo: 1.5, strength: [150, 130, 120] }],
};
const smallest = { "ISO 898-1": 1.6, "SAE J429": 0.25 } as const;

const examples = ["class 8.8", "class 10.9", "grade 5", "grade 8"];

/**
 * Reads a bolt's strength class: `8.8`, `class 10.9`, `grade 8`, `SAE 5`. A bare `8` is refused: it may be the
 * American grade 8, a nut of class 8 or half of 8.8.
 * @throws NotationError
 */
export function parseGrade(entered: string): Grade {
  const text = tidyDesignation(entered, examples);
  const [, iso] = /^(?:ISO(?: 898-1)? ?)?(?:class|cl\.?|grade|gr\.?)? ?(\d{1,2}\.\d)$/i.exec(text) ?? [];
  if (iso !== undefined && Object.hasOwn(isoClasses, iso)) return grade("ISO 898-1", iso);
  const [, sae] =
    /^(?:SAE(?: J429)? ?)?(?:grade|gr\.?|SAE) ?(\d)$/i.exec(text) ?? /^SAE(?: J429)? (\d)$/i.exec(text) ?? [];
  if (sae !== undefined && Object.hasOwn(saeGrades, sae)) return grade("SAE J429", sae);
  const known = `${Object.keys(isoClasses).join(", ")} of ISO 898-1; grades ${Object.keys(saeGrades).join(", ")} of SAE J429`;
  if (/^\d$/.test(text))
    return refuseDesignation(entered, "a figure alone names no strength class", examples);
  return refuseDesignation(entered, `this is no strength class that is known (${known})`, examples);
}

function grade(system: Grade["system"], name: string): Grade {
  const bare = { kind: "grade", system, class: name } as const;
  return { ...bare, canonical: printGrade(bare) };
}

/** The one text of a strength class; reading it gives the class back. */
export function printGrade({ system, class: name }: Omit<Grade, "canonical">): string {
  return system === "ISO 898-1" ? `class ${name}` : `grade ${name}`;
}

/**
 * The strengths of a class for a thread of this nominal diameter (m): class 8.8 steps at 16 mm, SAE grades 2 and 5
 * at 3/4 in and 1 in. Grade 2 holds for bolts up to 6 in long; longer ones of up to 3/4 in have the lower figures.
 * @throws RangeError for a diameter the standard does not cover
 */
export function gradeStrength({ system, class: name }: Grade, majorDiameter: number): GradeStrength {
  const iso = system === "ISO 898-1";
  const size = Number((iso ? majorDiameter * 1000 : majorDiameter / 0.0254).toPrecision(9));
  const bands = (iso ? isoClasses : saeGrades)[name] ?? [];
  const band = size >= smallest[system] ? bands.find(({ upTo }) => size <= upTo) : undefined;
  if (band === undefined) {
    const unit = iso ? "mm" : "in";
    const limits = `${smallest[system]} to ${bands.at(-1)?.upTo ?? 0} ${unit}`;
    throw new RangeError(`${system} gives ${name} for ${limits} of thread diameter, not for ${size} ${unit}`);
  }
  const { times, over } = unitNamed("pressure", iso ? "MPa" : "ksi");
  const [tensile, yieldStress, proof] = band.strength;
  const toPascal = (value: number) => (value * times) / over;
  return { tensile: toPascal(tensile), yield: toPascal(yieldStress), proof: toPascal(proof) };
}
