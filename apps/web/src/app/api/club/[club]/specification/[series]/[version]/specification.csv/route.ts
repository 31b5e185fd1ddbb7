import { createCaller, logFault, refusalOf, requestOf } from "@trunnion/api";
import { isUnreadable, withoutControls } from "../../../../../../../../lib/address";
import { service } from "../../../../../../../../lib/service";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly series: string; readonly version: string }>;
}

const fault = {
  what: "The table could not be made.",
  remedy: "Try again; if it stays, tell whoever runs this.",
};
const noVersion = { what: "There is no such version.", remedy: "Take the link from the specification's page." };

/** Plain text, since a browser shows it in place of the file: what was wrong, then what to do. */
function told({ what, remedy }: { readonly what: string; readonly remedy: string }, status: number): Response {
  const headers = { "content-type": "text/plain; charset=utf-8", "cache-control": "no-store" };
  return new Response(`${what}\n${remedy}\n`, { status, headers });
}

/** One version of a specification as a table that can be read in again. */
export async function GET(request: Request, { params }: Segments): Promise<Response> {
  const { club, series, version } = await params;
  try {
    const caller = createCaller(await requestOf(service(), request.headers));
    const { file, text } = await caller.specification.csv({
      club: withoutControls(club),
      series: withoutControls(series),
      version: Number(version),
    });
    return new Response(text, {
      headers: {
        "content-type": "text/csv; charset=utf-8",
        "content-disposition": `attachment; filename="${file.replace(/[^\w.-]/g, "_")}"`,
        "cache-control": "private, no-store",
      },
    });
  } catch (error) {
    const refusal = refusalOf(error);
    if (refusal) return told(refusal.text, refusal.status);
    if (isUnreadable(error)) return told(noVersion, 404);
    logFault(error, "specification.csv");
    return told(fault, 500);
  }
}
