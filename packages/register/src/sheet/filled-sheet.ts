import type { SheetModel } from "./sheet-model";

/** Fields of one sheet as a filled-in file has them: name below the car's → what stands in it. */
export type SheetFields = Readonly<Record<string, string>>;

/** Places for numbered remarks, more than a sheet has. */
const remarkPlaces = Array.from({ length: 40 }, (_, at) => at + 1);

interface Remark {
  /** Number of the check as written; empty where none is. */
  readonly number: string;
  readonly text: string;
}

function remarksOf(fields: SheetFields): readonly Remark[] {
  return remarkPlaces.flatMap((at) => {
    const text = fields[`remark/${at}/text`]?.trim() ?? "";
    const number = fields[`remark/${at}/check`]?.trim().replace(/^no\.? *|\.$/gi, "") ?? "";
    return text === "" && number === "" ? [] : [{ number, text }];
  });
}

/** Checks stand numbered on the sheet, from one, in the order of the walk. */
const numbersOf = ({ stations }: Pick<SheetModel, "stations">): ReadonlyMap<string, string> =>
  new Map(stations.flatMap(({ checks }) => checks).map(({ id }, at) => [id, String(at + 1)]));

/** What is written at a check, and in the notes under its number; empty where nothing is. */
export function noteAt(model: SheetModel, fields: SheetFields, id: string): string {
  const number = numbersOf(model).get(id);
  const remarks = remarksOf(fields).filter((remark) => remark.number === number);
  return [fields[`check/${id}/note`]?.trim() ?? "", ...remarks.map(({ text }) => text)]
    .filter((part) => part !== "")
    .join("\n");
}

/** Remarks on the car: those without a number, and those whose number no check has, which is told. */
export function remarksOnCar(model: SheetModel, fields: SheetFields): readonly string[] {
  const known = new Set(numbersOf(model).values());
  return remarksOf(fields)
    .filter(({ number }) => !known.has(number))
    .map(({ number, text }) => (number === "" ? text : `${number}: ${text}`));
}

/** Every field the printed sheet had, so that another is known to have been put in. */
export function fieldsOnSheet({ stations, settings }: SheetModel): ReadonlySet<string> {
  const remarks = remarkPlaces.flatMap((at) => [`remark/${at}/check`, `remark/${at}/text`]);
  const fixed = [
    ...remarks,
    "decision",
    "again/at",
    "again/result",
    "again/by",
    "notes",
    "scrutineer",
    "driver",
    "time",
  ];
  const checks = stations.flatMap(({ checks: all }) => all);
  return new Set([
    ...fixed,
    ...checks.flatMap(({ id, readings }) => [
      `check/${id}/result`,
      `check/${id}/note`,
      ...readings.map(({ key }) => `check/${id}/reading/${key}`),
    ]),
    ...settings.flatMap(({ key }) =>
      ["left", "right", "whole"].map((side) => `setting/${key.replaceAll(".", "-")}/${side}`),
    ),
  ]);
}
