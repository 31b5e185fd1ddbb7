import type { Prisma } from "@trunnion/db";
import { stateKey } from "@trunnion/register";
import type { Assessment } from "../assessment";
import { dayColumn } from "../day";
import { valueColumns } from "../value-columns";

type CurrentRow = Omit<Prisma.CurrentValueCreateManyInput, "clubId">;

/** The rows of current values that an assessment amounts to. */
export function currentRows({ record, state, deviations }: Assessment): readonly CurrentRow[] {
  const verdicts = new Map(
    deviations.map((deviation) => [stateKey(deviation.characteristic, deviation.side), deviation.verdict]),
  );
  return [...state.entries()].map(([key, { characteristic, side, value, origin, originId, since }]) => ({
    carId: record.id,
    characteristic,
    side,
    ...valueColumns(value),
    origin,
    originId,
    since: since === undefined ? null : dayColumn(since),
    verdict: verdicts.get(key) ?? "notRecorded",
  }));
}
