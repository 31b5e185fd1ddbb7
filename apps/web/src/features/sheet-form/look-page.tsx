import type { SheetLook, SheetLookFinding } from "@trunnion/api";
import {
  decisionOutcomeWords,
  findingResultWords,
  type RefusalText,
  type SheetChange,
} from "@trunnion/register";
import { Button } from "../../components/button";
import { Notice } from "../../components/notice";
import { PageHead, SectionHead } from "../../components/page-head";
import { eventPath, sheetFormPath } from "../../lib/path";

export interface LookPageProps {
  readonly club: string;
  readonly event: { readonly slug: string; readonly name: string };
  readonly drop: string;
  readonly file: string;
  readonly looks: readonly SheetLook[];
  readonly refusal?: RefusalText;
  /** Findings and decisions taken just now. */
  readonly taken?: number;
}

/** What a filled-in file says, sheet by sheet, beside what was found so far; taken by one button. */
export function LookPage({ club, event, drop, file, looks, refusal, taken }: LookPageProps) {
  const fresh = looks.reduce((sum, look) => sum + freshIn(look), 0);
  return (
    <>
      <PageHead
        title="Filled-in sheets"
        back={{ href: eventPath(club, event.slug), label: event.name }}
        lead={<p>{file}</p>}
      >
        {fresh === 0 ? null : (
          <form action={sheetFormPath(club, event.slug, drop)} method="post">
            <Button weight="mark">{`Take ${fresh} ${fresh === 1 ? "record" : "records"}`}</Button>
          </form>
        )}
      </PageHead>
      {refusal === undefined ? null : <Notice text={refusal} />}
      {taken === undefined ? null : (
        <p role="status" className="pb-4 font-semibold">
          {taken === 1 ? "1 record was taken." : `${taken} records were taken.`}
        </p>
      )}
      {looks.length > 0 && fresh === 0 && taken === undefined ? (
        <p className="pb-4">Everything on it was taken before.</p>
      ) : null}
      {looks.map((look) => (
        <OneSheet key={look.code} look={look} />
      ))}
    </>
  );
}

const freshIn = ({ findings, decision }: SheetLook) =>
  findings.filter(({ state }) => state !== "known").length + (decision && decision.state !== "known" ? 1 : 0);

function OneSheet({ look }: { readonly look: SheetLook }) {
  const { number, chassis, driver, changes, findings, decision, open, unresolved, code } = look;
  return (
    <section aria-labelledby={`sheet-${code}`} className="pb-8">
      <SectionHead id={`sheet-${code}`} title={`No. ${number}`}>
        <span className="text-small text-soft">{[chassis, driver].filter(Boolean).join(", ")}</span>
      </SectionHead>
      {changes.length === 0 ? null : <Older changes={changes} />}
      {decision === undefined ? null : (
        <p className="py-2">
          <strong>Decision: {decisionOutcomeWords[decision.outcome]}</strong>
          {decision.signedBy === "" ? "" : `, ${decision.signedBy}`}
          {decision.note === "" ? "" : `. ${decision.note}`} <StateWord state={decision.state} />
        </p>
      )}
      {unresolved.length === 0 ? null : (
        <div className="pb-4">
          <Notice
            tone="note"
            text={{
              what: "Written down without a result, so not taken:",
              remedy: "Cross a result on the sheet and drop it again, or enter the finding by hand.",
            }}
            details={unresolved.map(({ text, written }) => `${text} – ${written}`)}
          />
        </div>
      )}
      {findings.length === 0 ? null : <Findings findings={findings} />}
      <p className="pt-2 text-small text-soft">
        {open === 1 ? "1 check is open on it." : `${open} checks are open on it.`}
      </p>
    </section>
  );
}

function Older({ changes }: { readonly changes: readonly SheetChange[] }) {
  return (
    <Notice
      tone="note"
      text={{
        what: "The record changed after this sheet was printed.",
        remedy: "What was found is taken as it stands; look whether it still fits.",
      }}
      details={changes.slice(0, 12).map(sayChange)}
    />
  );
}

/** "Front camber, left: printed −1°15', now −0°20'". */
export function sayChange({ what, printed, now }: SheetChange): string {
  if (printed === "") return `${what}: new, ${now}`;
  return now === "" ? `${what}: printed ${printed}, gone now` : `${what}: printed ${printed}, now ${now}`;
}

function Findings({ findings }: { readonly findings: readonly SheetLookFinding[] }) {
  return (
    <table className="list-table">
      <caption className="sr-only">What was found</caption>
      <thead>
        <tr>
          <th scope="col">Check</th>
          <th scope="col">On the sheet</th>
          <th scope="col">So far</th>
          <th scope="col">Taken</th>
        </tr>
      </thead>
      <tbody>
        {findings.map((finding) => (
          <tr key={finding.check}>
            <th scope="row" className="list-lead font-normal">
              {finding.text}
            </th>
            <td>
              <strong>{findingResultWords[finding.result]}</strong>
              {said(finding)}
            </td>
            <td>
              {finding.was.length === 0
                ? "nothing so far"
                : finding.was.map((was) => (
                    <span key={`${was.by}${was.result}${was.note}`} className="block">
                      {[findingResultWords[was.result], was.note, was.by].filter(Boolean).join(", ")}
                    </span>
                  ))}
            </td>
            <td>
              <StateWord state={finding.state} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function said({ note, readings }: SheetLookFinding): string {
  const figures = readings.map(({ side, entered }) => (side === "whole" ? entered : `${side} ${entered}`));
  const words = [...figures, note].filter((part) => part !== "");
  return words.length === 0 ? "" : `, ${words.join(", ")}`;
}

const stateWords = { new: "new", known: "taken before", differs: "takes the place of what differs" } as const;

function StateWord({ state }: { readonly state: keyof typeof stateWords }) {
  return (
    <span className={state === "differs" ? "font-semibold text-red" : "text-soft"}>{stateWords[state]}</span>
  );
}
