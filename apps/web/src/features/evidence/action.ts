"use server";
import type { RouterInputs } from "@trunnion/api";
import { takeForm } from "../../lib/form";
import { enteredOf } from "../../lib/form-entry";
import type { FormState } from "../../lib/form-state";
import { evidencePath } from "../../lib/path";
import { api } from "../../lib/service";

/** The club's short name and the piece's id. */
export interface PieceAddress {
  readonly club: string;
  readonly evidence: string;
}

type Inputs = RouterInputs["evidence"];
type Entered<K extends keyof Inputs> = Omit<Inputs[K], "club" | "evidence">;

interface Sent extends PieceAddress {
  readonly before: FormState;
  readonly data: FormData;
}

function take(
  { club, evidence, before, data }: Sent,
  work: (procedures: Awaited<ReturnType<typeof api>>["evidence"]) => Promise<void>,
): Promise<FormState> {
  const to = evidencePath(club, evidence);
  return takeForm({
    before,
    data,
    place: to,
    work: async () => {
      await work((await api()).evidence);
      return { to };
    },
  });
}

/** Says what a piece shows and when it was taken. */
export async function correctPiece(at: PieceAddress, before: FormState, data: FormData): Promise<FormState> {
  return take({ ...at, before, data }, (evidence) =>
    evidence.correct({ ...enteredOf<Entered<"correct">>(data), ...at }),
  );
}

/** Turns a picture. */
export async function turnPiece(at: PieceAddress, before: FormState, data: FormData): Promise<FormState> {
  const quarterTurns = Number(data.get("quarterTurns"));
  return take({ ...at, before, data }, (evidence) => evidence.turn({ ...at, quarterTurns }));
}

/** Links a piece to one more thing that it supports. */
export async function linkPiece(at: PieceAddress, before: FormState, data: FormData): Promise<FormState> {
  return take({ ...at, before, data }, (evidence) =>
    evidence.link({ ...enteredOf<Entered<"link">>(data), ...at }),
  );
}

/** Takes one link away. */
export async function unlinkPiece(at: PieceAddress, before: FormState, data: FormData): Promise<FormState> {
  return take({ ...at, before, data }, (evidence) =>
    evidence.unlink({ ...enteredOf<Entered<"unlink">>(data), ...at }),
  );
}

/** Withdraws a piece. */
export async function withdrawPiece(at: PieceAddress, before: FormState, data: FormData): Promise<FormState> {
  return take({ ...at, before, data }, (evidence) =>
    evidence.withdraw({ ...enteredOf<Entered<"withdraw">>(data), ...at }),
  );
}

/** Brings a withdrawn piece back. */
export async function restorePiece(at: PieceAddress, before: FormState, data: FormData): Promise<FormState> {
  return take({ ...at, before, data }, (evidence) => evidence.restore(at));
}
