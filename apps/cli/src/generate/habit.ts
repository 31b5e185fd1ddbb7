// table: what invented owners do to invented cars
/** A figure that scatters: mean and standard deviation in the unit that is written behind it. */
export interface Scatter {
  readonly mean: number;
  readonly deviation: number;
  readonly digits: number;
  readonly unit: string;
}

/** What may be written of a characteristic: one of some texts, each as likely, or a figure that scatters. */
export type Drawn = readonly string[] | Scatter;

/** Something owners do to a car: what it changes, how many of a hundred cars have had it done, since when. */
export interface Habit {
  readonly reason: readonly string[];
  readonly donor: readonly string[];
  /** Of a hundred cars of ordinary owners. */
  readonly percent: number;
  readonly since: number;
  readonly changes: Readonly<Record<string, Drawn>>;
  readonly fastener?: { readonly place: string; readonly thread: string; readonly grade: string };
}

const mm = (mean: number, deviation: number, digits = 0): Scatter => ({
  mean,
  deviation,
  digits,
  unit: " mm",
});
const angle = (mean: number, deviation: number): Scatter => ({ mean, deviation, digits: 1, unit: "°" });
const psi = (mean: number): Scatter => ({ mean, deviation: 2, digits: 0, unit: " psi" });
const kg = (mean: number, deviation: number): Scatter => ({ mean, deviation, digits: 0, unit: " kg" });
const plain = (mean: number, deviation: number, digits = 0): Scatter => ({
  mean,
  deviation,
  digits,
  unit: "",
});

/** What a works' card may say beyond the specification. Invented. */
export const worksCard: Readonly<Record<string, Drawn>> = {
  "body.style": ["coupé", "coupé", "roadster"],
  "body.colour": ["Fjord blue", "Slate grey", "Birch white", "Lichen green", "Rowan red", "Harbour yellow"],
  "body.trimColour": ["black", "tan", "oxblood", "grey cloth"],
  "body.steeringSide": ["left", "left", "left", "right"],
  "body.windscreen": ["laminated", "toughened"],
  "front.damper.kind": ["twin tube"],
  "rear.damper.kind": ["twin tube", "lever"],
  "rear.spring.kind": ["coil"],
  "rear.spring.rate": ["120 lb/in", "130 lb/in"],
  "front.spring.freeLength": ["290 mm", "302 mm"],
  "front.upperArm.source": ["Type 12 saloon", "Type 14 saloon"],
  "front.upright.source": ["Type 12 saloon", "Type 14 saloon", "cast for the works"],
  "rear.axle.source": ["Type 14 saloon", "van"],
  "steering.source": ["Type 12 saloon"],
  "steering.ratio": ["15.5", "16.2"],
  "front.caliper.pistons": ["2"],
  "front.caliper.pistonDiameter": ["48 mm", "54 mm"],
  "rear.brake.kind": ["drum", "drum", "drum", "disc"],
  "brakes.masterCylinder.diameter": ["5/8 in", "0.70 in"],
  "engine.source": ["Type 14 saloon", "van"],
  "engine.compressionRatio": ["8.5", "9.2"],
  "engine.induction": ["twin constant vacuum", "downdraught"],
  "engine.fan": ["standard fan"],
  "fuel.tank.kind": ["steel"],
  "fuel.tank.capacity": ["45 l", "52 l"],
  "fuel.pump": ["mechanical"],
  "oil.sump": ["wet"],
  "exhaust.manifold": ["cast"],
  "electrical.generator": ["dynamo", "alternator"],
  "electrical.ignition": ["points"],
  "driveline.gearbox.source": ["Type 12 saloon", "Type 14 saloon"],
};

/** What owners do, by assembly. Invented suppliers, ordinary jobs. */
export const habits: readonly Habit[] = [
  {
    percent: 55,
    since: 1985,
    reason: ["sharper turn-in", "less roll"],
    donor: ["Bråten Springs", "own make"],
    changes: {
      "front.antiRollBar.diameter": ["20 mm", "22 mm", "7/8 in"],
      "front.antiRollBar.mounting": ["polyurethane"],
    },
    fastener: { place: "bar clamp to chassis", thread: "M8x1.25", grade: "8.8" },
  },
  {
    percent: 50,
    since: 1985,
    reason: ["more grip at the front", "balance"],
    donor: ["Bråten Springs", "Series 4 part"],
    changes: {
      "rear.antiRollBar.diameter": ["14 mm", "16 mm", "18 mm", "20 mm"],
      "rear.dropLink.joint": ["rubber bush", "rod end", "ball joint"],
      "rear.dropLink.boltGrade": ["8.8", "10.9", "grade 8"],
    },
    fastener: { place: "drop link to bar", thread: "M10x1.5", grade: "10.9" },
  },
  {
    percent: 70,
    since: 1988,
    reason: ["worn out", "rubber perished", "firmer"],
    donor: ["Nordbush", "club scheme"],
    changes: {
      "front.lowerArm.bush": ["polyurethane", "polyurethane", "bronze", "rubber"],
      "front.upperArm.bush": ["polyurethane", "rubber"],
    },
  },
  {
    percent: 45,
    since: 1990,
    reason: ["worn out", "firmer"],
    donor: ["Nordbush", "club scheme"],
    changes: {
      "rear.upperLink.bush": ["polyurethane", "spherical", "rubber"],
      "rear.lowerLink.bush": ["polyurethane", "spherical", "rubber"],
    },
  },
  {
    percent: 50,
    since: 1980,
    reason: ["sagged", "lower", "track use"],
    donor: ["Bråten Springs", "Kvalsund Coil Works"],
    changes: {
      "front.spring.rate": ["110 lb/in", "130 lb/in", "150 lb/in", "24 N/mm"],
      "front.spring.freeLength": ["265 mm", "275 mm", "290 mm"],
    },
  },
  {
    percent: 40,
    since: 1980,
    reason: ["sagged", "lower"],
    donor: ["Kvalsund Coil Works"],
    changes: { "rear.spring.rate": ["140 lb/in", "160 lb/in", "180 lb/in"] },
  },
  {
    percent: 60,
    since: 1982,
    reason: ["leaking", "adjustable"],
    donor: ["Demperhus", "reconditioned"],
    changes: {
      "front.damper.kind": ["gas", "adjustable", "adjustable", "twin tube"],
      "rear.damper.kind": ["gas", "adjustable", "twin tube"],
    },
  },
  {
    percent: 35,
    since: 1992,
    reason: ["camber adjustment", "joint no longer made"],
    donor: ["club scheme", "own make"],
    changes: {
      "front.upperArm.joint": ["adjustable ball joint"],
      "front.upperArm.adjustment": ["screw", "shims"],
    },
  },
  {
    percent: 55,
    since: 1978,
    reason: ["fade", "worn below minimum"],
    donor: ["Type 14 saloon", "Bremsen Nord"],
    changes: {
      "front.disc.face": ["plain", "grooved", "drilled"],
      "front.disc.diameter": ["9 1/2 in", "10 1/2 in", "267 mm"],
      "front.pad.material": ["BN 20", "BN 44 track", "organic"],
    },
  },
  {
    percent: 30,
    since: 1985,
    reason: ["original calipers unobtainable", "stiffer"],
    donor: ["four-piston kit, Bremsen Nord", "Type 16 saloon"],
    changes: {
      "front.caliper.source": ["Bremsen Nord kit", "Type 16 saloon"],
      "front.caliper.pistons": ["4"],
      "front.caliper.boltThread": ["M12x1.25", "7/16-20 UNF"],
    },
    fastener: { place: "caliper to upright", thread: "M12x1.25", grade: "10.9" },
  },
  {
    percent: 65,
    since: 1990,
    reason: ["firm pedal", "old hoses cracked"],
    donor: ["Bremsen Nord"],
    changes: { "brakes.hose": ["braided", "braided", "rubber"], "brakes.fluid": ["DOT 4", "DOT 5.1"] },
  },
  {
    percent: 35,
    since: 1976,
    reason: ["safety", "required for track"],
    donor: ["Type 16 saloon"],
    changes: {
      "brakes.circuit": ["tandem", "diagonal"],
      "brakes.masterCylinder.diameter": ["0.70 in", "3/4 in"],
    },
  },
  {
    percent: 15,
    since: 1985,
    reason: ["balance of brakes"],
    donor: ["own make"],
    changes: { "brakes.rearValve": ["adjustable", "limiting"] },
  },
  {
    percent: 15,
    since: 1980,
    reason: ["pedal too heavy"],
    donor: ["Type 16 saloon"],
    changes: { "brakes.servo": ["1.9", "2.2"] },
  },
  {
    percent: 60,
    since: 1975,
    reason: ["tyres no longer made", "wider"],
    donor: ["Felgen & Sønn", "Type 16 saloon"],
    changes: {
      "wheels.kind": ["cast alloy", "pressed steel", "forged alloy"],
      "wheels.front.size": ["5½J x 13", "5½J x 14", "6J x 14"],
      "wheels.rear.size": ["5½J x 13", "5½J x 14", "6J x 14"],
    },
  },
  {
    percent: 75,
    since: 1976,
    reason: ["worn", "out of date", "nearest size made"],
    donor: ["tyre dealer"],
    changes: {
      "tyres.front.size": ["175/70 R 13", "185/60 R 14", "165/80 R 13", "185/70 R 13"],
      "tyres.rear.size": ["175/70 R 13", "185/60 R 14", "165/80 R 13", "185/70 R 13"],
      "tyres.front.pattern": ["road radial", "historic radial", "track day compound"],
    },
  },
  {
    percent: 15,
    since: 1980,
    reason: ["clearance to the arm"],
    donor: ["own make"],
    changes: { "wheels.front.spacer": ["5 mm", "8 mm", "10 mm"] },
  },
  {
    percent: 20,
    since: 1979,
    reason: ["studs too short", "stud broke"],
    donor: ["Felgen & Sønn"],
    changes: { "wheels.stud.thread": ["M12x1.5", "7/16-20 UNF"] },
    fastener: { place: "wheel stud", thread: "M12x1.5", grade: "10.9" },
  },
  {
    percent: 20,
    since: 1990,
    reason: ["quicker steering", "worn rack"],
    donor: ["quick rack, own make", "reconditioned"],
    changes: {
      "steering.ratio": ["12.8", "13.5", "15.5"],
      "steering.source": ["Type 16 saloon", "reconditioned"],
    },
  },
  {
    percent: 20,
    since: 1995,
    reason: ["cracked at the outrigger", "rust"],
    donor: ["club scheme"],
    changes: {
      "chassis.originality": ["repaired", "works replacement", "remade"],
      "chassis.finish": ["powder", "zinc", "epoxy", "paint"],
    },
  },
  {
    percent: 40,
    since: 1974,
    reason: ["repainted", "accident", "change of taste"],
    donor: ["local painter"],
    changes: {
      "body.colour": [
        "Rowan red",
        "Fjord blue",
        "Birch white",
        "Night black",
        "Silver birch metallic",
        "Lichen green",
        "Cloudberry orange",
      ],
    },
  },
  {
    percent: 20,
    since: 1980,
    reason: ["retrimmed"],
    donor: ["Sadelmaker Øy"],
    changes: { "body.trimColour": ["black", "tan", "cognac leather", "red"] },
  },
  {
    percent: 25,
    since: 1976,
    reason: ["engine worn out", "more power"],
    donor: ["Type 16 saloon", "exchange engine"],
    changes: {
      "engine.source": ["Type 16 saloon", "exchange"],
      "engine.capacity": ["1699 cm³", "1820 cm³", "1990 cm³"],
      "engine.compressionRatio": ["9.5", "10.2", "10.8"],
    },
  },
  {
    percent: 35,
    since: 1976,
    reason: ["more power", "carburettors worn"],
    donor: ["Forgasser AS"],
    changes: {
      "engine.induction": ["twin sidedraughts", "twin choke downdraught"],
      "engine.camshaft": ["282° fast road", "268°", "300° track"],
    },
  },
  {
    percent: 45,
    since: 1985,
    reason: ["overheats in traffic"],
    donor: ["Type 16 saloon"],
    changes: { "engine.fan": ["electric fan", "both fans"] },
  },
  {
    percent: 30,
    since: 1985,
    reason: ["pump failed", "vapour lock"],
    donor: ["Forgasser AS"],
    changes: {
      "fuel.pump": ["electric", "electric with cut-off"],
      "fuel.line": ["braided", "rubber", "metal"],
    },
  },
  {
    percent: 15,
    since: 1990,
    reason: ["tank rusted through"],
    donor: ["own make"],
    changes: { "fuel.tank.kind": ["aluminium", "bag"], "fuel.tank.capacity": ["45 l", "60 l"] },
  },
  {
    percent: 30,
    since: 1985,
    reason: ["oil surge", "oil hot on track"],
    donor: ["Oljekjøler Vest"],
    changes: { "oil.cooler": ["front", "elsewhere"], "oil.sump": ["baffled", "wet"] },
  },
  {
    percent: 30,
    since: 1990,
    reason: ["required for track", "oil mist"],
    donor: ["own make"],
    changes: { "oil.catchTank": ["1 l", "2 l", "1.5 l"], "oil.breather": ["catch tank"] },
  },
  {
    percent: 45,
    since: 1978,
    reason: ["rusted", "more power", "noise limit"],
    donor: ["Rør & Lyd", "own make"],
    changes: {
      "exhaust.manifold": ["tubular", "cast"],
      "exhaust.silencer": ["one box", "two boxes", "sports, stainless"],
      "exhaust.bore": ["45 mm", "50 mm", "57 mm"],
    },
  },
  {
    percent: 60,
    since: 1990,
    reason: ["reliability", "points hard to get"],
    donor: ["Tenning Nord"],
    changes: { "electrical.ignition": ["electronic", "mapped"] },
  },
  {
    percent: 30,
    since: 1978,
    reason: ["dynamo failed"],
    donor: ["Type 16 saloon"],
    changes: { "electrical.generator": ["alternator"] },
  },
  {
    percent: 35,
    since: 1990,
    reason: ["required for track"],
    donor: ["own make"],
    changes: { "electrical.isolator": ["inside", "inside and outside"] },
  },
  {
    percent: 25,
    since: 1976,
    reason: ["longer legs", "acceleration"],
    donor: ["Type 14 saloon", "Type 16 saloon"],
    changes: { "driveline.finalDrive.ratio": ["3.89", "3.70", "4.11", "3.55"] },
  },
  {
    percent: 20,
    since: 1985,
    reason: ["wheelspin out of hairpins"],
    donor: ["Gir & Drev"],
    changes: { "driveline.differential": ["plate", "gear"] },
  },
  {
    percent: 20,
    since: 1985,
    reason: ["fifth gear"],
    donor: ["Type 16 saloon"],
    changes: { "driveline.gearbox.source": ["Type 16 saloon"], "driveline.ratio.fifth": ["0.82", "0.87"] },
  },
  {
    percent: 30,
    since: 1990,
    reason: ["required for track", "hill climbs"],
    donor: ["Bur & Bøyle"],
    changes: { "safety.rollStructure": ["bolted", "hoop", "welded"] },
    fastener: { place: "foot of the hoop", thread: "M10x1.5", grade: "8.8" },
  },
  {
    percent: 35,
    since: 1995,
    reason: ["required for track"],
    donor: ["Sele AS"],
    changes: {
      "safety.harness.kind": ["four point", "five point", "six point"],
      "safety.harness.expires": ["2026", "2027", "2028", "2029"],
    },
  },
  {
    percent: 30,
    since: 1995,
    reason: ["required for track"],
    donor: ["Brannvern Nord"],
    changes: {
      "safety.extinguisher.kind": ["hand held", "plumbed in"],
      "safety.extinguisher.serviceDue": ["5/2026", "9/2026", "3/2027", "11/2027"],
    },
  },
  {
    percent: 15,
    since: 1990,
    reason: ["required for track"],
    donor: ["own make"],
    changes: { "safety.towEye": ["front", "front and rear"] },
  },
];

/** What is measured when a car is set up; both sides where it has sides. Each with how often of a hundred sheets. */
export const measured: Readonly<Record<string, Drawn>> = {
  "front.camber": angle(-0.4, 0.5),
  "front.castor": angle(3.4, 0.4),
  "front.toe": ["5' in per side", "3' in per side", "8' in per side", "0' per side", "5' out per side"],
  "rear.camber": angle(-0.5, 0.3),
  "front.rideHeight": mm(142, 9),
  "rear.rideHeight": mm(151, 9),
  "tyres.front.pressure": psi(24),
  "tyres.rear.pressure": psi(26),
  "front.cornerWeight": kg(205, 9),
  "rear.cornerWeight": kg(188, 9),
  "front.disc.thickness": mm(10.4, 0.9, 1),
  "front.pad.thickness": mm(8, 2, 1),
  "tyres.front.treadDepth": mm(5.2, 1.4, 1),
  "tyres.rear.treadDepth": mm(4.9, 1.5, 1),
  "front.damper.clicks": plain(9, 3),
  "exhaust.noise": { mean: 96, deviation: 3.5, digits: 0, unit: " dB(A)" },
};

/** What letters and log books tell of a car's life. Invented places. */
export const stories: readonly string[] = [
  "Found under a tarpaulin behind the sawmill at Grøndal, engine seized, papers in the glovebox",
  "Shown at the winter fair in Kvitnes, third in class",
  "Rolled at the hairpin of the Skarvik hill climb; off side front corner rebuilt",
  "Restored from the bare backbone; photographs in the club's files",
  "Exported and brought back; customs stamps on the log book",
  "Stood in a barn near Løvås for eleven years",
  "Body lifted, outriggers welded, chassis painted with epoxy",
  "Used for the works' brochure; the photographer's print is with the keeper",
  "Gearbox seized on the ferry quay at Øysund; replaced on the spot from a saloon",
  "Club's long-distance cup, 4,200 km without a stop for repair",
  "Number plate on the bulkhead replaced after the fire of the garage",
  "Bought unfinished as a kit of parts; finished by its second keeper",
  "Timing gear failed; engine rebuilt by Åsgård Motor",
  "Paint stripped: three colours found, the lowest as on the works' card",
];
