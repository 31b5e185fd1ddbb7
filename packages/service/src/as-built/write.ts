import {
  type Characteristic,
  Problems,
  parseValue,
  type Side,
  sayUnusual,
  type Value,
} from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import { editCar, openCar, type WantedField } from "../car";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { carEditFields, lineInput, provenanceFields } from "../entry-input";
import type { CarRecord } from "../record";
import { provenanceOf } from "../source";
import { valueColumns } from "../value-columns";

/** What left the works, in the trade's notation; empty for what is not known after all. */
export const setAsBuiltInput = z.object({
  ...carEditFields,
  characteristic: lineInput(80).min(1),
  whole: lineInput(2_000).default(""),
  left: lineInput(2_000).default(""),
  right: lineInput(2_000).default(""),
  ...provenanceFields,
});
export type SetAsBuiltInput = z.infer<typeof setAsBuiltInput>;

const labels: Readonly<Record<Side, string>> = { whole: "As built", left: "Left", right: "Right" };

async function standing(ctx: Context, record: CarRecord, characteristic: string) {
  return ctx.db.asBuiltValue.findMany({
    where: { carId: record.id, characteristic, supersededAt: null },
    include: { source: { select: { title: true } } },
    orderBy: { id: "asc" },
  });
}
type Row = Awaited<ReturnType<typeof standing>>[number];

interface SideEdit {
  /** Of the value that takes the place of what stands. */
  readonly id: string;
  readonly side: Side;
  readonly row: Row | undefined;
  readonly entered: string;
  readonly value: Value | undefined;
}

function readSides(
  characteristic: Characteristic,
  input: SetAsBuiltInput,
  { rows, problems }: { readonly rows: readonly Row[]; readonly problems: Problems },
): readonly SideEdit[] {
  const sides: readonly Side[] = characteristic.sided ? ["left", "right"] : ["whole"];
  return sides.map((side) => {
    const entered = input[side];
    const row = rows.findLast((one) => one.side === side);
    const parsed = entered === "" ? undefined : parseValue(characteristic, entered);
    if (parsed && !parsed.ok) problems.add(side, `${parsed.problem.message}.`);
    return { id: uuid(), side, row, entered, value: parsed?.ok ? parsed.value : undefined };
  });
}

/**
 * Says what one characteristic was when the car left the works, on the whole car or side by side. The value before is
 * superseded, never overwritten; an empty one only supersedes. Tells the record's version.
 *
 * @throws Refusal ROLE_NEEDED, CAR_NOT_FOUND, CAR_MERGED, CHANGED_MEANWHILE; Invalid for a characteristic there is not,
 *   or a value that cannot be read
 */
export async function setAsBuilt(ctx: Context, input: SetAsBuiltInput): Promise<number> {
  const record = await openCar(ctx, input.car);
  const book = await bookOf(ctx);
  const characteristic = book.find(input.characteristic);
  const problems = new Problems();
  if (!characteristic)
    problems.add("characteristic", `There is no characteristic "${input.characteristic}".`);
  problems.throwIfAny();
  const rows = await standing(ctx, record, input.characteristic);
  const sides = characteristic ? readSides(characteristic, input, { rows, problems }) : [];
  const provenance = await provenanceOf(ctx, input, problems);
  problems.throwIfAny();
  const known = { source: provenance.title, locus: input.locus, trust: input.trust };
  const had = (row: Row | undefined) => ({
    source: row?.source?.title ?? "",
    locus: row?.locus ?? "",
    trust: row?.trust ?? "unknown",
  });
  const moved = sides.filter(({ row, entered }) => {
    if ((row?.entered ?? "") !== entered) return true;
    return row !== undefined && JSON.stringify(had(row)) !== JSON.stringify(known);
  });
  const [first] = rows;
  const fields: readonly WantedField[] = [
    ...sides.map(({ side, row, entered }) => ({
      field: side,
      label: labels[side],
      now: row?.entered ?? "",
      wanted: entered,
    })),
    // One line of where it comes from for both sides, as the form has it.
    ...(["source", "locus", "trust"] as const).map((part) => ({
      field: part,
      label: { source: "Source", locus: "Page or place", trust: "Trust" }[part],
      now: had(first)[part],
      wanted: moved.length === 0 ? had(first)[part] : known[part],
    })),
  ];
  return editCar(ctx, {
    record,
    form: input,
    line: { action: "asBuilt.set", noun: "asBuiltValue", nounId: moved[0]?.id ?? record.id },
    fields,
    doubts: characteristic
      ? moved.map(({ side, value }) => (value ? sayUnusual(characteristic, side, value) : undefined))
      : [],
    always: moved.length > 0,
    also: {
      before: { characteristic: input.characteristic },
      after: { characteristic: input.characteristic },
    },
    write: async () => {
      const columns = await provenance.columns();
      for (const { id, side, value } of moved) {
        await ctx.db.asBuiltValue.updateMany({
          where: { carId: record.id, characteristic: input.characteristic, side, supersededAt: null },
          data: { supersededAt: ctx.now },
        });
        if (!value) continue;
        const place = { id, carId: record.id, characteristic: input.characteristic, side };
        await ctx.db.asBuiltValue.create({ data: { ...place, ...valueColumns(value), ...columns } });
      }
    },
  });
}
