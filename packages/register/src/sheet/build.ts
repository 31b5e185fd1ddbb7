import { assemblyLabels } from "../characteristic/assembly-label";
import type { CharacteristicBook } from "../characteristic/book";
import { type Assembly, assemblies, type Characteristic, type Side } from "../characteristic/characteristic";
import { type Check, type CheckOnSheet, stationLabels, stations } from "../check/check";
import { checksForCar } from "../check/for-car";
import { readingPlaces } from "../check/reading-place";
import { practice } from "../check/starter/source";
import type { CarView } from "../condition/evaluate";
import { deviating } from "../deviation/compare";
import type { Deviation } from "../deviation/deviation";
import { unitBeside } from "../deviation/line";
import { sayDay } from "../identity/say-day";
import type { CarBasis, State } from "../state/state";
import { limitsOnSheet, lineOnSheet } from "./angle";
import type { CheckReading, SheetCheck, SheetDeviation, SheetModel, SheetSetting } from "./sheet-model";

/** Version of what a sheet says and how it is drawn; counts up when either changes. */
export const LAYOUT_VERSION = 3;

/** A car on the register, assessed on the day of the event. */
export interface SheetCar {
  readonly chassis: string;
  readonly built: string | null;
  readonly status: string;
  readonly basis: CarBasis;
  readonly series: {
    readonly slug: string;
    readonly name: string;
    readonly marque: { readonly name: string };
  } | null;
  readonly identities: readonly { readonly kind: string; readonly number: string }[];
  readonly state: State;
  readonly deviations: readonly Deviation[];
}

export interface BuildSheetInput {
  readonly club: { readonly name: string; readonly unitSystem: "metric" | "imperial" };
  readonly event: {
    readonly name: string;
    readonly on: string;
    readonly venue: string;
    readonly ruleSet: string;
  };
  readonly entry: {
    readonly runningNumber: string;
    readonly group: string;
    readonly className: string;
    readonly driver: string;
    readonly describedAs: string;
  };
  readonly checks: readonly Check[];
  readonly book: CharacteristicBook;
  readonly recordHash: string;
  /** Short code of this print; empty where it is not kept. */
  readonly code?: string;
  /** Address at which the code is answered. */
  readonly link?: string;
  /** ISO instant. */
  readonly preparedAt: string;
  /** Missing for a car that is not on the register: it gets the checks every car gets. */
  readonly car?: SheetCar;
}

const cautions: readonly string[] = [
  "This sheet is an aid: the organiser's current regulations and the scrutineer decide. It certifies no roadworthiness.",
  "Chock the wheels and support the car on stands before anyone reaches underneath. Hot brakes, fluids and exhausts burn.",
  "What is not recorded is not known to be right: look.",
];

const leaderOf = (assembly: Assembly) => assemblies.indexOf(assembly) + 1;

function told(input: BuildSheetInput): readonly SheetDeviation[] {
  const { car, book, club } = input;
  return deviating(car?.deviations ?? []).map((deviation) => {
    const {
      characteristic: _key,
      known: _known,
      assembly,
      ...line
    } = lineOnSheet(deviation, book, club.unitSystem);
    return { ...line, leader: leaderOf(assembly) };
  });
}

/** Settings that the specification limits or somebody measured, in the dictionary's order. */
function settingsOf({ car, book, club }: BuildSheetInput): readonly SheetSetting[] {
  if (!car) return [];
  return book.all.flatMap((characteristic): SheetSetting[] => {
    if (!characteristic.setting || characteristic.kind !== "quantity") return [];
    const found = car.deviations.filter(({ characteristic: key }) => key === characteristic.key);
    const [first] = found;
    if (!first || !found.some(({ limits, actual }) => limits ?? actual)) return [];
    const limits = first.limits
      ? limitsOnSheet(characteristic, first.limits, club.unitSystem, first.nominal)
      : "";
    const { key, label } = characteristic;
    const sidesTold = Object.fromEntries(
      found.map((deviation) => [deviation.side, sideOf(deviation, book, club.unitSystem)]),
    );
    return [
      { key, label, unit: unitBeside(characteristic, first.nominal, club.unitSystem), limits, ...sidesTold },
    ];
  });
}

function sideOf(deviation: Deviation, book: CharacteristicBook, system: "metric" | "imperial") {
  const { actual, verdictText, bracket } = lineOnSheet(deviation, book, system);
  if (actual === "") return { text: "not recorded", verdictText: "", ...(bracket ? { bracket } : {}) };
  return { text: actual, verdictText, ...(bracket ? { bracket } : {}) };
}

function sourceText({ title, edition, clause }: Check["source"]): string {
  // Most checks of a sheet say so: short, or it would be the loudest thing on the page.
  if (title === practice.title) return "common practice";
  return [title, edition, clause].filter((part) => part !== undefined).join(", ");
}

function sheetCheck(input: BuildSheetInput, shown: ReadonlySet<string>) {
  return ({ check, reason, why, undecided }: CheckOnSheet): SheetCheck => {
    const { id, text, short = text, method, caution, criterion, source } = check;
    const limit = limitOf(check, input);
    const told = (words: string) =>
      undecided
        ? words.replace("See what is fitted, and write it down:", "Not on record, write down:")
        : words;
    return {
      id,
      text: told(text),
      short: told(short).replace(/\.$/, ""),
      wanted: limit === undefined && check.short === undefined && "text" in criterion ? criterion.text : "",
      ...(method === undefined ? {} : { method }),
      ...(caution === undefined ? {} : { caution }),
      criterion: "text" in criterion ? { ...criterion, text: `Pass if ${criterion.text}` } : criterion,
      ...(limit === undefined ? {} : { limit }),
      readings: undecided ? [] : readingsOf(check, input, shown),
      why,
      special: reason !== "always",
      undecided,
      source: sourceText(source),
    };
  };
}

function characteristicOf({ criterion }: Check, { book }: BuildSheetInput): Characteristic | undefined {
  const key = "characteristic" in criterion ? criterion.characteristic : undefined;
  return key === undefined ? undefined : book.find(key);
}

/** "below 11 mm: refuse"; limits on both sides belong to settings, which the organiser may judge otherwise. */
function limitOf(check: Check, input: BuildSheetInput): string | undefined {
  const characteristic = characteristicOf(check, input);
  const found = input.car?.deviations.find(({ characteristic: key }) => key === characteristic?.key);
  if (characteristic?.kind !== "quantity" || !found?.limits) return undefined;
  const said = limitsOnSheet(characteristic, found.limits, input.club.unitSystem, found.nominal);
  if (said.startsWith("at least ")) return `below ${said.slice(9)}: refuse`;
  if (said.startsWith("at most ")) return `above ${said.slice(8)}: refuse`;
  return said === "" ? undefined : `limits ${said}`;
}

/** A figure is asked once: where it stands among the settings, the check points there. */
function readingsOf(
  check: Check,
  input: BuildSheetInput,
  shown: ReadonlySet<string>,
): readonly CheckReading[] {
  const { criterion } = check;
  if (criterion.kind !== "measured") return [];
  return readingPlaces(criterion, (key) => input.book.find(key)).filter(
    ({ characteristic }) => !shown.has(characteristic),
  );
}

/** What is there because of this car comes first at a station, what is to be written down last. */
const rank = ({ special, undecided }: SheetCheck) => (undecided ? 2 : special ? 0 : 1);

function stationsOf(input: BuildSheetInput, settings: readonly SheetSetting[]): SheetModel["stations"] {
  const onSheet = sheetCheck(input, new Set(settings.map(({ key }) => key)));
  const checks = input.car
    ? checksForCar(
        input.checks,
        viewOf(input.car, { eventDay: input.event.on, book: input.book }),
        input.book,
      )
    : input.checks
        .filter(({ when }) => when.op === "always")
        .map((check) => ({ check, reason: "always" as const, why: "every car", undecided: false }));
  return stations.flatMap((station) => {
    const here = checks
      .filter(({ check }) => check.station === station)
      .map(onSheet)
      .sort((one, other) => rank(one) - rank(other));
    return here.length === 0 ? [] : [{ station, label: stationLabels[station], checks: here }];
  });
}

function viewOf(car: SheetCar, { eventDay, book }: Pick<CarView, "eventDay" | "book">): CarView {
  const { status, basis, state, deviations, series } = car;
  return {
    status,
    basis,
    state,
    deviations,
    eventDay,
    book,
    ...(series === null ? {} : { seriesSlug: series.slug }),
  };
}

function enteredIn(state: State, key: string, side: Side = "whole"): string {
  return state.get(`${key} ${side}`)?.value.entered ?? "";
}

function identityOf({ car, entry }: BuildSheetInput): SheetModel["car"] {
  if (!car) {
    const blank = { chassis: "", marque: "", built: "", body: "", colour: "", registration: "" };
    return { ...blank, series: entry.describedAs, onRegister: false };
  }
  return {
    chassis: car.chassis,
    marque: car.series?.marque.name ?? "",
    series: car.series?.name ?? "series not settled",
    built: car.built ?? "not known",
    body: enteredIn(car.state, "body.style"),
    colour: enteredIn(car.state, "body.colour"),
    registration: car.identities.find(({ kind }) => kind === "registration")?.number ?? "",
    onRegister: true,
  };
}

function leadersOf(deviations: readonly SheetDeviation[]): SheetModel["leaders"] {
  return assemblies.map((assembly, index) => ({
    leader: index + 1,
    assembly,
    label: assemblyLabels[assembly],
    deviations: deviations.filter(({ leader }) => leader === index + 1).length,
  }));
}

/** How many characteristics the specification speaks of, and nothing is known of on this car. */
function countNotRecorded(
  deviations: readonly Deviation[],
  isKnown: (key: string) => Characteristic | undefined,
): number {
  return deviations.filter(
    ({ verdict, characteristic }) => verdict === "notRecorded" && isKnown(characteristic),
  ).length;
}

/** Makes the finished model of a pre-event sheet: the drawing adds nothing and works nothing out. */
export function buildSheet(input: BuildSheetInput): SheetModel {
  const { club, event, entry, book, car } = input;
  const { name, on, venue, ruleSet } = event;
  const { runningNumber, group, className, driver } = entry;
  const deviations = told(input);
  const settings = settingsOf(input);
  return {
    layoutVersion: LAYOUT_VERSION,
    recordHash: input.recordHash,
    preparedAt: input.preparedAt,
    code: input.code ?? "",
    link: input.link ?? "",
    club: club.name,
    event: { name, on: sayDay(on), venue, ruleSet },
    entry: { runningNumber, group, className, driver },
    car: identityOf(input),
    leaders: leadersOf(deviations),
    deviations,
    notRecorded: countNotRecorded(car?.deviations ?? [], book.find),
    settings,
    stations: stationsOf(input, settings),
    cautions,
  };
}
