"use server";
import { cookies } from "next/headers";
import { redirect } from "next/navigation";
import { sideCookie } from "./side-words";

const YEAR = 365 * 86_400;

/** Keeps the words for the sides in a cookie, and goes back to the page of the club it was asked from. */
export async function chooseSides(here: string, data: FormData): Promise<void> {
  const words = data.get("sides");
  if (words === "leftRight" || words === "nearOff") {
    (await cookies()).set(sideCookie, words, { path: "/", maxAge: YEAR, sameSite: "lax", httpOnly: true });
  }
  redirect(here.startsWith("/club/") ? here : "/");
}
