import type { EntryPage } from "@trunnion/api";
import { decisionOutcomes, decisionOutcomeWords } from "@trunnion/register";
import { Caution } from "../../components/caution";
import { EditForm } from "../../components/form/edit-form";
import { ChoiceField, TextArea, TextField } from "../../components/form/form-field";
import { PageHead, SectionHead } from "../../components/page-head";
import { SmallPlate } from "../../components/plate";
import type { ClubFace } from "../../components/shell/shell";
import { carPath, changeEntryPath, entryPath, eventPath } from "../../lib/path";
import { ClassList } from "./class-list";
import { takeFindings } from "./inspect-action";
import { CheckFields, Instruments } from "./inspect-check";

export interface InspectPageProps {
  readonly club: ClubFace;
  readonly page: EntryPage;
  /** One key for each check shown and one for the decision, made with the page. */
  readonly keys: readonly string[];
  readonly cautions: readonly string[];
}

/** One entry at scrutineering: findings check by check, then the decision. Works without a script. */
export function InspectPage({ club, page, keys, cautions }: InspectPageProps) {
  const { event, entry, again, passedBefore, stations, deviations } = page;
  const place = { event: event.slug, number: entry.runningNumber };
  const checks = stations.flatMap((station) => station.checks);
  const indexOf = new Map(checks.map((check, index) => [check.id, index]));
  return (
    <>
      <PageHead
        title={`Number ${entry.runningNumber}`}
        back={{ href: eventPath(club.slug, event.slug), label: event.name }}
        {...(entry.car
          ? {
              plate: (
                <SmallPlate chassis={entry.car.chassis} href={carPath(club.slug, entry.car.reference)} />
              ),
            }
          : {})}
        lead={
          <p>
            {[entry.car?.series ?? entry.describedAs, entry.driver, entry.className]
              .filter((text) => text !== "")
              .join(" · ")}
          </p>
        }
      >
        <a href={changeEntryPath(club.slug, event.slug, entry.runningNumber)}>Change the entry</a>
      </PageHead>
      <Standing page={page} />
      {again ? (
        <p className="max-w-prose pb-4">
          The car comes again: {passedBefore} checks passed before are not shown.{" "}
          <a href={entryPath(club.slug, event.slug, entry.runningNumber, { all: "yes" })}>Show every check</a>
        </p>
      ) : null}
      {deviations.length === 0 ? null : (
        <section aria-labelledby="different" className="pb-6">
          <SectionHead id="different" title="What is different about this car" />
          <ul className="border-hair border-t">
            {deviations.map((deviation) => (
              <li key={`${deviation.label} ${deviation.side}`} className="border-hair border-b py-1">
                <b>
                  {deviation.label}
                  {deviation.side === undefined ? null : `, ${deviation.side}`}
                </b>
                : {deviation.actual === "" ? deviation.verdictText : deviation.actual}
                {deviation.specified === "" ? null : (
                  <span className="text-soft"> (specified {deviation.specified})</span>
                )}
              </li>
            ))}
          </ul>
        </section>
      )}
      {page.classes.length === 0 ? null : (
        <section aria-labelledby="classes" className="pb-6">
          <SectionHead id="classes" title="Classes" />
          <ClassList classes={page.classes} entered={entry.classId} />
        </section>
      )}
      <EditForm
        action={takeFindings.bind(null, club.slug, place)}
        submit="Save findings"
        wide
        cancel={{ href: eventPath(club.slug, event.slug), label: "Back without saving" }}
      >
        <input type="hidden" name="entryId" value={entry.id} />
        <Instruments instruments={page.instruments} />
        {stations.map(({ station, label, checks: here }) => (
          <section key={station} aria-labelledby={`at-${station}`}>
            <SectionHead id={`at-${station}`} title={label} />
            <ol>
              {here.map((check) => (
                <CheckFields key={check.id} check={check} index={indexOf.get(check.id) ?? 0} keys={keys} />
              ))}
            </ol>
          </section>
        ))}
        <Decision page={page} decisionKey={keys.at(-1) ?? ""} />
      </EditForm>
      <div className="pt-8">
        <Caution cautions={cautions} />
      </div>
    </>
  );
}

function Standing({ page: { tally, best, decision } }: { readonly page: EntryPage }) {
  const { open, conflicts, passed, advised, refused } = tally;
  return (
    <div className="pb-4">
      <p>
        {passed} passed, {advised} advised, {refused} refused, {open} open
        {conflicts === 0 ? null : `, ${conflicts} on which scrutineers differ`}.{" "}
        {best === undefined ? "Not every check is decided yet." : `At best: ${decisionOutcomeWords[best]}.`}
      </p>
      {decision.state === "none" ? null : (
        <ul>
          {decision.decisions.map(({ key, outcome, by, note }) => (
            <li key={key} className="border-ink border-l-4 pl-2">
              <b>Decided: {decisionOutcomeWords[outcome]}</b>
              {by === "" ? null : `, ${by}`}
              {note === "" ? null : `: ${note}`}
            </li>
          ))}
        </ul>
      )}
      {decision.state === "conflict" ? (
        <p className="border-red border-l-4 pl-2">Scrutineers decided differently: settle it below.</p>
      ) : null}
    </div>
  );
}

function Decision({
  page: { decision },
  decisionKey,
}: {
  readonly page: EntryPage;
  readonly decisionKey: string;
}) {
  const before = decision.state === "none" ? [] : decision.decisions;
  return (
    <section aria-labelledby="decision" className="grid gap-3">
      <SectionHead id="decision" title="Decision" />
      <input type="hidden" name="decision.key" value={decisionKey} />
      <input type="hidden" name="decision.replaces" value={before.map(({ key }) => key).join(" ")} />
      <ChoiceField
        name="decision.outcome"
        label="Decision"
        options={[
          { value: "", label: before.length === 0 ? "None yet" : "As it stands" },
          ...decisionOutcomes.map((value) => ({ value, label: decisionOutcomeWords[value] })),
        ]}
      />
      <TextArea name="decision.note" label="Advice or reason" rows={2} maxLength={2000} />
      <TextField name="decision.signedBy" label="Signed by" maxLength={120} autoComplete="off" />
    </section>
  );
}
