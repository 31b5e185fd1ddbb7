import { importProblemsCsv, logFault, refusalOf } from "@trunnion/api";
import { importRequest } from "../../../../../../../features/import/asked";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly run: string }>;
}

/** The rows of an import that were left out, and why, as CSV. */
export async function GET(request: Request, { params }: Segments): Promise<Response> {
  const { club, run } = await params;
  try {
    const csv = await importProblemsCsv(await importRequest(request, club), run);
    return new Response(csv, {
      headers: {
        "content-type": "text/csv; charset=utf-8",
        "content-disposition": 'attachment; filename="rows-left-out.csv"',
        "cache-control": "private, no-store",
      },
    });
  } catch (error) {
    const refusal = refusalOf(error);
    const headers = { "content-type": "text/plain; charset=utf-8", "cache-control": "no-store" };
    if (refusal) {
      const { what, remedy } = refusal.text;
      return new Response(`${what}\n${remedy}\n`, { status: refusal.status, headers });
    }
    logFault(error, "problems.csv");
    return new Response("The list could not be made. Try again.\n", { status: 500, headers });
  }
}
