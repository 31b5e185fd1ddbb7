import type { AddSeriesInput } from "@trunnion/service";

/** Password of every demo account: for looking round on one's own machine only. */
export const DEMO_PASSWORD = "walk round the car";

type Roles = readonly ("registrar" | "owner" | "scrutineer" | "fleetManager")[];

/** Somebody who can sign in to the demo, and what they may do in which club. */
export interface DemoPerson {
  readonly name: string;
  readonly email: string;
  readonly roles: Readonly<Record<string, Roles>>;
}

export const people: readonly DemoPerson[] = [
  { name: "Ragnhild Tveitås", email: "registrar@demo.test", roles: { sandvaer: ["registrar"] } },
  { name: "Óttar Løvfall", email: "owner@demo.test", roles: { sandvaer: ["owner"] } },
  {
    name: "Łucja Skårnes",
    email: "scrutineer@demo.test",
    roles: { sandvaer: ["scrutineer"], grusvik: ["scrutineer"] },
  },
  { name: "Mårten Ørnhøi", email: "fleet@demo.test", roles: { grusvik: ["fleetManager"] } },
];

export interface DemoClub {
  readonly slug: string;
  readonly name: string;
  readonly kind: "ownersClub" | "fleet";
  readonly marque: { readonly slug: string; readonly name: string };
  readonly series: readonly Omit<AddSeriesInput, "marqueId">[];
  /** Register file beside this one. */
  readonly file: string;
}

const options = [
  { code: "H", label: "handling pack: rear anti-roll bar and firmer springs" },
  { code: "OD", label: "overdrive" },
  { code: "LSD", label: "plate differential" },
  { code: "SW", label: "swing axles, the first rear suspension tried" },
  { code: "SA", label: "independent rear on semi-trailing arms, works trial" },
  { code: "MS", label: "strut front, works trial" },
];

const sandvaerNumber = { numberDigits: 4, firstSerial: 1, numberSuffixes: [], options } as const;

export const clubs: readonly DemoClub[] = [
  {
    slug: "sandvaer",
    name: "Sandvær Register",
    kind: "ownersClub",
    marque: { slug: "sandvaer", name: "Sandvær" },
    file: "sandvaer-register.csv",
    series: [
      {
        ...sandvaerNumber,
        slug: "series-1",
        name: "Series 1",
        ordinal: 1,
        numberPrefix: "S1-",
        lastSerial: 180,
        builtFrom: "1968-03-01",
        builtTo: "1969-12-31",
        builtCount: 180,
      },
      {
        ...sandvaerNumber,
        slug: "series-2",
        name: "Series 2",
        ordinal: 2,
        numberPrefix: "S2-",
        lastSerial: 398,
        builtFrom: "1970-01-01",
        builtTo: "1972-05-31",
        builtCount: 398,
      },
      {
        ...sandvaerNumber,
        slug: "series-3",
        name: "Series 3",
        ordinal: 3,
        numberPrefix: "S3-",
        lastSerial: 412,
        builtFrom: "1972-06-01",
        builtTo: "1974-12-31",
        builtCount: 412,
      },
      {
        ...sandvaerNumber,
        slug: "series-4",
        name: "Series 4",
        ordinal: 4,
        numberPrefix: "S4-",
        lastSerial: 250,
        builtFrom: "1975-01-01",
        builtTo: "1977-09-30",
        builtCount: 250,
      },
    ],
  },
  {
    slug: "grusvik",
    name: "Grusvik Track School",
    kind: "fleet",
    marque: { slug: "sandvaer", name: "Sandvær" },
    file: "grusvik-fleet.csv",
    series: [
      {
        slug: "school-car",
        name: "School car",
        ordinal: 1,
        numberPrefix: "GT-",
        numberDigits: 2,
        firstSerial: 1,
        lastSerial: 14,
        numberSuffixes: [],
        options: [],
        builtFrom: "1976-01-01",
        builtTo: "1976-12-31",
        builtCount: 14,
      },
    ],
  },
];
