import { importProblemsCsv } from "@trunnion/api";
import { importRequest } from "../../../../../../../features/import/asked";
import { answeredPlainly, fileHeaders } from "../../../../../../../lib/file-answer";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly run: string }>;
}

/** The rows of an import that were left out, and why, as CSV. */
export async function GET(request: Request, { params }: Segments): Promise<Response> {
  const { club, run } = await params;
  return answeredPlainly("problems.csv", async () => {
    const csv = await importProblemsCsv(await importRequest(request, club), run);
    return new Response(csv, { headers: fileHeaders("text/csv; charset=utf-8", "rows-left-out.csv") });
  });
}
