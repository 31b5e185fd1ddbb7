import type { EntryPage } from "@trunnion/api";
import {
  decisionOutcomes,
  decisionOutcomeWords,
  type Finding,
  findingResults,
  findingResultWords,
} from "@trunnion/register";
import { Caution } from "../../components/caution";
import { EditForm } from "../../components/form/edit-form";
import { ChoiceField, TextArea, TextField } from "../../components/form/form-field";
import { PageHead, SectionHead } from "../../components/page-head";
import { SmallPlate } from "../../components/plate";
import type { ClubFace } from "../../components/shell/shell";
import { carPath, changeEntryPath, entryPath, eventPath } from "../../lib/path";
import { takeFindings } from "./action";
import { ClassList } from "./class-list";

type Check = EntryPage["stations"][number]["checks"][number];

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
                <b>{deviation.label}</b>: {deviation.actual === "" ? deviation.verdictText : deviation.actual}
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
        cancel={{ href: eventPath(club.slug, event.slug), label: "Back without saving" }}
      >
        <input type="hidden" name="entryId" value={entry.id} />
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

const findingsOf = ({ standing }: Check): readonly Finding[] =>
  standing.state === "open" ? [] : standing.findings;

interface CheckFieldsProps {
  readonly check: Check;
  readonly index: number;
  readonly keys: readonly string[];
}

function CheckFields({ check, index, keys }: CheckFieldsProps) {
  const name = (field: string) => `checks.${index}.${field}`;
  const found = findingsOf(check);
  const was = check.standing.state === "found" ? check.standing.result : "";
  const [first] = found;
  const wasNote = was === "" ? "" : (first?.note ?? "");
  const fixed = {
    code: check.id,
    key: keys[index] ?? "",
    was,
    wasNote,
    replaces: found.map(({ key }) => key).join(" "),
  };
  return (
    <li className="grid gap-x-6 gap-y-2 border-hair border-b py-3 sm:grid-cols-[1fr_13rem]">
      <div>
        <p className={check.special ? "font-semibold" : ""}>{check.text}</p>
        {check.special ? <p className="text-small">Why: {check.why}</p> : null}
        {"text" in check.criterion ? <p className="text-small">{check.criterion.text}.</p> : null}
        {check.method === undefined ? null : <p className="text-small text-soft">{check.method}</p>}
        {check.standing.state === "conflict" ? <Differ findings={found} /> : null}
        {check.standing.state === "found" ? (
          <p className="text-small text-soft">
            {findingResultWords[check.standing.result]} by{" "}
            {found.map(({ by }) => (by === "" ? "somebody" : by)).join(", ")}
          </p>
        ) : null}
      </div>
      <div className="grid content-start gap-2">
        {Object.entries(fixed).map(([field, value]) => (
          <input key={field} type="hidden" name={name(field)} value={value} />
        ))}
        <ChoiceField
          name={name("result")}
          label="Result"
          value={was}
          options={[
            { value: "", label: check.standing.state === "conflict" ? "in conflict" : "open" },
            ...findingResults.map((value) => ({ value, label: findingResultWords[value] })),
          ]}
        />
        {check.reads.map(({ characteristic, side, label }, at) => (
          <div key={side}>
            <input type="hidden" name={name(`readings.${at}.characteristic`)} value={characteristic} />
            <input type="hidden" name={name(`readings.${at}.side`)} value={side} />
            <TextField
              name={name(`readings.${at}.entered`)}
              label={side === "whole" ? label : `${label}, ${side}`}
              maxLength={120}
              autoComplete="off"
            />
          </div>
        ))}
        <TextField name={name("note")} label="Note" value={wasNote} maxLength={400} autoComplete="off" />
      </div>
    </li>
  );
}

function Differ({ findings }: { readonly findings: readonly Finding[] }) {
  return (
    <div className="border-red border-l-4 pl-2 text-small">
      <p className="font-semibold">Scrutineers differ; choose a result to settle it.</p>
      <ul>
        {findings.map(({ key, by, result, note }) => (
          <li key={key}>
            {by === "" ? "Somebody" : by}: {findingResultWords[result]}
            {note === "" ? null : `, ${note}`}
          </li>
        ))}
      </ul>
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
