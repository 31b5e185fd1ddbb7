import type { SubmissionPage as Page } from "@trunnion/api";
import { evidenceTargetReference } from "@trunnion/register";
import { Notice } from "../../components/notice";
import { SectionHead } from "../../components/page-head";
import { sideWords as words } from "../../lib/assembly";
import { submissionConsequencePath, supportPath } from "../../lib/path";
import { ThumbGrid } from "../evidence/thumb";
import { ConsequencePanel } from "./consequence-panel";
import { DifferenceTable } from "./difference-table";
import { photoColumn } from "./line-photos";
import { MixList } from "./mix-list";

export interface SaidProps {
  readonly club: string;
  readonly page: Page;
}

const yesNo = { yes: "yes", no: "no", "": "not said" } as const;

/** What a submission says, beside what it does, with the photos that show it. */
export function Said({ club, page }: SaidProps) {
  const { submission, lines, proposed, club: facts } = page;
  const { content, problems, id } = submission;
  return (
    <>
      {problems.length === 0 ? null : (
        <Notice
          tone="note"
          text={{
            what: "As the record is now, this cannot be accepted:",
            remedy: "Ask the owner, or decline it with the reason.",
          }}
          details={problems.map(({ message }) => message)}
        />
      )}
      <div className="grid gap-x-12 gap-y-8 wide:grid-cols-[1fr_minmax(0,26rem)]">
        <section aria-labelledby="said" className="grid min-w-0 content-start gap-5">
          <SectionHead id="said" title="What was changed" />
          <DifferenceTable
            lines={lines}
            sideWords={words[facts.sideWords]}
            labelledBy="said"
            {...photoColumn({ club, id, photos: page.evidence })}
          />
          <MixList mixes={page.mixes} />
          {content.modifications.map((one, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a modification has no name of its own and the list never moves
            <dl key={place} className="grid grid-cols-[auto_1fr] gap-x-6 gap-y-1">
              {(
                [
                  ["Fitted", one.fitted],
                  [
                    "Odometer",
                    one.odometer === ""
                      ? ""
                      : `${one.odometer}${/[a-z]/i.test(one.odometer) ? "" : content.units === "metric" ? " km" : " mi"}`,
                  ],
                  ["Donor or supplier", one.donor],
                  ["Why", one.reason],
                  ["Can be put back", yesNo[one.reversible]],
                  ["Old part kept", yesNo[one.oldPartKept]],
                  ["Note", one.note],
                ] as const
              ).map(([name, said]) =>
                said === "" ? null : (
                  <div key={name} className="contents">
                    <dt className="text-soft">{name}</dt>
                    <dd className="whitespace-pre-wrap">{said}</dd>
                  </div>
                ),
              )}
              {one.fasteners.map((fastener, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: as above
                <div key={index} className="contents">
                  <dt className="text-soft">Fastener</dt>
                  <dd>
                    {[
                      fastener.place,
                      fastener.count === "" ? "" : `${fastener.count} off`,
                      fastener.thread,
                      fastener.grade,
                      fastener.length === "" ? "" : `${fastener.length} long`,
                      fastener.spacerStack === "" ? "" : `on spacers of ${fastener.spacerStack}`,
                      fastener.note,
                    ]
                      .filter((part) => part !== "")
                      .join(", ")}
                  </dd>
                </div>
              ))}
            </dl>
          ))}
        </section>
        <section aria-labelledby="does" className="grid min-w-0 content-start gap-3">
          <SectionHead id="does" title="What it does" />
          <ConsequencePanel
            proposed={proposed}
            idle={lines.length === 0}
            workingOf={(one) => submissionConsequencePath(club, id, one)}
          />
        </section>
      </div>
    </>
  );
}

/** Photos and documents beside no one line of the difference. */
export function Evidence({ club, page }: SaidProps) {
  const { evidence, submission, lines } = page;
  const target = evidenceTargetReference({ kind: "submission", id: submission.id });
  const adds = submission.own && submission.open;
  const ofLines = new Set(lines.map(({ characteristic }) => characteristic));
  const pieces = evidence.filter(({ characteristic }) => !ofLines.has(characteristic));
  if (pieces.length === 0 && !adds) return null;
  return (
    <section aria-labelledby="photos">
      <SectionHead id="photos" title="Photos and documents of the whole" />
      <ThumbGrid club={club} pieces={pieces} />
      {adds ? (
        <p className="py-2">
          <a href={supportPath(club, target)} className="inline-flex min-h-11 items-center">
            {evidence.length === 0 ? "Add photos" : "Add or order photos"}
          </a>
        </p>
      ) : null}
    </section>
  );
}
