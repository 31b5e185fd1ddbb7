import type { Context } from "../context";
import { memberNames } from "../member-name";

/** A phone or tablet that took an event along, as the server last heard of it. */
export interface DeviceLine {
  readonly id: string;
  /** Who was signed in on it; empty where that is not known. */
  readonly by: string;
  /** ISO instants by the server's clock. */
  readonly takenAt: string;
  readonly heardAt: string;
  /** Records it had made, by its own count. */
  readonly made: number;
  /** Records and photos it still held then. */
  readonly held: number;
  /** How far its clock was ahead, seconds. */
  readonly clockOff: number;
}

/** Most devices an event tells of. */
const DEVICES = 200;

/** The devices that took an event along, those that held something first. */
export async function devicesOf(ctx: Context, eventId: string): Promise<readonly DeviceLine[]> {
  const rows = await ctx.db.inspectionDevice.findMany({
    where: { eventId },
    orderBy: [{ held: "desc" }, { heardAt: "asc" }, { id: "asc" }],
    take: DEVICES,
  });
  const names = await memberNames(
    ctx,
    rows.map(({ personId }) => personId),
  );
  return rows.map(({ id, personId, takenAt, heardAt, made, held, clockOff }) => ({
    id,
    by: names.get(personId ?? "") ?? "",
    takenAt: takenAt.toISOString(),
    heardAt: heardAt.toISOString(),
    made,
    held,
    clockOff,
  }));
}
