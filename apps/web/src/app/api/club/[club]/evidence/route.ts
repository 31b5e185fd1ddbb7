import { logFault, problemsOf, refusalOf, requestOf, requireMember, takeEvidence } from "@trunnion/api";
import type { RefusalText } from "@trunnion/register";
import { outcomeCookie } from "../../../../../features/evidence/outcome";
import { isOwnForm } from "../../../../../features/evidence/own-form";
import { receiveFiles } from "../../../../../features/evidence/receive";
import { clubPath } from "../../../../../lib/path";
import { service } from "../../../../../lib/service";
import { localPath, redirectTo } from "../../../../../lib/sign-in";
import { store } from "../../../../../lib/store";

interface Segments {
  readonly params: Promise<{ readonly club: string }>;
}

type Fields = Readonly<Record<string, string>>;

const fault = {
  what: "The files could not be taken.",
  remedy: "Nothing was kept. Try again; if it stays, tell whoever runs this.",
};

/** Why files were not taken, in words, with the status of the answer. */
function whyNot(error: unknown): { readonly text: RefusalText; readonly status: number } {
  const refusal = refusalOf(error);
  if (refusal) return refusal;
  const wrong = Object.values(problemsOf(error) ?? {}).flat();
  if (wrong.length > 0) {
    return {
      text: { what: wrong.join(" "), remedy: "Correct it and send again. Nothing was kept." },
      status: 400,
    };
  }
  logFault(error, "evidence");
  return { text: fault, status: 500 };
}

function withOutcome(back: string, name: string, value: string): string {
  const [path = "", anchor] = back.split("#");
  return `${path}${path.includes("?") ? "&" : "?"}${name}=${value}${anchor === undefined ? "" : `#${anchor}`}`;
}

/** Takes photos and documents: answers a script with JSON, a plain form with the page it came from. */
export async function POST(request: Request, { params }: Segments): Promise<Response> {
  const { club } = await params;
  const wantsJson = request.headers.get("accept") === "application/json";
  let fields: Fields = {};
  try {
    if (!isOwnForm(request)) return new Response("This form is not from here.\n", { status: 403 });
    const asked = { request: await requestOf(service(), request.headers), store: await store(), club };
    await requireMember(asked);
    const added = await receiveFiles(request, async (received) => {
      fields = received.fields;
      const { for: target = "", caption = "", taken = "", locus = "", about = "", keepLocation } = fields;
      const said = { for: target, caption, taken, locus, about, keepLocation: keepLocation === "yes" };
      return takeEvidence(asked, said, received.files);
    });
    if (wantsJson) return Response.json({ added }, { headers: { "cache-control": "no-store" } });
    return redirectTo(withOutcome(backOf(fields, club), "added", String(added.length)));
  } catch (error) {
    const { text, status } = whyNot(error);
    if (wantsJson)
      return Response.json({ refusal: text }, { status, headers: { "cache-control": "no-store" } });
    const { caption = "", taken = "", locus = "", keepLocation } = fields;
    const typed = { caption, taken, locus, keepLocation: keepLocation === "yes" };
    const { id, cookie } = outcomeCookie({ text, typed });
    return redirectTo(withOutcome(backOf(fields, club), "outcome", id), [cookie]);
  }
}

/** The page the form stood on; where it was too large to be read to its end, the club's. */
function backOf({ back = "" }: Fields, club: string): string {
  return back === "" ? clubPath(club) : localPath(back);
}
