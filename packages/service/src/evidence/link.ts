import type { EvidenceTarget } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import type { Context } from "../context";
import { linkColumn } from "./target";

type Lockable = { readonly id: string };

/** Holds a piece until the transaction ends, so that two changes of it come one after the other. */
export async function lockPiece(ctx: Context, { id }: Lockable): Promise<void> {
  await ctx.db.$queryRaw`
    SELECT 1 FROM evidence WHERE club_id = ${ctx.club.id}::uuid AND id = ${id}::uuid FOR UPDATE`;
}

export async function isLinked(ctx: Context, evidenceId: string, target: EvidenceTarget): Promise<boolean> {
  const where = { evidenceId, [linkColumn(target.kind)]: target.id };
  return (await ctx.db.evidenceLink.count({ where })) > 0;
}

export async function addLink(
  ctx: Context,
  {
    evidenceId,
    target,
    locus,
    characteristic = "",
  }: {
    readonly evidenceId: string;
    readonly target: EvidenceTarget;
    readonly locus: string;
    /** Key of the one characteristic that it shows; empty for all of the target. */
    readonly characteristic?: string;
  },
): Promise<string> {
  const id = uuid();
  await ctx.db.evidenceLink.create({
    data: {
      id,
      evidenceId,
      [linkColumn(target.kind)]: target.id,
      locus: locus === "" ? null : locus,
      characteristic: characteristic === "" ? null : characteristic,
    },
  });
  return id;
}
