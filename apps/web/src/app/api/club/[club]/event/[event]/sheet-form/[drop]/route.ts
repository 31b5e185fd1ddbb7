import { logFault, refusalOf, requestOf, takeSheetForm } from "@trunnion/api";
import { isOwnForm } from "../../../../../../../../features/evidence/own-form";
import { dropNamed, goneText } from "../../../../../../../../features/sheet-form/drop";
import { withoutControls } from "../../../../../../../../lib/address";
import { sheetFormLookPath } from "../../../../../../../../lib/path";
import { service } from "../../../../../../../../lib/service";
import { redirectTo } from "../../../../../../../../lib/sign-in";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly event: string; readonly drop: string }>;
}

const plain = (what: string, remedy: string, status: number) =>
  new Response(`${what}\n${remedy}\n`, { status, headers: { "content-type": "text/plain; charset=utf-8" } });

/** Takes what was looked at, and shows it again with what became of it. */
export async function POST(request: Request, { params }: Segments): Promise<Response> {
  const { club, event: named, drop: name } = await params;
  const event = withoutControls(named);
  if (!isOwnForm(request)) return new Response("This form is not from here.\n", { status: 403 });
  try {
    const who = await requestOf(service(), request.headers);
    const drop = await dropNamed(name, { person: who.signedIn?.personId ?? "", club, event });
    if (drop?.form === undefined) return plain(goneText.what, goneText.remedy, 404);
    const told = await takeSheetForm(who, { club, event }, drop.form);
    const taken = told.filter(({ problem }) => problem === "").length;
    return redirectTo(sheetFormLookPath(club, event, name, String(taken)));
  } catch (error) {
    const refusal = refusalOf(error);
    if (refusal) return plain(refusal.text.what, refusal.text.remedy, refusal.status);
    logFault(error, "sheet-form");
    return plain("The sheet could not be taken.", "Nothing was kept. Try again.", 500);
  }
}
