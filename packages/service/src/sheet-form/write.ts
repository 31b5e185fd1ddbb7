import type { Context } from "../context";
import { type TakenRecord, takeInspection } from "../inspection";
import { type FilledSheetsInput, lookAtForm } from "./read";

/**
 * Takes what a filled-in file holds as findings and decisions. The same words on the same sheet are taken once, however
 * often the file comes; what they take the place of stays.
 *
 * @returns what became of each finding and decision that was new
 * @throws Refusal those of `lookAtForm` and `takeInspection`
 */
export async function takeForm(ctx: Context, input: FilledSheetsInput): Promise<readonly TakenRecord[]> {
  const looks = await lookAtForm(ctx, input);
  const at = ctx.now.toISOString();
  const findings = looks.flatMap(({ entryId, findings: all }) =>
    all
      .filter(({ state }) => state !== "known")
      .map(({ key, check, result, note, readings, replaces }) => ({
        key,
        entryId,
        check,
        result,
        note,
        readings: [...readings],
        replaces: [...replaces],
        at,
      })),
  );
  const decisions = looks.flatMap(({ entryId, decision }) => {
    if (decision === undefined || decision.state === "known") return [];
    const { key, outcome, note, signedBy, replaces } = decision;
    return [{ key, entryId, outcome, note, signedBy, signature: "", replaces: [...replaces], at }];
  });
  return takeInspection(ctx, { event: input.event, deviceNow: at, findings, decisions });
}
