import type { Prisma } from "./generated/prisma/client";
import type { RawStatements } from "./raw";

declare const minted: unique symbol;

type OutsideClubs = "person" | "session" | "credential" | "verification";

/** What a transaction offers: tables by the object mapper, statements in SQL past it, on the same connection. */
export type Tables = Omit<Prisma.TransactionClient, keyof RawStatements> & RawStatements;

/** The tables of one club, inside one transaction. Only the gate mints it. */
export type ClubTables = Omit<Tables, OutsideClubs> & { readonly [minted]: "club" };
