import { logFault, refusalOf, takeImportFile } from "@trunnion/api";
import type { RefusalText } from "@trunnion/register";
import { importRequest } from "../../../../../features/import/asked";
import { outcomeCookie } from "../../../../../features/import/outcome";
import { receiveTable } from "../../../../../features/import/received";
import { importPath, importsPath } from "../../../../../lib/path";
import { redirectTo } from "../../../../../lib/sign-in";

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
}

const fault: RefusalText = {
  what: "The file could not be taken.",
  remedy: "Nothing was kept. Try again; if it stays, tell whoever runs this.",
};

/** Whether a page of ours sent the form: browsers with a session of ours send where from with every POST. */
function isOwnForm({ headers }: Request): boolean {
  const origin = headers.get("origin");
  if (origin === null) return true;
  return URL.canParse(origin) && new URL(origin).host === headers.get("host");
}

function whyNot(error: unknown): RefusalText {
  const refusal = refusalOf(error);
  if (refusal) return refusal.text;
  logFault(error, "import");
  return fault;
}

/** Takes a file to read in, and sends the browser on to settle its columns. */
export async function POST(request: Request, { params }: Segments): Promise<Response> {
  const { club } = await params;
  if (!isOwnForm(request)) return new Response("This form is not from here.\n", { status: 403 });
  try {
    const asked = await importRequest(request, club);
    const run = await receiveTable(request, (sent) => takeImportFile(asked, sent));
    return redirectTo(importPath(club, run));
  } catch (error) {
    const { id, cookie } = outcomeCookie(whyNot(error));
    return redirectTo(importsPath(club, { outcome: id }), [cookie]);
  }
}
