import { logFault, readDroppedSheet, refusalOf, requestOf, requireMember } from "@trunnion/api";
import { refused } from "@trunnion/register";
import { isOwnForm } from "../../../../../../../features/evidence/own-form";
import { receiveFiles } from "../../../../../../../features/evidence/receive";
import { type Drop, putAside } from "../../../../../../../features/sheet-form/drop";
import { withoutControls } from "../../../../../../../lib/address";
import { sheetFormLookPath } from "../../../../../../../lib/path";
import { service } from "../../../../../../../lib/service";
import { redirectTo } from "../../../../../../../lib/sign-in";
import { store } from "../../../../../../../lib/store";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly event: string }>;
}

const fault = {
  what: "The file could not be read.",
  remedy: "Try again; if it stays, tell whoever runs this.",
};

/** Reads a dropped sheet and shows what is on it; what is no sheet of ours is refused on the same page. */
export async function POST(request: Request, { params }: Segments): Promise<Response> {
  const { club, event: named } = await params;
  const event = withoutControls(named);
  if (!isOwnForm(request)) return new Response("This form is not from here.\n", { status: 403 });
  const who = await requestOf(service(), request.headers);
  const person = who.signedIn?.personId ?? "";
  let found: Pick<Drop, "form" | "refusal">;
  try {
    await requireMember({ request: who, store: await store(), club });
    const form = await receiveFiles(request, async ({ files: [file] }) => {
      if (file === undefined) throw refused("FILE_EMPTY", { file: "The form" });
      return readDroppedSheet(file);
    });
    found = { form };
  } catch (error) {
    const refusal = refusalOf(error);
    if (!refusal) logFault(error, "sheet-form");
    if (refusal?.code === "NOT_SIGNED_IN" || refusal?.code === "NOT_A_MEMBER")
      return new Response(`${refusal.text.what}\n`, { status: refusal.status });
    found = { refusal: refusal?.text ?? fault };
  }
  return redirectTo(sheetFormLookPath(club, event, await putAside({ person, club, event, ...found })));
}
