import { createHash } from "node:crypto";
import {
  checkStanding,
  type DecisionOutcome,
  decisionOutcomes,
  type FindingResult,
  fieldsOnSheet,
  findingResults,
  measuredNote,
  noteAt,
  refused,
  remarksOnCar,
  type SheetChange,
  type SheetCheck,
  sayPlace,
  standing,
} from "@trunnion/register";
import { z } from "zod";
import type { Context } from "../context";
import { findEvent } from "../event";
import { type EventRecords, inspectionOf } from "../inspection";
import { type PrintedSheetNow, printedSheetNow } from "../printed-sheet";
import { requireRole } from "../role";
import { formTakers } from "./policy";

const entry = z.string().max(2_000);

/** One sheet's fields as a filled-in file has them. */
const filledSheet = z.object({
  /** Code printed on the sheet. */
  code: z.string().max(20),
  /** Hash of the record the sheet was made from, as the file has it. */
  record: z.string().max(100),
  /** Name of the field below the car's → what stands in it; empty ones left out. */
  fields: z.record(z.string().max(200), entry).refine((all) => Object.keys(all).length <= 2_000),
});
export type FilledSheet = z.output<typeof filledSheet>;

/** What a filled-in file holds. */
export const filledSheetsInput = z.object({
  event: z.string().trim().min(1).max(60),
  /** Name of the file, for saying what was wrong with which. */
  file: z.string().max(200),
  sheets: z.array(filledSheet).min(1).max(2_000),
});
export type FilledSheetsInput = z.output<typeof filledSheetsInput>;

interface FilledReading {
  readonly characteristic: string;
  readonly side: "left" | "right" | "whole";
  readonly entered: string;
  /** Where on the car, in words: "front left". */
  readonly place: string;
}

/** What stands at one check of a filled-in sheet, beside what was found so far. */
export interface SheetLookFinding {
  readonly key: string;
  readonly check: string;
  readonly text: string;
  readonly result: FindingResult;
  readonly note: string;
  readonly readings: readonly Omit<FilledReading, "place">[];
  /** New; taken in before; or other than what another finding says. */
  readonly state: "new" | "known" | "differs";
  /** Results that stand so far. */
  readonly was: readonly { readonly result: FindingResult; readonly note: string; readonly by: string }[];
  /** Keys of the findings this takes the place of. */
  readonly replaces: readonly string[];
}

export interface SheetLookDecision {
  readonly key: string;
  readonly outcome: DecisionOutcome;
  readonly note: string;
  readonly signedBy: string;
  readonly state: "new" | "known" | "differs";
  readonly replaces: readonly string[];
}

/** One filled-in sheet, looked at before anything is taken. */
export interface SheetLook {
  readonly entryId: string;
  readonly code: string;
  readonly number: string;
  readonly chassis: string;
  readonly driver: string;
  /** What the record says otherwise now than when the sheet was printed. */
  readonly changes: readonly SheetChange[];
  readonly findings: readonly SheetLookFinding[];
  readonly decision?: SheetLookDecision;
  /** Checks with neither result nor note nor reading. */
  readonly open: number;
  /** Figures or a note without a result: what was written is told, and a result asked for. */
  readonly unresolved: readonly { readonly text: string; readonly written: string }[];
}

const resultOf: Readonly<Record<string, FindingResult>> = {
  ...Object.fromEntries(findingResults.map((result) => [result, result])),
  "not-applicable": "notApplicable",
};
const outcomeOf: Readonly<Record<string, DecisionOutcome>> = {
  ...Object.fromEntries(decisionOutcomes.map((outcome) => [outcome, outcome])),
  "pass-with-advice": "passWithAdvice",
};

/** A key that the same words on the same sheet always have, so that a file dropped twice is taken once: UUID version 8. */
function keyOf(...parts: readonly string[]): string {
  const hex = createHash("sha256").update(JSON.stringify(parts)).digest("hex");
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-a${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}

/** Refuses a file whose sheet is not what was printed. */
function requireAsPrinted({ file, sheet, printed }: Looking): void {
  const number = printed.model.entry.runningNumber;
  const edited = (field: string) => refused("SHEET_FILE_EDITED", { file, number, field });
  if (sheet.record !== printed.model.recordHash) throw edited("record");
  const known = fieldsOnSheet(printed.model);
  for (const [field, value] of Object.entries(sheet.fields)) {
    if (!known.has(field)) throw edited(field);
    if (field.endsWith("/result") && field.startsWith("check/") && resultOf[value] === undefined)
      throw edited(field);
    if (field === "decision" && outcomeOf[value] === undefined) throw edited(field);
  }
}

interface Looking {
  readonly file: string;
  readonly sheet: FilledSheet;
  readonly printed: PrintedSheetNow;
  readonly records: EventRecords;
}

/** Figures of the settings table belong to the first check that measures that setting; else to the sheet's notes. */
function readingsOf(check: SheetCheck, { sheet, printed }: Looking): readonly FilledReading[] {
  const own = check.readings.flatMap(({ key, characteristic, side }) => {
    const entered = sheet.fields[`check/${check.id}/reading/${key}`]?.trim() ?? "";
    return entered === "" ? [] : [{ characteristic, side, entered, place: sayPlace({ key }) }];
  });
  const asked = "characteristic" in check.criterion ? (check.criterion.characteristic ?? "") : "";
  const first = printed.model.stations
    .flatMap(({ checks }) => checks)
    .find(({ criterion }) => "characteristic" in criterion && criterion.characteristic === asked);
  if (asked === "" || first?.id !== check.id) return own;
  const set = (["left", "right", "whole"] as const).flatMap((side) => {
    const entered = sheet.fields[`setting/${asked.replaceAll(".", "-")}/${side}`]?.trim() ?? "";
    return entered === "" ? [] : [{ characteristic: asked, side, entered, place: sayPlace({ key: side }) }];
  });
  return [...own, ...set];
}

function lookAtCheck(check: SheetCheck, looking: Looking): SheetLookFinding | undefined {
  const { sheet, printed, records } = looking;
  const result = resultOf[sheet.fields[`check/${check.id}/result`] ?? ""];
  if (result === undefined) return undefined;
  const all = readingsOf(check, looking);
  const note = measuredNote(
    noteAt(looking.printed.model, looking.sheet.fields, check.id),
    all.filter(({ characteristic }) => characteristic === ""),
  );
  const readings = all.flatMap(({ place: _place, ...reading }) =>
    reading.characteristic === "" ? [] : [reading],
  );
  const key = keyOf("finding", printed.id, check.id, result, note, JSON.stringify(readings));
  const before = records.findings.filter(
    ({ entryId, check: code }) => entryId === printed.entryId && code === check.id,
  );
  const told = checkStanding(before);
  const stands = told.state === "open" ? [] : told.findings;
  const known = before.some((finding) => finding.key === key);
  const differs = stands.some((finding) => finding.result !== result || finding.note !== note);
  return {
    key,
    check: check.id,
    text: check.text,
    result,
    note,
    readings,
    state: known ? "known" : differs ? "differs" : "new",
    was: stands.map(({ result: was, note: words, by }) => ({ result: was, note: words, by })),
    replaces: known ? [] : stands.map((finding) => finding.key),
  };
}

function lookAtDecision(looking: Looking): SheetLookDecision | undefined {
  const { sheet, printed, records } = looking;
  const outcome = outcomeOf[sheet.fields.decision ?? ""];
  if (outcome === undefined) return undefined;
  const note = [
    sheet.fields.notes?.trim() ?? "",
    ...remarksOnCar(looking.printed.model, looking.sheet.fields),
  ]
    .filter((part) => part !== "")
    .join("\n");
  const signedBy = sheet.fields.scrutineer?.trim() ?? "";
  const key = keyOf("decision", printed.id, outcome, note, signedBy);
  const before = records.decisions.filter(({ entryId }) => entryId === printed.entryId);
  const stands = standing(before);
  const known = before.some((decision) => decision.key === key);
  const differs = stands.some((decision) => decision.outcome !== outcome);
  return {
    key,
    outcome,
    note,
    signedBy,
    state: known ? "known" : differs ? "differs" : "new",
    replaces: known ? [] : stands.map((decision) => decision.key),
  };
}

/** Written figures or a note at a check without a result: never dropped, and never made into a pass. */
function unresolvedOf(looking: Looking, checks: readonly SheetCheck[]) {
  const { fields } = looking.sheet;
  return checks.flatMap((check) => {
    if (fields[`check/${check.id}/result`] !== undefined) return [];
    const figures = readingsOf(check, looking).map(({ place, entered }) =>
      place === "" ? entered : `${place} ${entered}`,
    );
    const written = [noteAt(looking.printed.model, looking.sheet.fields, check.id), ...figures].filter(
      (part) => part !== "",
    );
    return written.length === 0 ? [] : [{ text: check.text, written: written.join(", ") }];
  });
}

function lookAtSheet(looking: Looking): SheetLook {
  const { printed } = looking;
  requireAsPrinted(looking);
  const checks = printed.model.stations.flatMap(({ checks: all }) => all);
  const findings = checks.flatMap((check) => lookAtCheck(check, looking) ?? []);
  const decision = lookAtDecision(looking);
  const loose = decision === undefined ? remarksOnCar(looking.printed.model, looking.sheet.fields) : [];
  const unresolved = [
    ...unresolvedOf(looking, checks),
    ...loose.map((written) => ({ text: "Note on the car, without a decision", written })),
  ];
  const { entry: entered, car, code } = printed.model;
  return {
    entryId: printed.entryId,
    code,
    number: entered.runningNumber,
    chassis: car.chassis,
    driver: entered.driver,
    changes: printed.changes,
    findings,
    ...(decision === undefined ? {} : { decision }),
    open: checks.length - findings.length - (unresolved.length - loose.length),
    unresolved,
  };
}

/**
 * What a filled-in file holds, beside what was found so far; takes nothing. Sheets on which nothing is filled in are
 * left out.
 *
 * @throws Refusal ROLE_NEEDED, EVENT_NOT_FOUND, SHEET_FILE_FOREIGN, SHEET_FILE_EDITED, SHEET_FILE_FLAT, SHEET_OF_OTHER_EVENT
 */
export async function lookAtForm(ctx: Context, input: FilledSheetsInput): Promise<readonly SheetLook[]> {
  requireRole(ctx.actor, ...formTakers);
  const { file } = input;
  const event = await findEvent(ctx, input.event);
  const records = await inspectionOf(ctx, event.id);
  const looks: SheetLook[] = [];
  for (const sheet of input.sheets) {
    if (Object.keys(sheet.fields).length === 0) continue;
    const printed = await printedSheetNow(ctx, sheet.code);
    if (!printed) throw refused("SHEET_FILE_FOREIGN", { file });
    const number = printed.model.entry.runningNumber;
    if (printed.event.slug !== event.slug)
      throw refused("SHEET_OF_OTHER_EVENT", { file, number, event: printed.event.name });
    looks.push(lookAtSheet({ file, sheet, printed, records }));
  }
  if (looks.length === 0) throw refused("SHEET_FILE_FLAT", { file });
  return looks;
}
