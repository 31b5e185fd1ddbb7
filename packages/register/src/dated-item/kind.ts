import type { CharacteristicBook } from "../characteristic/book";
import { builtInCharacteristics } from "../characteristic/dictionary/index";

/** A dated item that is also a characteristic of the car: what is read off its label changes both. */
export interface DatedItemKind {
  /** As the record files it. */
  readonly kind: string;
  readonly label: string;
  /** Characteristic that holds the day. */
  readonly characteristic: string;
}

/** Dated items whose day a check can read off a label. */
export const datedItemKinds: readonly DatedItemKind[] = [
  { kind: "harness", label: "Harness", characteristic: "safety.harness.expires" },
  { kind: "seat", label: "Seat", characteristic: "safety.seat.expires" },
  { kind: "extinguisher", label: "Extinguisher", characteristic: "safety.extinguisher.serviceDue" },
  { kind: "helmet", label: "Helmet", characteristic: "safety.helmet.expires" },
];

/** The dated item a characteristic is the day of; undefined for any other. */
export function datedItemOf(characteristic: string): DatedItemKind | undefined {
  return datedItemKinds.find((item) => item.characteristic === characteristic);
}

const builtIn: ReadonlySet<string> = new Set(builtInCharacteristics.map(({ key }) => key));

/**
 * The same with a club's own: of the dates it keeps of safety equipment each is a last day, as those built in are. A date
 * of another assembly may be any (made on, rebuilt on), and falls due for nobody.
 */
export function datedItemKindsOf(book: CharacteristicBook): readonly DatedItemKind[] {
  const own = book.all.filter(
    ({ key, kind, assembly }) => kind === "date" && assembly === "safety" && !builtIn.has(key),
  );
  return [...datedItemKinds, ...own.map(({ key, label }) => ({ kind: key, label, characteristic: key }))];
}
