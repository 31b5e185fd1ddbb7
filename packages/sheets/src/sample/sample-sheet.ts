import {
  buildSheet,
  builtInBook,
  type SheetDeviation,
  type SheetModel,
  type SheetSetting,
  starterChecks,
} from "@trunnion/register";
import { sampleStations } from "./sample-check";

const names = [
  ["settings", "Settings"],
  ["frontSuspension", "Front suspension"],
  ["steering", "Steering"],
  ["rearSuspension", "Rear suspension"],
  ["brakes", "Brakes"],
  ["wheels", "Wheels and tyres"],
  ["chassis", "Chassis"],
  ["body", "Body"],
  ["engine", "Engine"],
  ["fuel", "Fuel"],
  ["oil", "Oil and breathers"],
  ["exhaust", "Exhaust and noise"],
  ["electrical", "Electrical"],
  ["driveline", "Driveline"],
  ["safety", "Safety"],
] as const;

const counts: Readonly<Record<string, number>> = {
  frontSuspension: 1,
  brakes: 2,
  rearSuspension: 1,
  wheels: 1,
  settings: 2,
  engine: 1,
};

const minute = Math.PI / 180 / 60;

export const sampleDeviations: readonly SheetDeviation[] = [
  {
    label: "Front camber",
    side: "left",
    leader: 1,
    verdict: "outsideLimits",
    verdictText: "Outside limits",
    specified: "−0°12′ to +0°30′",
    actual: "−1°15′ ± 6′",
    difference: "−1°24′",
    since: "7 Mar 2026",
    bracket: {
      lower: -12 * minute,
      upper: 30 * minute,
      nominal: 9 * minute,
      value: -75 * minute,
      expandedUncertainty: 6 * minute,
    },
  },
  {
    label: "Rear anti-roll bar diameter",
    leader: 4,
    verdict: "outsideLimits",
    verdictText: "Outside limits",
    specified: "16 mm ± 0.2",
    actual: "20 mm",
    difference: "+4 mm, ×1.25",
    since: "June 2019",
    bracket: { lower: 0.0158, upper: 0.0162, nominal: 0.016, value: 0.02 },
  },
  {
    label: "Front drop link joint",
    leader: 2,
    verdict: "differentPart",
    verdictText: "Different part",
    specified: "Bushed eye",
    actual: "Rod end, 5/16 UNF",
    difference: "",
    since: "12 Mar 2024",
  },
  {
    label: "Oil catch tank",
    leader: 9,
    verdict: "added",
    verdictText: "Added",
    specified: "None",
    actual: "2 litre, aluminium",
    difference: "",
    since: "before 1998",
  },
  {
    label: "Brake servo",
    leader: 5,
    verdict: "missing",
    verdictText: "Missing",
    specified: "Fitted",
    actual: "Not fitted",
    difference: "",
    since: "c. 1986",
  },
  {
    label: "Front disc thickness",
    side: "right",
    leader: 5,
    verdict: "cannotTell",
    verdictText: "Cannot tell",
    specified: "at least 10.2 mm",
    actual: "10.3 mm ± 0.2",
    difference: "−2.4 mm",
    since: "7 Mar 2026",
    bracket: { lower: 0.0102, nominal: 0.0127, value: 0.0103, expandedUncertainty: 0.0002 },
  },
  {
    label: "Wheel rim",
    leader: 6,
    verdict: "periodOption",
    verdictText: "Period option",
    specified: "4½J × 13",
    actual: "5½J × 14",
    difference: "+1 in, ×1.077",
    since: "2011",
  },
  {
    label: "Front spring rate",
    side: "left",
    leader: 2,
    verdict: "acceptedSubstitute",
    verdictText: "Accepted substitute",
    specified: "95 lb/in ± 5",
    actual: "105 lb/in",
    difference: "+10 lb/in, ×1.11",
    since: "June 2019",
    bracket: { lower: 15761, upper: 17513, nominal: 16637, value: 18389, expandedUncertainty: 350 },
  },
];

export const sampleSettings: readonly SheetSetting[] = [
  {
    key: "front.camber",
    label: "Front camber",
    unit: "degrees",
    limits: "−0°12′ to +0°30′",
    left: {
      text: "−1°15′ ± 6′",
      verdictText: "outside limits",
      bracket: {
        lower: -12 * minute,
        upper: 30 * minute,
        nominal: 9 * minute,
        value: -75 * minute,
        expandedUncertainty: 6 * minute,
      },
    },
    right: {
      text: "−0°10′ ± 6′",
      verdictText: "cannot tell",
      bracket: {
        lower: -12 * minute,
        upper: 30 * minute,
        nominal: 9 * minute,
        value: -10 * minute,
        expandedUncertainty: 6 * minute,
      },
    },
  },
  {
    key: "front.toe",
    label: "Front toe-in",
    unit: "mm at the rim, both wheels",
    limits: "1.5 to 3.0",
    whole: {
      text: "2.2 ± 0.3",
      verdictText: "inside limits",
      bracket: { lower: 0.0015, upper: 0.003, value: 0.0022, expandedUncertainty: 0.0003 },
    },
  },
  {
    key: "front.castor",
    label: "Castor",
    unit: "degrees",
    limits: "3°30′ to 4°30′",
    left: {
      text: "4°05′",
      verdictText: "inside limits",
      bracket: { lower: 3.5, upper: 4.5, nominal: 4, value: 4.08 },
    },
    right: { text: "", verdictText: "not recorded" },
  },
  {
    key: "tyres.front.pressure",
    label: "Tyre pressure, front",
    unit: "bar, cold",
    limits: "1.7 to 2.1",
    left: {
      text: "1.93",
      verdictText: "inside limits",
      bracket: { lower: 1.7, upper: 2.1, value: 1.93, expandedUncertainty: 0.03 },
    },
    right: {
      text: "1.93",
      verdictText: "inside limits",
      bracket: { lower: 1.7, upper: 2.1, value: 1.93, expandedUncertainty: 0.03 },
    },
  },
  {
    key: "front.rideHeight",
    label: "Ride height, front",
    unit: "mm",
    limits: "at least 120",
    left: {
      text: "124 ± 2",
      verdictText: "inside limits",
      bracket: { lower: 0.12, nominal: 0.13, value: 0.124, expandedUncertainty: 0.002 },
    },
    right: {
      text: "121 ± 2",
      verdictText: "cannot tell",
      bracket: { lower: 0.12, nominal: 0.13, value: 0.121, expandedUncertainty: 0.002 },
    },
  },
];

/** A finished model with something of everything; all names invented. */
export function sampleSheet(changes: Partial<SheetModel> = {}): SheetModel {
  return {
    layoutVersion: 3,
    recordHash: "3f9a1c0b77d24e58a0c6b1f2d3e4958677a8b9c0d1e2f30415263748596a7b8c",
    preparedAt: "2026-05-14T18:30:00Z",
    code: "7K2M9QXT",
    link: "https://register.example.test/s/7K2M9QXT",
    club: "Sandvær Register",
    event: {
      name: "Vårløp at Grusvik",
      on: "Saturday 16 May 2026",
      venue: "Grusvik ring, north paddock",
      ruleSet: "Track day, club cars, 2026",
    },
    entry: {
      runningNumber: "42",
      group: "B, novices",
      className: "Modified",
      driver: "Þórdís Øyängen-Łaszczyńska",
    },
    car: {
      chassis: "SV2-0417",
      marque: "Sandvær",
      series: "Coupé 1600, second series",
      built: "c. March 1971",
      body: "Two-seat coupé, glass-fibre on steel backbone",
      colour: "Fjord green over cream (Ľubovník 14)",
      registration: "NK·4417",
      onRegister: true,
    },
    leaders: names.map(([assembly, label], at) => ({
      leader: at + 1,
      assembly,
      label,
      deviations: counts[assembly] ?? 0,
    })),
    deviations: sampleDeviations,
    notRecorded: 37,
    settings: sampleSettings,
    stations: sampleStations,
    cautions: [
      "Never work under a car that stands on a jack alone: stands under the backbone, wheels chocked.",
      "Calipers on this car mix thread systems: a bolt that seems tight may hold by three turns.",
    ],
    ...changes,
  };
}

let walk: SheetModel["stations"] | undefined;

/** The starter rules' walk round a car, with what every car gets. */
function starterWalk(): SheetModel["stations"] {
  walk ??= buildSheet({
    club: { name: "", unitSystem: "metric" },
    event: { name: "", on: "2026-05-16", venue: "", ruleSet: "" },
    entry: { runningNumber: "", group: "", className: "", driver: "", describedAs: "" },
    checks: starterChecks,
    book: builtInBook,
    recordHash: "",
    preparedAt: "",
  }).stations;
  return walk;
}

function numbered(number: number): SheetModel {
  const sheet = sampleSheet();
  return {
    ...sheet,
    recordHash: number.toString(16).padStart(64, "0"),
    entry: { ...sheet.entry, runningNumber: String(number), driver: `Ånund Sørvåg ${number}` },
    car: { ...sheet.car, chassis: `SV1-${String(number).padStart(4, "0")}` },
  };
}

/** A plain car of an entry list: no deviation, the checks every car gets. */
export function plainSheet(number: number): SheetModel {
  const sheet = numbered(number);
  return {
    ...sheet,
    leaders: sheet.leaders.map((leader) => ({ ...leader, deviations: 0 })),
    deviations: [],
    stations: starterWalk(),
  };
}

/** A modified car of an entry list: what differs, its settings, the checks every car gets and those that follow. */
export function fullSheet(number: number): SheetModel {
  const sheet = numbered(number);
  const special = (station: string) =>
    sheet.stations.flatMap((one) =>
      one.station === station ? one.checks.filter((check) => check.special) : [],
    );
  return {
    ...sheet,
    stations: starterWalk().map((one) => ({ ...one, checks: [...special(one.station), ...one.checks] })),
  };
}
