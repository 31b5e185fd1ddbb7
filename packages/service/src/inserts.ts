import { insertTables, type Prisma } from "@trunnion/db";
import type { Context } from "./context";

type Row<T> = Omit<T, "clubId" | "recordedAt">;

/** Rows to insert many cars with, by table; written in the order that foreign keys want. */
export class Inserts {
  readonly car: Row<Prisma.CarCreateManyInput>[] = [];
  readonly carIdentity: Row<Prisma.CarIdentityCreateManyInput>[] = [];
  readonly carStatusSpan: Row<Prisma.CarStatusSpanCreateManyInput>[] = [];
  readonly carOption: Row<Prisma.CarOptionCreateManyInput>[] = [];
  readonly keeper: Row<Prisma.KeeperCreateManyInput>[] = [];
  readonly keepership: Row<Prisma.KeepershipCreateManyInput>[] = [];
  readonly asBuiltValue: Row<Prisma.AsBuiltValueCreateManyInput>[] = [];
  readonly submission: Row<Prisma.SubmissionCreateManyInput>[] = [];
  readonly modification: Row<Prisma.ModificationCreateManyInput>[] = [];
  readonly modificationChange: Row<Prisma.ModificationChangeCreateManyInput>[] = [];
  readonly settingSheet: Row<Prisma.SettingSheetCreateManyInput>[] = [];
  readonly reading: Row<Prisma.ReadingCreateManyInput>[] = [];

  /** Writes everything in the context's transaction. */
  async write({ db }: Context): Promise<void> {
    const tables: readonly (keyof Omit<Inserts, "write">)[] = [
      "car",
      "carIdentity",
      "carStatusSpan",
      "carOption",
      "keeper",
      "keepership",
      "asBuiltValue",
      "submission",
      "modification",
      "modificationChange",
      "settingSheet",
      "reading",
    ];
    await insertTables(
      db,
      tables.map((table) => [table, this[table]]),
    );
  }
}
