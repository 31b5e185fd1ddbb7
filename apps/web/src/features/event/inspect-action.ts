"use server";
import { decisionOutcomes, findingResults, Invalid, measuredNote, sayPlace } from "@trunnion/register";
import { takeForm } from "../../lib/form";
import { enteredOf } from "../../lib/form-entry";
import type { FormState } from "../../lib/form-state";
import { entryPath } from "../../lib/path";
import { api } from "../../lib/service";

interface ReadingFields {
  readonly place: string;
  readonly characteristic: string;
  readonly side: "whole" | "left" | "right";
  readonly dimension: string;
  readonly entered?: string;
  /** What stood there when the page was made, and what that was read with. */
  readonly was: string;
  readonly instrument: string;
}

interface CheckFields {
  readonly code: string;
  readonly key: string;
  readonly result?: string;
  readonly was?: string;
  readonly note?: string;
  readonly wasNote?: string;
  readonly replaces?: string;
  readonly readings?: readonly ReadingFields[];
}

interface InspectionForm {
  readonly entryId: string;
  readonly checks?: readonly CheckFields[];
  /** Dimension → instrument. */
  readonly with?: Readonly<Record<string, string>>;
  readonly decision?: {
    readonly key: string;
    readonly outcome?: string;
    readonly note?: string;
    readonly signedBy?: string;
    readonly replaces?: string;
  };
}

const keysOf = (text: string | undefined) => (text ?? "").split(" ").filter((key) => key !== "");
const oneOf = <T extends string>(all: readonly T[], text: string | undefined): T | undefined =>
  all.find((one) => one === text);
const plain = (text = "") => text.replace(/\r\n?/g, "\n").trim();

/** Instrument of a figure: the one chosen for new figures, what it was read with for one that stands. */
function instrumentOf(reading: ReadingFields, chosen: InspectionForm["with"]): string {
  const same = plain(reading.entered) === reading.was;
  return same ? reading.instrument : (chosen?.[reading.dimension] ?? "");
}

/** Whether anything was written at a check beyond what the page showed. */
function isTouched({ note, wasNote, readings = [] }: CheckFields): boolean {
  return plain(note) !== plain(wasNote) || readings.some(({ entered, was }) => plain(entered) !== was);
}

/** A figure or note without a result would be lost, and is no pass: it is asked for, at its field. */
function requireResults(checks: readonly CheckFields[]): void {
  const problems = checks.flatMap((check, at) =>
    isTouched(check) && oneOf(findingResults, check.result) === undefined
      ? [{ field: `checks.${at}.result`, message: "Give a result: a figure or note alone is no pass." }]
      : [],
  );
  if (problems.length > 0) throw new Invalid(problems);
}

function findingOf(check: CheckFields, { entryId, with: chosen }: InspectionForm, at: string) {
  const result = oneOf(findingResults, check.result);
  const readings = check.readings ?? [];
  const note = plain(check.note);
  const same = (check.result ?? "") === (check.was ?? "") && !isTouched(check);
  if (same || result === undefined) return [];
  const written = readings.filter(({ entered }) => plain(entered) !== "");
  return [
    {
      key: check.key,
      entryId,
      at,
      check: check.code,
      result,
      note: measuredNote(
        note,
        written
          .filter(({ characteristic }) => characteristic === "")
          .map(({ place, entered }) => ({ place: sayPlace({ key: place }), entered: plain(entered) })),
      ),
      readings: written
        .filter(({ characteristic }) => characteristic !== "")
        .map((reading) => {
          const { characteristic, side, entered } = reading;
          const instrument = instrumentOf(reading, chosen);
          return {
            characteristic,
            side,
            entered: plain(entered),
            ...(instrument === "" ? {} : { instrument }),
          };
        }),
      replaces: keysOf(check.replaces),
    },
  ];
}

function decisionOf({ entryId, decision }: InspectionForm, at: string) {
  const outcome = oneOf(decisionOutcomes, decision?.outcome);
  if (!decision || outcome === undefined) return [];
  const { key, note = "", signedBy = "", replaces } = decision;
  return [{ key, entryId, at, outcome, note, signedBy, replaces: keysOf(replaces) }];
}

/**
 * Takes the scrutineer's page: what was changed on it becomes findings, each with the key the page was made with, so that
 * sending it twice is one finding, and naming those it was shown, so that another's later one stands beside it.
 */
export async function takeFindings(
  club: string,
  of: { readonly event: string; readonly number: string },
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const place = entryPath(club, of.event, of.number);
  return takeForm({
    before,
    data,
    place,
    work: async () => {
      const form = enteredOf<InspectionForm>(data);
      const at = new Date().toISOString();
      requireResults(form.checks ?? []);
      const findings = (form.checks ?? []).flatMap((check) => findingOf(check, form, at));
      const decisions = decisionOf(form, at);
      const caller = await api();
      await caller.inspection.exchange({ club, event: of.event, deviceNow: at, findings, decisions });
      return { to: place };
    },
  });
}
