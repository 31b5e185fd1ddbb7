import { refused } from "@trunnion/register";
import { openMember, type SetupPlanInput, setupPlanModel } from "@trunnion/service";
import { drawSetupPlan } from "@trunnion/sheets";
import type { Request } from "./request";

export interface SetupPlanPdfInput extends SetupPlanInput {
  readonly club: string;
  readonly paper: "A4" | "Letter";
}

/**
 * A set-up plan as one page for the garage.
 *
 * @throws Refusal NOT_SIGNED_IN, and those of `openMember` and `setupPlanModel`
 */
export async function setupPlanPdf(request: Request, input: SetupPlanPdfInput): Promise<Uint8Array> {
  if (!request.signedIn) throw refused("NOT_SIGNED_IN", {});
  const { club, paper, ...wanted } = input;
  const model = await openMember(request.database, request.signedIn, club, (ctx) =>
    setupPlanModel(ctx, wanted),
  );
  return drawSetupPlan(model, { paper });
}
