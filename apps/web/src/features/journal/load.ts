import "server-only";
import type { createCaller } from "@trunnion/api";
import type { Asked } from "./asked";

type Api = ReturnType<typeof createCaller>;

/** Loads the page of the journal that was asked for; nothing but the choices where what was asked cannot be read. */
export async function loadJournal(api: Api, club: string, asked: Asked) {
  return api.journal.page({ club, ...narrowedBy(asked) });
}

/** The same of one car. */
export async function loadCarJournal(api: Api, club: string, car: string, asked: Asked) {
  return api.journal.ofCar({ club, ...narrowedBy(asked), car });
}

function narrowedBy({ query, errors }: Asked) {
  // What cannot be read shows nothing rather than everything: there is no such action.
  if (Object.keys(errors).length > 0) return { action: "unreadable" };
  const { before, check: _check, ...narrowed } = query;
  return { ...narrowed, ...(before === undefined ? {} : { before: Number(before) }) };
}
