import { logFault, refusalOf, requestOf, sheetsPdf } from "@trunnion/api";
import { withoutControls } from "../../../../../../../lib/address";
import { service } from "../../../../../../../lib/service";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly event: string }>;
}

const fault = {
  what: "The sheets could not be made.",
  remedy: "Try again; if it stays, tell whoever runs this.",
};

/** Plain text, since a browser shows it in place of the file: what was wrong, then what to do. */
function told(
  { what, remedy }: { readonly what: string; readonly remedy: string },
  status: number,
): Response {
  const headers = { "content-type": "text/plain; charset=utf-8", "cache-control": "no-store" };
  return new Response(`${what}\n${remedy}\n`, { status, headers });
}

/** The pre-event sheets of an event, or of one running number, as PDF. */
export async function GET(request: Request, { params }: Segments): Promise<Response> {
  const { club, event: asked } = await params;
  const event = withoutControls(asked);
  const query = new URL(request.url).searchParams;
  const number = query.get("number");
  const paper = query.get("paper") === "Letter" ? "Letter" : "A4";
  try {
    const who = await requestOf(service(), request.headers);
    const bytes = await sheetsPdf(who, { club, event, paper, ...(number === null ? {} : { number }) });
    const name = number === null ? `${event}.pdf` : `${event}-${number}.pdf`;
    return new Response(new Uint8Array(bytes), {
      headers: {
        "content-type": "application/pdf",
        "content-disposition": `inline; filename="${name.replace(/[^\w.-]/g, "_")}"`,
        "cache-control": "private, no-store",
      },
    });
  } catch (error) {
    const refusal = refusalOf(error);
    if (refusal) return told(refusal.text, refusal.status);
    logFault(error, "sheets.pdf");
    return told(fault, 500);
  }
}
