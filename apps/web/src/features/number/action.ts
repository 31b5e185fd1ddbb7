"use server";
import type { RouterInputs } from "@trunnion/api";
import { takeForm } from "../../lib/form";
import { enteredOf } from "../../lib/form-entry";
import type { FormState } from "../../lib/form-state";
import { carPath, claimPath, mergePath, numbersPath } from "../../lib/path";
import { api } from "../../lib/service";

type Inputs = RouterInputs["number"];

/** Takes the form that leaves a finding as it is. */
export async function setAside(
  club: string,
  finding: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: numbersPath(club),
    work: async () => {
      const { reason = "" } = enteredOf<{ readonly reason?: string }>(data);
      await (await api()).number.setAside({ club, finding, reason });
      return { to: numbersPath(club) };
    },
  });
}

/** Takes the form that takes a finding up again. */
export async function takeUp(
  club: string,
  id: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: numbersPath(club),
    work: async () => {
      await (await api()).number.takeUp({ club, id });
      return { to: numbersPath(club) };
    },
  });
}

type Decided = Omit<Inputs["decide"], "club" | "kind" | "number" | "standing">;

export interface DecidedNumber {
  readonly club: string;
  readonly kind: Inputs["decide"]["kind"];
  readonly number: string;
  /** The decision that stood when the page was opened. */
  readonly standing: string;
}

/** Takes the form that decides about a number several cars claim. */
export async function decide(
  { club, kind, number, standing }: DecidedNumber,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: claimPath(club, kind, number),
    work: async () => {
      await (await api()).number.decide({ ...enteredOf<Decided>(data), club, kind, number, standing });
      return { to: claimPath(club, kind, number) };
    },
  });
}

export interface MergedCars {
  readonly club: string;
  readonly into: string;
  readonly from: string;
  readonly intoVersion: number;
  readonly fromVersion: number;
}

/** Takes the form that makes two records one. */
export async function merge(
  { club, ...cars }: MergedCars,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: mergePath(club, cars.into, cars.from),
    work: async () => {
      const { reason = "" } = enteredOf<{ readonly reason?: string }>(data);
      return { to: carPath(club, await (await api()).record.merge({ club, ...cars, reason })) };
    },
  });
}
