import type { Prisma } from "./generated/prisma/client";

declare const minted: unique symbol;

type OutsideClubs = "person" | "session" | "credential" | "verification";

/** The tables of one club, inside one transaction. Only the gate mints it. */
export type ClubTables = Omit<Prisma.TransactionClient, OutsideClubs> & { readonly [minted]: "club" };
