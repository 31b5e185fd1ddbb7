import "server-only";
import { cookies } from "next/headers";
import { sideWords } from "../../lib/assembly";

export interface SideWords {
  readonly left: string;
  readonly right: string;
}

/** Name of the cookie that keeps which words a reader wants for the sides. */
export const sideCookie = "trunnion-sides";

/** Words for the sides: the reader's own choice, else the club's. */
export async function readerSideWords(club: keyof typeof sideWords): Promise<SideWords> {
  const kept = (await cookies()).get(sideCookie)?.value;
  return kept === "leftRight" || kept === "nearOff" ? sideWords[kept] : sideWords[club];
}
