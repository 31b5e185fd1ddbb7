import { refused } from "@trunnion/register";
import { type DossierInput, dossierOf, dossierPictures, openMember, type Store } from "@trunnion/service";
import { drawDossier } from "@trunnion/sheets";
import type { Request } from "./request";

export interface DossierPdfInput extends DossierInput {
  readonly club: string;
  readonly paper: "A4" | "Letter";
}

/**
 * One car's dossier as PDF, with small pictures of its evidence.
 *
 * @throws Refusal NOT_SIGNED_IN, and those of `openMember` and `dossierOf`
 */
export async function dossierPdf(
  request: Request,
  store: Store,
  input: DossierPdfInput,
): Promise<Uint8Array> {
  if (!request.signedIn) throw refused("NOT_SIGNED_IN", {});
  const { club, paper, ...wanted } = input;
  const { model, files, clubId } = await openMember(
    request.database,
    request.signedIn,
    club,
    async (ctx) => ({
      ...(await dossierOf(ctx, wanted)),
      clubId: ctx.club.id,
    }),
  );
  // Outside of the transaction: making a picture small takes longer than one should stay open.
  const pictures = await dossierPictures(store.club(clubId), files);
  return drawDossier(model, { paper, pictures });
}
