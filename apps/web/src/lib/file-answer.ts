import "server-only";
import { logFault, refusalOf } from "@trunnion/api";
import type { RefusalText } from "@trunnion/register";

const fault: RefusalText = {
  what: "The file could not be made.",
  remedy: "Try again; if it stays, tell whoever runs this.",
};

/** Plain text, since a browser shows it in place of the file: what was wrong, then what to do. */
export function told({ what, remedy }: RefusalText, status: number): Response {
  const headers = { "content-type": "text/plain; charset=utf-8", "cache-control": "no-store" };
  return new Response(`${what}\n${remedy}\n`, { status, headers });
}

/**
 * Answers with a file, or in plain words why not: a refusal is told as it is, a bug goes to the log.
 *
 * @param place address of it, for the log
 */
export async function answeredPlainly(place: string, work: () => Promise<Response>): Promise<Response> {
  try {
    return await work();
  } catch (error) {
    const refusal = refusalOf(error);
    if (refusal) return told(refusal.text, refusal.status);
    logFault(error, place);
    return told(fault, 500);
  }
}

/**
 * Headers of a file made for whoever asks.
 *
 * @param name it is kept under; anything but letters, figures, dot, dash becomes an underscore
 * @param inline shown in the browser rather than kept
 */
export const fileHeaders = (type: string, name: string, inline = false) => ({
  "content-type": type,
  "content-disposition": `${inline ? "inline" : "attachment"}; filename="${name.replace(/[^\w.-]/g, "_")}"`,
  "cache-control": "private, no-store",
});

export interface FileAnswer {
  /** Media type. */
  readonly type: string;
  /** Name it is kept under, as {@link fileHeaders} has it. */
  readonly name: string;
  /** Shown in the browser rather than kept. */
  readonly inline?: boolean;
  /** Address of it, for the log. */
  readonly place: string;
  readonly make: () => Promise<Uint8Array>;
}

/** Answers with a file made for whoever asks, or in plain words why not. */
export function fileAnswer({ type, name, inline = false, place, make }: FileAnswer): Promise<Response> {
  return answeredPlainly(place, async () => {
    const bytes = await make();
    return new Response(new Uint8Array(bytes), { headers: fileHeaders(type, name, inline) });
  });
}
