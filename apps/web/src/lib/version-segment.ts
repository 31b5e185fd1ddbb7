import "server-only";
import { notFound } from "next/navigation";

/** A version's number out of an address; an address that has none there is no page. */
export function versionSegment(segment: string): number {
  if (!/^[1-9]\d{0,5}$/.test(segment)) notFound();
  return Number(segment);
}
