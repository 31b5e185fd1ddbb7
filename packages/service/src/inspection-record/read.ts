import type { FindingResult, Prisma } from "@trunnion/db";
import type { Context } from "../context";
import { dayOf } from "../day";
import type { ValueColumns } from "../value-columns";
import { type EntryReadings, saidOf } from "./policy";

const valueFields = { valueKind: true, entered: true, number: true, resolution: true, text: true } as const;

const findingFields = {
  clientKey: true,
  replaces: true,
  checkCode: true,
  result: true,
  foundAt: true,
  readings: {
    select: { characteristic: true, side: true, instrumentId: true, ...valueFields },
    orderBy: { id: "asc" },
  },
} satisfies Prisma.FindingSelect;

/** A reading at a check, as it is kept. */
export interface StoredReading extends ValueColumns {
  readonly characteristic: string;
  readonly side: "whole" | "left" | "right";
  readonly instrumentId: string | null;
}

/** A finding with its readings, as it is kept. */
export interface StoredFinding {
  readonly clientKey: string;
  readonly replaces: readonly string[];
  readonly checkCode: string;
  readonly result: FindingResult;
  readonly foundAt: Date;
  readonly readings: readonly StoredReading[];
}

/** Every finding of one entry. */
export async function findingsOfEntry({ db }: Context, entryId: string): Promise<readonly StoredFinding[]> {
  return db.finding.findMany({
    where: { entryId },
    select: findingFields,
    orderBy: [{ foundAt: "asc" }, { id: "asc" }],
  });
}

/** The sheet that an entry's readings stand on now, and what it says; undefined for none. */
export async function standingSheet(
  { db }: Context,
  entryId: string,
): Promise<{ readonly id: string; readonly carId: string; readonly said: string } | undefined> {
  const row = await db.settingSheet.findFirst({
    where: { entryId, supersededAt: null },
    select: {
      id: true,
      carId: true,
      on: true,
      readings: {
        select: { characteristic: true, side: true, repeat: true, instrumentId: true, ...valueFields },
        orderBy: { id: "asc" },
      },
    },
  });
  if (!row) return undefined;
  const readings: EntryReadings = { on: dayOf(row.on), readings: row.readings };
  return { id: row.id, carId: row.carId, said: saidOf(readings) };
}
