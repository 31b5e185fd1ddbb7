import type { SourceInput, SpecificationLine } from "@trunnion/service";

/** A demo specification: invented throughout, in the notation the works would have used. */
export interface DemoSpecification {
  readonly source: SourceInput;
  readonly lines: readonly SpecificationLine[];
}

type Texts = Readonly<Record<string, string>>;

const nominals = (locus: string, texts: Texts): readonly SpecificationLine[] =>
  Object.entries(texts).map(([characteristic, nominal]) => ({ characteristic, nominal, locus }));

interface Range {
  readonly nominal?: string;
  readonly lower?: string;
  readonly upper?: string;
}
const ranges = (locus: string, texts: Readonly<Record<string, Range>>): readonly SpecificationLine[] =>
  Object.entries(texts).map(([characteristic, range]) => ({ characteristic, ...range, locus }));

const common = nominals("section A", {
  "front.layout": "doubleWishbone",
  "front.lowerArm.bush": "rubber",
  "front.upperArm.bush": "rubber",
  "front.upperArm.joint": "ball joint",
  "front.antiRollBar.section": "solid",
  "front.antiRollBar.mounting": "rubber",
  "front.dropLink.joint": "rubber bush",
  "front.dropLink.boltThread": "5/16-24 UNF",
  "front.dropLink.boltGrade": "grade 8",
  "front.spring.kind": "coil",
  "rear.layout": "liveAxleLinks",
  "rear.lateralLocation": "transverseRod",
  "rear.upperLink.bush": "rubber",
  "rear.lowerLink.bush": "rubber",
  "steering.kind": "rack",
  "steering.column": "jointed",
  "chassis.kind": "backbone",
  "body.material": "glass fibre",
  "front.disc.face": "plain",
  "front.caliper.boltThread": "7/16-20 UNF",
  "brakes.hose": "rubber",
  "wheels.kind": "pressedSteel",
  "wheels.stud.thread": "7/16-20 UNF",
  "electrical.earth": "negative",
  "driveline.differential": "open",
});

const absent = nominals("section A", {
  "wheels.front.spacer": "not fitted",
  "wheels.rear.spacer": "not fitted",
  "safety.rollStructure": "not fitted",
  "electrical.isolator": "not fitted",
  "oil.catchTank": "not fitted",
  "rear.dropLink.spacerStack": "not fitted",
});

const settings = ranges("section G, settings at kerb weight", {
  "front.camber": { nominal: "0°00'", lower: "-0°30'", upper: "0°30'" },
  "front.castor": { nominal: "3°30'", lower: "3°00'", upper: "4°00'" },
  "front.toe": { nominal: "5' in per side", lower: "0' per side", upper: "10' in per side" },
  "rear.camber": { nominal: "0°00'", lower: "-0°30'", upper: "0°15'" },
  "tyres.front.pressure": { nominal: "22 psi", lower: "20 psi", upper: "26 psi" },
  "tyres.rear.pressure": { nominal: "24 psi", lower: "22 psi", upper: "28 psi" },
});

type Pivots = Readonly<Record<string, readonly [x: number, y: number, z: number]>>;

/** Pivots in millimetres: x, y outboard, z. Invented like everything here, and believable. */
const pivotTexts = (axle: "front" | "rear", pivots: Pivots): Texts =>
  Object.fromEntries(
    Object.entries(pivots).flatMap(([point, place]) =>
      (["x", "y", "z"] as const).map((axis, index) => [
        `${axle}.hardpoint.${point}.${axis}`,
        `${place[index]} mm`,
      ]),
    ),
  );

const linkage = nominals("section D, drawing of the front suspension (invented figures)", {
  "front.track": "1300 mm",
  "front.upperArm.adjustment": "screw",
  "front.lowerArm.adjustment": "none",
  ...pivotTexts("front", {
    lowerArmFront: [135, 240, 190],
    lowerArmRear: [-125, 245, 184],
    lowerJoint: [6, 600, 165],
    upperArmFront: [80, 310, 402],
    upperArmRear: [-110, 312, 395],
    upperJoint: [-12, 568, 418],
    tieRodInner: [-118, 258, 213],
    tieRodOuter: [-128, 584, 201],
  }),
});

const ofOption = (option: string, lines: readonly SpecificationLine[]): readonly SpecificationLine[] =>
  lines.map((line) => ({ ...line, applicability: { option } }));

/** The works' first rear suspension, on a few cars of the first series. */
const swingAxles = ofOption(
  "SW",
  nominals("supplement 1, swing axles", {
    "rear.layout": "swing axle",
    "rear.lateralLocation": "by the links alone",
    "rear.adjustment": "shims",
    "rear.track": "1280 mm",
    "rear.toe": "0' per side",
    ...pivotTexts("rear", { halfAxleJoint: [0, 95, 300], radiusArm: [400, 160, 275] }),
  }),
);

/** Trial cars of the last series. */
const trials = [
  ...ofOption(
    "SA",
    nominals("supplement 5, independent rear", {
      "rear.layout": "semi-trailing arms",
      "rear.lateralLocation": "by the links alone",
      "rear.adjustment": "eccentric",
      "rear.track": "1340 mm",
      "rear.toe": "8' in per side",
      ...pivotTexts("rear", { armInner: [320, 180, 280], armOuter: [445, 560, 290] }),
    }),
  ),
  ...ofOption(
    "MS",
    nominals("supplement 6, strut front", {
      "front.layout": "strut",
      "front.strut.adjustment": "slots",
      "front.track": "1320 mm",
      ...pivotTexts("front", {
        lowerArmFront: [40, 300, 205],
        lowerArmRear: [-260, 310, 215],
        lowerJoint: [8, 622, 182],
        strutTop: [-42, 540, 790],
        strutFoot: [-6, 590, 330],
        tieRodInner: [-135, 290, 245],
        tieRodOuter: [-128, 628, 232],
      }),
    }),
  ),
];

const disc = (minimum: string): readonly SpecificationLine[] => [
  ...nominals("section B, brakes", { "front.disc.minimumThickness": minimum }),
  ...ranges("section B, brakes", { "front.disc.thickness": { lower: minimum } }),
];

const rearBar = (diameter: string): readonly SpecificationLine[] => [
  { characteristic: "rear.antiRollBar.diameter", nominal: diameter, locus: "section A" },
  { characteristic: "rear.dropLink.joint", nominal: "rubber bush", locus: "section A" },
  { characteristic: "rear.dropLink.boltGrade", nominal: "8.8", locus: "section A" },
];

const handlingPack: SpecificationLine = {
  characteristic: "rear.antiRollBar.diameter",
  nominal: "14 mm",
  applicability: { option: "H" },
  locus: "supplement 3, handling pack",
};

const wheels13 = (width: string, tyre: string): readonly SpecificationLine[] => [
  ...["wheels.front.size", "wheels.rear.size"].map((characteristic) => ({
    characteristic,
    nominal: width,
    locus: "section A",
  })),
  ...["tyres.front.size", "tyres.rear.size"].map((characteristic) => ({
    characteristic,
    nominal: tyre,
    locus: "section A",
    alternatives: [
      { role: "acceptedSubstitute" as const, value: "175/70 R 13", note: "nearest radial still made" },
    ],
  })),
];

const manual = (series: string, edition: string): SourceInput => ({
  title: `Works manual, ${series}`,
  kind: "publication",
  edition,
});

export const specifications: Readonly<Record<string, DemoSpecification>> = {
  "series-1": {
    source: manual("Series 1", "1968"),
    lines: [
      ...common,
      ...absent,
      ...settings,
      ...linkage,
      ...swingAxles,
      ...disc("8.5 mm"),
      ...wheels13("4½J x 13", "5.20-13"),
      ...nominals("section A", {
        "front.antiRollBar.diameter": "9/16 in",
        "rear.antiRollBar.diameter": "not fitted",
        "front.spring.rate": "95 lb/in",
        "front.disc.diameter": "9 1/2 in",
        "brakes.circuit": "single",
        "engine.capacity": "1498 cm³",
        "driveline.finalDrive.ratio": "4.11",
      }),
    ],
  },
  "series-2": {
    source: manual("Series 2", "1970"),
    lines: [
      ...common,
      ...absent,
      ...settings,
      ...linkage,
      ...disc("8.5 mm"),
      ...wheels13("5J x 13", "165 SR 13"),
      handlingPack,
      {
        characteristic: "front.antiRollBar.diameter",
        nominal: "5/8 in",
        applicability: { serialFrom: 1, serialTo: 199 },
        locus: "section A",
        alternatives: [
          { role: "serviceReplacement", value: "11/16 in", note: "supplied as spare from 1973" },
        ],
      },
      {
        characteristic: "front.antiRollBar.diameter",
        nominal: "18 mm",
        applicability: { serialFrom: 200, serialTo: 398 },
        locus: "bulletin 14",
      },
      ...nominals("section A", {
        "rear.antiRollBar.diameter": "not fitted",
        "front.spring.rate": "95 lb/in",
        "front.disc.diameter": "9 1/2 in",
        "brakes.circuit": "single",
        "engine.capacity": "1498 cm³",
        "driveline.finalDrive.ratio": "3.89",
      }),
    ],
  },
  "series-3": {
    source: manual("Series 3", "1972"),
    lines: [
      ...common,
      ...absent,
      ...settings,
      ...linkage,
      ...rearBar("14 mm"),
      ...disc("11 mm"),
      ...wheels13("5J x 13", "165 SR 13"),
      ...nominals("section A", {
        "front.antiRollBar.diameter": "18 mm",
        "front.spring.rate": "110 lb/in",
        "front.disc.diameter": "10 1/2 in",
        "brakes.circuit": "tandem",
        "engine.capacity": "1699 cm³",
        "driveline.finalDrive.ratio": "3.89",
      }),
    ],
  },
  "series-4": {
    source: manual("Series 4", "1975, second printing"),
    lines: [
      ...common,
      ...absent,
      ...settings,
      ...linkage,
      ...trials,
      ...rearBar("16 mm"),
      ...disc("11 mm"),
      ...nominals("section A", {
        "front.antiRollBar.diameter": "20 mm",
        "front.spring.rate": "18 N/mm",
        "front.disc.diameter": "10 1/2 in",
        "brakes.circuit": "tandem",
        "wheels.front.size": "5½J x 14",
        "wheels.rear.size": "5½J x 14",
        "tyres.front.size": "175/70 R 14",
        "tyres.rear.size": "175/70 R 14",
        "engine.capacity": "1699 cm³",
        "driveline.finalDrive.ratio": "3.70",
      }),
    ],
  },
  "school-car": {
    source: { title: "Reference car of the school, 2026 season", kind: "other", edition: "2026" },
    lines: [
      ...common.filter(
        ({ characteristic }) => !["front.lowerArm.bush", "front.upperArm.joint"].includes(characteristic),
      ),
      ...rearBar("16 mm"),
      ...disc("11 mm"),
      ...nominals("reference sheet", {
        "front.antiRollBar.diameter": "20 mm",
        "front.lowerArm.bush": "polyurethane",
        "front.upperArm.joint": "adjustable ball joint",
        "front.spring.rate": "18 N/mm",
        "front.disc.diameter": "267 mm",
        "brakes.circuit": "tandem",
        "wheels.front.size": "5½J x 14 ET 20",
        "wheels.rear.size": "5½J x 14 ET 20",
        "tyres.front.size": "185/60 R 14 82H",
        "tyres.rear.size": "185/60 R 14 82H",
        "electrical.isolator": "insideOutside",
        "oil.catchTank": "2 l",
        "safety.rollStructure": "bolted",
        "safety.harness.kind": "six point",
        "safety.extinguisher.kind": "plumbed in",
      }),
      ...ranges("reference sheet", {
        "front.camber": { nominal: "-1°00'", lower: "-1°10'", upper: "-0°50'" },
        "front.castor": { nominal: "3°30'", lower: "3°15'", upper: "3°45'" },
        "front.toe": { nominal: "5' in per side", lower: "2' in per side", upper: "8' in per side" },
        "rear.camber": { nominal: "-0°30'", lower: "-0°40'", upper: "-0°20'" },
        "tyres.front.pressure": { nominal: "26 psi", lower: "25 psi", upper: "27 psi" },
        "tyres.rear.pressure": { nominal: "28 psi", lower: "27 psi", upper: "29 psi" },
      }),
    ],
  },
};
