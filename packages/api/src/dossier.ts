import { refused } from "@trunnion/register";
import { type DossierInput, dossierOf, openMember } from "@trunnion/service";
import { drawDossier } from "@trunnion/sheets";
import type { Request } from "./request";

export interface DossierPdfInput extends DossierInput {
  readonly club: string;
  readonly paper: "A4" | "Letter";
}

/**
 * One car's dossier as PDF.
 *
 * @throws Refusal NOT_SIGNED_IN, and those of `openMember` and `dossierOf`
 */
export async function dossierPdf(request: Request, input: DossierPdfInput): Promise<Uint8Array> {
  if (!request.signedIn) throw refused("NOT_SIGNED_IN", {});
  const { club, paper, ...wanted } = input;
  const model = await openMember(request.database, request.signedIn, club, (ctx) => dossierOf(ctx, wanted));
  return drawDossier(model, { paper });
}
