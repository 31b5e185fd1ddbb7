"use client";
import type { ListedEntry } from "@trunnion/api";
import { Button } from "../../components/button";
import { EditForm, useForm } from "../../components/form/edit-form";
import { ChoiceField, TextArea } from "../../components/form/form-field";
import { PageHead } from "../../components/page-head";
import { eventPath } from "../../lib/path";
import { type EntryListState, takeEntryList } from "./action";

export interface EntryListPageProps {
  readonly club: string;
  readonly event: { readonly slug: string; readonly name: string };
}

/** Pastes or reads in a list of entries: read against the register first, doubtful cars asked. */
export function EntryListPage({ club, event }: EntryListPageProps) {
  const back = { href: eventPath(club, event.slug), label: event.name };
  return (
    <>
      <PageHead
        title="Read in an entry list"
        back={back}
        lead="Nothing is entered before you have seen what each line means."
      />
      <EditForm
        action={takeEntryList.bind(null, club, event.slug)}
        submit="Read the list"
        weight="plain"
        cancel={{ ...back, label: "Back without entering" }}
        labels={{ text: "List" }}
      >
        <TextArea
          name="text"
          label="List"
          rows={8}
          hint="Paste it from a spreadsheet or a mail: one entry a line, cells between tabs, commas or semicolons. With headings (number, chassis, registration, driver, group, class) in any order; without them number, car, driver, group, class."
        />
        <div className="grid gap-1">
          <label htmlFor="entry-file" className="font-semibold">
            Or a file
          </label>
          <input id="entry-file" type="file" name="file" accept=".csv,.txt,.xlsx,.ods" className="min-h-11" />
          <p className="text-fine text-soft">
            CSV, XLSX or ODS; it takes the place of what stands in the box.
          </p>
        </div>
        <ReadList />
      </EditForm>
    </>
  );
}

function ReadList() {
  const { read } = useForm() as EntryListState;
  if (!read) return null;
  const { entries, unknown } = read;
  const open = entries.filter(({ match }) => match.state === "doubtful").length;
  return (
    <section aria-labelledby="read" className="grid gap-3">
      <h2 id="read" className="border-ink border-t-2 pt-2 text-head">
        What the list says
      </h2>
      <p>
        {entries.length === 1 ? "1 line" : `${entries.length} lines`};{" "}
        {open === 0 ? "none to be asked" : `${open} to be settled`}.
        {unknown.length === 0 ? null : ` Columns not read: ${unknown.join(", ")}.`}
      </p>
      <ol className="border-hair border-t">
        {entries.map((entry) => (
          <Line key={entry.line} entry={entry} />
        ))}
      </ol>
      {entries.length === 0 ? null : (
        <div>
          <Button name="do" value="enter" weight="mark">
            {entries.length === 1 ? "Enter 1 car" : `Enter ${entries.length} cars`}
          </Button>
        </div>
      )}
    </section>
  );
}

const leave = { value: "leave", label: "Leave this line out" };
const none = { value: "none", label: "A car that is not on the register" };

function optionsOf({ match }: ListedEntry) {
  if (match.state === "matched")
    return [{ value: "", label: `${match.car.reference}, by ${match.car.because}` }, none, leave];
  if (match.state === "none") return [{ value: "", label: none.label }, leave];
  return [
    { value: "", label: "Settle which car it is" },
    ...match.candidates.map(({ car, reference, because }) => ({
      value: car,
      label: `${reference}: ${because}`,
    })),
    none,
    leave,
  ];
}

function Line({ entry }: { readonly entry: ListedEntry }) {
  const { line, number, car, mark, driver, group, className, remarks } = entry;
  const said = [car, mark, driver, group, className].filter((text) => text !== "").join(" · ");
  return (
    <li className="grid gap-x-6 gap-y-2 border-hair border-b py-3 sm:grid-cols-[4rem_1fr_20rem]">
      <span className="running-number">{number === "" ? "–" : number}</span>
      <div>
        <p>{said}</p>
        {remarks.map(({ kind, text }) => (
          <p key={kind} className="border-red border-l-4 pl-2 text-small">
            {text}
          </p>
        ))}
      </div>
      <ChoiceField name={`choices.${line}`} label={`Car on line ${line}`} options={optionsOf(entry)} />
    </li>
  );
}
