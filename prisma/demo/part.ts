import { type AddPartInput, addPartInput } from "@trunnion/service";

/** Something noted about a part, so many days before the demo's day. */
export interface DemoPartNote {
  readonly daysAgo: number;
  readonly kind: "found" | "notFound" | "confirmed" | "doubted";
  readonly text: string;
  readonly count?: number;
  readonly by?: string;
}

/** A part of the demo's list with its notes: invented throughout, donors and numbers too. */
export interface DemoPart {
  readonly part: AddPartInput;
  readonly notes: readonly DemoPartNote[];
}

type Standing = "original" | "fits" | "altered" | "doesNotFit";
type Feature = readonly [
  about: string,
  value: string,
  kind?: "tells" | "thread" | "length" | "offset" | "stop",
];

interface Entry {
  readonly of: Pick<AddPartInput, "assembly" | "place" | "name" | "kind"> & {
    readonly origin?: string;
    readonly partNumber?: string;
    readonly note?: string;
  };
  /** By series; with a note where something has to be altered. */
  readonly fits: Readonly<Record<string, Standing | readonly [Standing, string]>>;
  readonly matters: readonly Feature[];
  readonly notes: readonly DemoPartNote[];
}

function demoPart({ of, fits, matters, notes }: Entry): DemoPart {
  const rows = Object.entries(fits).map(([series, said]) => {
    const [standing, note = ""] = typeof said === "string" ? [said] : said;
    return { series, standing, note };
  });
  const features = matters.map(([about, value, kind = "characteristic"]) => ({
    about,
    value,
    kind: kind === "tells" ? "characteristic" : kind,
    tells: kind === "tells" ? "yes" : "no",
  }));
  return { part: addPartInput.parse({ trust: "stated", ...of, fits: rows, features }), notes };
}

const saloon = "Tindvik 1200 saloon, 1963-70";
const later = "Norhald 1500 saloon, 1970-78";
const van = "Tindvik van, 1968-79";
const registrar = "registrar@demo.test";
const owner = "owner@demo.test";

const brakes: readonly Entry[] = [
  {
    of: {
      assembly: "brakes",
      place: "Front caliper",
      name: "Front caliper, unified bolts",
      kind: "donor",
      origin: saloon,
      partNumber: "TV 4117",
    },
    fits: {
      "series-1": "original",
      "series-2": "original",
      "series-3": ["altered", "Only with the upright of the same donor."],
    },
    matters: [
      ["Front caliper bolt thread", "7/16-20 UNF", "tells"],
      ["Front caliper piston diameter", "54 mm"],
      ["hose union", "3/8-24 UNF", "thread"],
    ],
    notes: [
      {
        daysAgo: 2400,
        kind: "found",
        text: "A pair at the autumn jumble, seized, rebuilt since.",
        by: registrar,
      },
      {
        daysAgo: 640,
        kind: "notFound",
        text: "Nothing at either of the two breakers that used to have them.",
        by: owner,
      },
      { daysAgo: 210, kind: "notFound", text: "Asked round the whole northern section.", by: registrar },
      {
        daysAgo: 2380,
        kind: "confirmed",
        text: "Rebuilt pair fitted, bolts go home by hand.",
        by: registrar,
      },
    ],
  },
  {
    of: {
      assembly: "brakes",
      place: "Front caliper",
      name: "Front caliper, metric bolts",
      kind: "donor",
      origin: later,
      partNumber: "NH 22-310",
    },
    fits: {
      "series-1": ["doesNotFit", "The bolts start in the upright and do not hold."],
      "series-3": "original",
      "series-4": "original",
    },
    matters: [
      ["Front caliper bolt thread", "M12x1.25", "tells"],
      ["Front caliper piston diameter", "54 mm"],
      ["hose union", "M10x1", "thread"],
    ],
    notes: [
      { daysAgo: 160, kind: "found", count: 6, text: "Exchange units, new seals, plated.", by: registrar },
      { daysAgo: 150, kind: "confirmed", text: "Fitted with its own hoses.", by: owner },
    ],
  },
  {
    of: {
      assembly: "brakes",
      place: "Front caliper",
      name: "Front caliper of the van",
      kind: "donor",
      origin: van,
    },
    fits: { "series-2": ["altered", "Spacers of 4 mm under the lugs; the disc runs off centre without."] },
    matters: [
      ["Front caliper bolt thread", "M10x1.25", "tells"],
      ["Front caliper piston diameter", "48 mm"],
      ["lug to disc centre", "31 mm", "offset"],
    ],
    notes: [
      { daysAgo: 1300, kind: "found", count: 2, text: "From a van broken for its body.", by: owner },
      { daysAgo: 1290, kind: "doubted", text: "Foul of the wheel with the 13 inch rim.", by: owner },
    ],
  },
];

const front: readonly Entry[] = [
  {
    of: {
      assembly: "frontSuspension",
      place: "Front upright",
      name: "Front upright, early",
      kind: "donor",
      origin: saloon,
    },
    fits: { "series-1": "original", "series-2": "original" },
    matters: [
      ["Front disc diameter", "9 1/2 in", "tells"],
      ["Front caliper bolt thread", "7/16-20 UNF"],
      ["lower joint pin", "9/16-18 UNF", "thread"],
    ],
    notes: [
      { daysAgo: 1500, kind: "found", text: "One left-hand upright, bearing seats good.", by: registrar },
    ],
  },
  {
    of: {
      assembly: "frontSuspension",
      place: "Front upright",
      name: "Front upright, late",
      kind: "donor",
      origin: later,
    },
    fits: {
      "series-2": ["altered", "With the late ball joints and calipers, both sides."],
      "series-3": "original",
      "series-4": "original",
    },
    matters: [
      ["Front disc diameter", "10 1/2 in", "tells"],
      ["Front caliper bolt thread", "M12x1.25"],
      ["lower joint pin", "M14x1.5", "thread"],
    ],
    notes: [{ daysAgo: 320, kind: "found", count: 4, text: "Two pairs, from cars laid up.", by: owner }],
  },
  {
    of: {
      assembly: "frontSuspension",
      place: "Front anti-roll bar",
      name: "Front anti-roll bar, 9/16 in",
      kind: "works",
      origin: "Sandvær works",
    },
    fits: { "series-1": "original" },
    matters: [
      ["Front anti-roll bar diameter", "9/16 in", "tells"],
      ["end to link", "5/16-24 UNF", "thread"],
    ],
    notes: [{ daysAgo: 3300, kind: "found", text: "With a rolled car.", by: registrar }],
  },
  {
    of: {
      assembly: "frontSuspension",
      place: "Front anti-roll bar",
      name: "Front anti-roll bar, 18 mm",
      kind: "works",
      origin: "Sandvær works",
    },
    fits: { "series-1": "fits", "series-2": "original", "series-3": "original" },
    matters: [
      ["Front anti-roll bar diameter", "18 mm", "tells"],
      ["end to link", "M8x1", "thread"],
    ],
    notes: [{ daysAgo: 400, kind: "found", count: 3, text: "Club's own batch, last three.", by: registrar }],
  },
  {
    of: {
      assembly: "frontSuspension",
      place: "Front lower arm bush",
      name: "Lower arm bush, rubber",
      kind: "works",
      origin: "Sandvær works",
    },
    fits: { "series-1": "original", "series-2": "original", "series-3": "original", "series-4": "original" },
    matters: [
      ["Front lower arm bush", "rubber", "tells"],
      ["across the tube", "44.5 mm", "length"],
    ],
    notes: [
      { daysAgo: 90, kind: "found", count: 40, text: "New batch by the club, one a car.", by: registrar },
    ],
  },
  {
    of: {
      assembly: "frontSuspension",
      place: "Front lower arm bush",
      name: "Lower arm bush, polyurethane",
      kind: "substitute",
      origin: "made to pattern",
    },
    fits: {
      "series-1": "fits",
      "series-2": "fits",
      "series-3": "fits",
      "series-4": ["altered", "Turn 1 mm off each face: the late tube is shorter."],
    },
    matters: [
      ["Front lower arm bush", "polyurethane", "tells"],
      ["across the tube", "46 mm", "length"],
    ],
    notes: [
      { daysAgo: 45, kind: "found", count: 20, text: "In stock.", by: owner },
      { daysAgo: 30, kind: "confirmed", text: "On a Series 3.", by: owner },
    ],
  },
];

const others: readonly Entry[] = [
  {
    of: {
      assembly: "rearSuspension",
      place: "Rear drop link",
      name: "Rear drop link, rubber bushes",
      kind: "works",
      origin: "Sandvær works",
    },
    fits: { "series-3": "original", "series-4": "original" },
    matters: [
      ["Rear drop link joint", "rubber bush", "tells"],
      ["between the eyes", "3 5/8 in", "length"],
      ["link bolt", "5/16-24 UNF", "thread"],
    ],
    notes: [{ daysAgo: 900, kind: "found", count: 2, text: "New old stock, boxed.", by: registrar }],
  },
  {
    of: {
      assembly: "rearSuspension",
      place: "Rear drop link",
      name: "Rear drop link, rod ends",
      kind: "substitute",
      origin: "made up by members",
    },
    fits: {
      "series-3": ["altered", "Keep the bolt's bending lever short: no stack of spacers."],
      "series-4": ["altered", "As for Series 3."],
    },
    matters: [
      ["Rear drop link joint", "rod end", "tells"],
      ["between the eyes", "95 mm", "length"],
      ["link bolt", "M8x1", "thread"],
    ],
    notes: [{ daysAgo: 200, kind: "found", text: "Rod ends are stock; the sleeves are turned.", by: owner }],
  },
  {
    of: {
      assembly: "steering",
      place: "Steering rack",
      name: "Steering rack, early",
      kind: "donor",
      origin: saloon,
    },
    fits: { "series-1": "original", "series-2": "original", "series-3": "original" },
    matters: [
      ["rack end", "1/2-20 UNF", "thread"],
      ["between the ends", "615 mm", "length"],
      ["travel", "62 mm each way", "stop"],
    ],
    notes: [{ daysAgo: 700, kind: "notFound", text: "Three breakers asked.", by: registrar }],
  },
  {
    of: {
      assembly: "steering",
      place: "Steering rack",
      name: "Steering rack of the van",
      kind: "donor",
      origin: van,
    },
    fits: {
      "series-2": ["altered", "Limit the travel: at full lock the tyre meets the arm."],
      "series-4": "original",
    },
    matters: [
      ["rack end", "M12x1.25", "thread"],
      ["between the ends", "628 mm", "length"],
      ["travel", "71 mm each way", "stop"],
    ],
    notes: [{ daysAgo: 260, kind: "found", count: 2, text: "Reconditioned, on exchange.", by: owner }],
  },
  {
    of: {
      assembly: "body",
      place: "Windscreen",
      name: "Windscreen, coupé",
      kind: "works",
      origin: "Sandvær works",
    },
    fits: { "series-1": "original", "series-2": "original", "series-3": "original", "series-4": "original" },
    matters: [],
    notes: [
      { daysAgo: 1900, kind: "notFound", text: "Maker of the tool long gone.", by: registrar },
      { daysAgo: 500, kind: "notFound", text: "A new tool would want forty orders.", by: registrar },
    ],
  },
];

/** The Sandvær Register's list. */
export const parts: readonly DemoPart[] = [...brakes, ...front, ...others].map(demoPart);
