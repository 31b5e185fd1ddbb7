import type { CharacteristicBook } from "../characteristic/book";
import type { QuantityCharacteristic, Side } from "../characteristic/characteristic";

/** Front, rear, whole car: in this order a setting sheet is the car seen from above, nose up. */
export const sheetGroupKeys = ["front", "rear", "car"] as const;
export type SheetGroupKey = (typeof sheetGroupKeys)[number];

/** The settings of one axle, or of the car as a whole. */
export interface SheetGroup {
  readonly key: SheetGroupKey;
  readonly label: string;
  readonly rows: readonly QuantityCharacteristic[];
}

const groupLabels: Readonly<Record<SheetGroupKey, string>> = {
  front: "Front",
  rear: "Rear",
  car: "Whole car",
};

/** The axle a characteristic belongs to, by its key. */
export function sheetGroupOf(key: string): SheetGroupKey {
  const [, axle] = /^(?:tyres\.|wheels\.)?(front|rear)\./.exec(key) ?? [];
  return axle === "front" || axle === "rear" ? axle : "car";
}

/** What is read on the flat floor and the turn plates, in the order in which it is read; common practice, no source. */
const usual = ["camber", "castor", "toe", "rideHeight", "pressure", "cornerWeight"];

/** Whether a setting is one of those read whenever a car is set up; the others are wear, or adjusters seldom moved. */
export const isUsualSetting = ({ key }: { readonly key: string }): boolean =>
  sheetGroupOf(key) === "car" || usual.includes(key.split(".").at(-1) ?? "");

/**
 * Everything that is set and measured, as a setting sheet has it: one row per characteristic, the club's own included;
 * what is usual first, then the rest in the dictionary's order. A group without rows is left out.
 */
export function sheetGroups(book: CharacteristicBook): readonly SheetGroup[] {
  const settings = book.all.filter(
    (one): one is QuantityCharacteristic => one.setting && one.kind === "quantity",
  );
  const place = ({ key }: QuantityCharacteristic) => {
    const at = usual.indexOf(key.split(".").at(-1) ?? "");
    return at < 0 ? usual.length : at;
  };
  settings.sort((a, b) => place(a) - place(b));
  return sheetGroupKeys
    .map((key) => ({
      key,
      label: groupLabels[key],
      rows: settings.filter((one) => sheetGroupOf(one.key) === key),
    }))
    .filter(({ rows }) => rows.length > 0);
}

/** The sides a row has cells for. */
export const sheetSides = (characteristic: { readonly sided: boolean }): readonly Side[] =>
  characteristic.sided ? ["left", "right"] : ["whole"];
