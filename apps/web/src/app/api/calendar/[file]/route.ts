import { calendarFeed, logFault, refusalOf } from "@trunnion/api";
import { fromSegment } from "../../../../lib/address";
import { ownOrigin } from "../../../../lib/public-page";
import { service } from "../../../../lib/service";

interface Segments {
  readonly params: Promise<{ readonly file: string }>;
}

const plain = { "content-type": "text/plain; charset=utf-8", "cache-control": "no-store" };

/** Longest address that is counted by: one of IPv6 has 45 characters. */
const LONGEST = 45;

/** Whoever reads, as far as a proxy in front tells; without one everybody is on this machine. */
const addressOf = (request: Request) =>
  request.headers.get("x-forwarded-for")?.split(",")[0]?.trim().slice(0, LONGEST) || "here";

/** What falls due, for whoever holds the link: `<token>.ics`. */
export async function GET(request: Request, { params }: Segments): Promise<Response> {
  const [, token = ""] = /^([\w-]+)\.ics$/.exec(fromSegment((await params).file)) ?? [];
  try {
    const text = await calendarFeed(service(), {
      token,
      address: addressOf(request),
      origin: await ownOrigin(),
    });
    return new Response(text, {
      headers: {
        "content-type": "text/calendar; charset=utf-8",
        "content-disposition": 'inline; filename="what-falls-due.ics"',
        "cache-control": "private, max-age=3600",
        "x-robots-tag": "noindex",
        "referrer-policy": "no-referrer",
      },
    });
  } catch (error) {
    const refusal = refusalOf(error);
    if (!refusal) {
      // The address is the secret: it stays out of the log.
      logFault(error, "calendar link");
      return new Response("The calendar could not be made.\n", { status: 500, headers: plain });
    }
    const seconds =
      refusal.code === "TOO_MANY_TRIES" ? (refusal.details as { seconds: number }).seconds : undefined;
    const { what, remedy } = refusal.text;
    return new Response(`${what}\n${remedy}\n`, {
      status: refusal.status,
      headers: { ...plain, ...(seconds === undefined ? {} : { "retry-after": String(seconds) }) },
    });
  }
}
