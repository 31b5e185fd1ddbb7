import "server-only";
import { TRPCError } from "@trpc/server";

/** What no name has in it, and the database takes in no text. */
const control = /\p{Cc}/gu;

/**
 * A part of the address as it was meant, from a segment as the framework gives it: still encoded.
 * What cannot be decoded stays as it is, and so names nothing.
 */
export function fromSegment(segment: string): string {
  try {
    return withoutControls(decodeURIComponent(segment));
  } catch {
    return segment;
  }
}

export function withoutControls(text: string): string {
  return text.replace(control, "");
}

/** Whether a procedure could not even read what it was asked: too long for any name, say. */
export function isUnreadable(error: unknown): boolean {
  return error instanceof TRPCError && error.code === "BAD_REQUEST";
}
