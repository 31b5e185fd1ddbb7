import type { CharacteristicBook } from "../characteristic/book";
import type { Side } from "../characteristic/characteristic";
import { sides } from "../characteristic/characteristic";
import type { Deviation } from "../deviation/deviation";
import { daysBetween } from "../identity/calendar";
import { stateKey } from "../state/key";
import type { CarBasis, State, StateValue } from "../state/state";
import type { Comparison, Condition, Truth } from "./condition";
import { foldText } from "./fold-text";

/** A car as conditions look at it. */
export interface CarView {
  readonly seriesSlug?: string;
  readonly status: string;
  readonly basis: CarBasis;
  readonly state: State;
  readonly deviations: readonly Deviation[];
  /** What the characteristics are, the club's own among them. */
  readonly book: CharacteristicBook;
  /** ISO day of the event; for a search, today. */
  readonly eventDay: string;
}

/** Sizes (SI, zero apart) beyond which differences and ratios are not worked out but unknown. No measure comes near. */
export const measureLimits = { least: 1e-150, most: 1e150 } as const;

type Of<O extends Condition["op"]> = Extract<Condition, { readonly op: O }>;

const said = (is: boolean): Truth => (is ? "yes" : "no");

/** Kleene: any yes is yes; else any unknown is unknown. */
export function anyOf(truths: readonly Truth[]): Truth {
  if (truths.includes("yes")) return "yes";
  return truths.includes("unknown") ? "unknown" : "no";
}

/** Kleene: any no is no; else any unknown is unknown. */
export function allOf(truths: readonly Truth[]): Truth {
  if (truths.includes("no")) return "no";
  return truths.includes("unknown") ? "unknown" : "yes";
}

/** Kleene: unknown stays unknown. */
export function negated(truth: Truth): Truth {
  if (truth === "unknown") return truth;
  return truth === "yes" ? "no" : "yes";
}

function compares<T extends number | string>(one: T, is: Comparison, other: T): boolean {
  switch (is) {
    case "eq":
      return one === other;
    case "ne":
      return one !== other;
    case "lt":
      return one < other;
    case "le":
      return one <= other;
    case "gt":
      return one > other;
    case "ge":
      return one >= other;
  }
}

/** Values of a characteristic that are known of this car itself; what only the specification says is not. */
function valuesOf({ state }: CarView, key: string, side: Side | undefined): readonly StateValue[] {
  const wanted = side === undefined ? sides : [side];
  return wanted.flatMap((one) => {
    const value = state.get(stateKey(key, one));
    return value && value.origin !== "specification" ? [value] : [];
  });
}

/** Something about any of the values; unknown when there is none. */
function some(values: readonly StateValue[], is: (value: StateValue) => Truth): Truth {
  return values.length === 0 ? "unknown" : anyOf(values.map(is));
}

function built({ from, to }: Of<"built">, { basis }: CarView): Truth {
  if (!basis.built) return "unknown";
  const { earliest, latest } = basis.built;
  if (earliest >= (from ?? earliest) && latest <= (to ?? latest)) return "yes";
  return latest < (from ?? latest) || earliest > (to ?? earliest) ? "no" : "unknown";
}

function numberIs({ characteristic, side, is, si }: Of<"number">, view: CarView): Truth {
  return some(valuesOf(view, characteristic, side), ({ value }) =>
    value.kind === "quantity" ? said(compares(value.si, is, si)) : said(false),
  );
}

function codeIn({ characteristic, side, in: codes }: Of<"code">, view: CarView): Truth {
  return some(valuesOf(view, characteristic, side), ({ value }) => {
    if (value.kind === "choice") return said(codes.includes(value.code));
    return said(value.kind === "designation" && codes.includes(value.canonical));
  });
}

function textHas({ characteristic, side, text }: Of<"textHas">, view: CarView): Truth {
  const wanted = foldText(text);
  return some(valuesOf(view, characteristic, side), ({ value }) =>
    said(foldText(value.entered).includes(wanted)),
  );
}

function dateIs({ characteristic, side, is, date }: Of<"date">, view: CarView): Truth {
  const day = date === "eventDay" ? view.eventDay : date;
  return some(valuesOf(view, characteristic, side), ({ value }) =>
    said(value.kind === "date" && compares(value.date, is, day)),
  );
}

/** What was compared with the specification; what is not recorded of this car was not. */
function comparedOf({ deviations }: CarView, key: string, side: Side | undefined): readonly Deviation[] {
  return deviations.filter(
    (one) =>
      one.characteristic === key &&
      (side === undefined || one.side === side) &&
      one.verdict !== "notRecorded",
  );
}

/** Whether every side asked about was compared; that a characteristic has two sides shows by the one that was. */
function isWhole(compared: readonly Deviation[], side: Side | undefined): boolean {
  const has = (wanted: Side) => compared.some((one) => one.side === wanted);
  return side === undefined ? has("whole") || (has("left") && has("right")) : has(side);
}

/** A side that is not recorded leaves it unknown, unless not being recorded is what is asked for. */
function verdictIn({ characteristic, side, in: wanted }: Of<"verdict">, view: CarView): Truth {
  const compared = comparedOf(view, characteristic, side);
  if (compared.some(({ verdict }) => wanted.includes(verdict))) return "yes";
  if (isWhole(compared, side)) return "no";
  return wanted.includes("notRecorded") ? "yes" : "unknown";
}

/** Whether a number can be subtracted and divided without leaving what a double holds: the database would refuse. */
function isMeasure(si: number): boolean {
  return si === 0 || (Math.abs(si) >= measureLimits.least && Math.abs(si) <= measureLimits.most);
}

function against({ characteristic, side, measure, is, si }: Of<"against">, view: CarView): Truth {
  const compared = comparedOf(view, characteristic, side);
  if (compared.length === 0) return "unknown";
  return anyOf(
    compared.map(({ actual, nominal, [measure]: measured }) => {
      if (actual?.value.kind !== "quantity" || nominal?.kind !== "quantity") return "unknown";
      if (!isMeasure(actual.value.si) || !isMeasure(nominal.si)) return "unknown";
      return measured === undefined ? "unknown" : said(compares(measured, is, si));
    }),
  );
}

function sidesDiffer({ characteristic, by = 0 }: Of<"sidesDiffer">, view: CarView): Truth {
  const [left] = valuesOf(view, characteristic, "left");
  const [right] = valuesOf(view, characteristic, "right");
  if (!left || !right) return "unknown";
  if (left.value.kind === "quantity" && right.value.kind === "quantity") {
    if (!isMeasure(left.value.si) || !isMeasure(right.value.si)) return "unknown";
    return said(Math.abs(left.value.si - right.value.si) > by);
  }
  if (left.value.kind !== right.value.kind) return "yes";
  return said(columnOf(left) !== columnOf(right));
}

/** What makes two values one, in the record's own columns, so that SQL can compare the same. */
function columnOf({ value }: StateValue): string {
  switch (value.kind) {
    case "choice":
      return value.code;
    case "designation":
      return value.canonical;
    case "text":
      return value.text;
    case "date":
      return value.date;
    case "absent":
      return "";
    case "quantity":
      return String(value.si);
  }
}

/** Both ends of the span of possible days lie in one decade. */
function isDecadeKnown({ built: span }: CarBasis): boolean {
  if (!span) return false;
  const decade = (day: string) => day.slice(0, 3);
  return decade(span.earliest) === decade(span.latest);
}

function known({ what }: Of<"known">, view: CarView): Truth {
  if (what === "series") return said(view.seriesSlug !== undefined);
  return said(what === "status" ? view.status !== "unknown" : isDecadeKnown(view.basis));
}

function anyVerdict({ in: wanted }: Of<"anyVerdict">, { deviations }: CarView): Truth {
  const compared = deviations.flatMap(({ verdict }) => (verdict === "notRecorded" ? [] : [verdict]));
  if (compared.length === 0) return "unknown";
  return said(compared.some((verdict) => wanted.includes(verdict)));
}

function modified({ in: wanted }: Of<"modified">, { state, book }: CarView): Truth {
  const places = [...state.values()]
    .filter(({ origin }) => origin === "modification")
    .map(({ characteristic }) => book.find(characteristic)?.assembly);
  return said(places.some((one) => one !== undefined && wanted.includes(one)));
}

/** A reading that a later modification overtook is no longer of this car: it counts as none. */
function readingOlderThan({ characteristic, days }: Of<"readingOlderThan">, view: CarView): Truth {
  const readings = valuesOf(view, characteristic, undefined).filter(({ origin }) => origin === "reading");
  if (readings.length === 0) return "unknown";
  return anyOf(
    readings.map(({ since }) =>
      since === undefined ? "unknown" : said(daysBetween(since, view.eventDay) > days),
    ),
  );
}

/**
 * Whether a condition holds for a car. Three-valued: what is not recorded is unknown, never a yes and never a no.
 * `recorded`, `known` and `modified` speak of the record itself and are always decided.
 */
export function evaluate(condition: Condition, view: CarView): Truth {
  switch (condition.op) {
    case "always":
      return "yes";
    case "all":
      return allOf(condition.of.map((part) => evaluate(part, view)));
    case "any":
      return anyOf(condition.of.map((part) => evaluate(part, view)));
    case "not":
      return negated(evaluate(condition.of, view));
    case "series":
      return view.seriesSlug === undefined ? "unknown" : said(condition.in.includes(view.seriesSlug));
    case "status":
      return view.status === "unknown" ? "unknown" : said(condition.in.includes(view.status));
    case "built":
      return built(condition, view);
    case "known":
      return known(condition, view);
    case "anyVerdict":
      return anyVerdict(condition, view);
    case "modified":
      return modified(condition, view);
    case "recorded":
      return said(valuesOf(view, condition.characteristic, condition.side).length > 0);
    case "absent":
      return some(valuesOf(view, condition.characteristic, condition.side), ({ value }) =>
        said(value.kind === "absent"),
      );
    case "number":
      return numberIs(condition, view);
    case "code":
      return codeIn(condition, view);
    case "textHas":
      return textHas(condition, view);
    case "date":
      return dateIs(condition, view);
    case "verdict":
      return verdictIn(condition, view);
    case "against":
      return against(condition, view);
    case "sidesDiffer":
      return sidesDiffer(condition, view);
    case "readingOlderThan":
      return readingOlderThan(condition, view);
  }
}
