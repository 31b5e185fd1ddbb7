import { z } from "zod";
import type { Context } from "../context";

/** What a device says of itself when it is in touch. */
export const deviceInput = z.object({
  /** UUID it made for itself at this event. */
  id: z.uuid(),
  /** Findings and decisions it has made in all. */
  made: z.int().min(0).max(1_000_000),
  /** Findings, decisions and photos it holds beyond what it sends now. */
  held: z.int().min(0).max(1_000_000),
});
export type DeviceInput = z.infer<typeof deviceInput>;

export interface HeardOf {
  readonly eventId: string;
  readonly device: DeviceInput;
  /** The device's clock, ISO instant. */
  readonly deviceNow: string;
  /** Records of this exchange that were not taken, and so are with the device alone. */
  readonly refused: number;
}

/**
 * Notes down that a device was heard of and what it still held, so that one that is lost is missed by name, and with
 * how much. An id another event of the club has already is that device again, at this event from now on.
 */
export async function hearOf(ctx: Context, { eventId, device, deviceNow, refused }: HeardOf): Promise<void> {
  const facts = {
    eventId,
    personId: ctx.actor.personId,
    heardAt: ctx.now,
    made: device.made,
    held: device.held + refused,
    clockOff: Math.max(
      -2_000_000_000,
      Math.min(2_000_000_000, Math.round((Date.parse(deviceNow) - ctx.now.getTime()) / 1_000)),
    ),
  };
  await ctx.db.inspectionDevice.upsert({
    where: { clubId_id: { clubId: ctx.club.id, id: device.id } },
    create: { id: device.id, takenAt: ctx.now, ...facts },
    update: facts,
  });
}
