import type { EntryForm, EventForm } from "@trunnion/api";
import { EditForm } from "../../components/form/edit-form";
import { ChoiceField, TextField, TickField } from "../../components/form/form-field";
import { PageHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { entryPath, eventPath, eventsPath, ruleSetsPath } from "../../lib/path";
import { Opened } from "../car/edit/opened";
import { changeEntry, changeEvent, enterCar, planEvent } from "./action";

const eventLabels = { name: "Name", slug: "Short name", on: "Day", venue: "Venue", ruleSet: "Rule set" };

export interface EventFormPageProps {
  readonly club: ClubFace;
  readonly form: EventForm;
}

/** The form of a new event, or of one there is. */
export function EventFormPage({ club, form: { event, ruleSets } }: EventFormPageProps) {
  const back = event
    ? { href: eventPath(club.slug, event.slug), label: event.name }
    : { href: eventsPath(club.slug), label: "Events" };
  const action = event ? changeEvent.bind(null, club.slug, event.slug) : planEvent.bind(null, club.slug);
  return (
    <>
      <PageHead title={event ? "Change the event" : "Plan an event"} back={back} />
      {ruleSets.length === 0 ? (
        <p className="max-w-prose">
          The club has no rule set to check cars by.{" "}
          <a href={ruleSetsPath(club.slug)}>Look at the rule sets</a> first.
        </p>
      ) : (
        <EditForm
          action={action}
          submit={event ? "Save the event" : "Plan the event"}
          {...(event ? { version: event.version } : {})}
          cancel={{ ...back, label: "Back without saving" }}
          labels={eventLabels}
        >
          {event ? (
            <Opened fields={{ name: event.name, on: event.on, venue: event.venue, ruleSet: event.ruleSet }} />
          ) : null}
          <TextField name="name" label="Name" value={event?.name ?? ""} maxLength={120} required />
          {event ? null : (
            <TextField
              name="slug"
              label="Short name"
              maxLength={60}
              hint="For addresses. Empty: made of name and year."
            />
          )}
          <TextField name="on" label="Day" type="date" value={event?.on ?? ""} required />
          <TextField name="venue" label="Venue" value={event?.venue ?? ""} maxLength={120} required />
          <ChoiceField
            name="ruleSet"
            label="Rule set"
            value={event?.ruleSetId ?? ruleSets[0]?.id ?? ""}
            options={ruleSets.map(({ id, label }) => ({ value: id, label }))}
            hint="The organiser's current regulations decide: compare it with them. With another rule set, entries lose their class."
          />
        </EditForm>
      )}
    </>
  );
}

const entryLabels = {
  number: "Running number",
  car: "Car",
  describedAs: "What car it is",
  driver: "Driver",
  group: "Group",
  eventClass: "Class",
};

export interface EntryFormPageProps {
  readonly club: ClubFace;
  readonly event: { readonly slug: string; readonly name: string };
  readonly classes: EventForm["classes"];
  /** The entry to change; left out for a new one. */
  readonly entry?: EntryForm["entry"];
}

/** The form of one entry by hand. */
export function EntryFormPage({ club, event, classes, entry }: EntryFormPageProps) {
  const texts = entry?.texts;
  const withdrawn = texts?.withdrawn === "yes";
  const back =
    texts && !withdrawn
      ? { href: entryPath(club.slug, event.slug, texts.number), label: `Number ${texts.number}` }
      : { href: eventPath(club.slug, event.slug), label: event.name };
  const action = entry
    ? changeEntry.bind(null, club.slug, { event: event.slug, entry: entry.id })
    : enterCar.bind(null, club.slug, event.slug);
  return (
    <>
      <PageHead title={entry ? "Change the entry" : "Enter a car"} back={back} />
      <EditForm
        action={action}
        submit={entry ? "Save the entry" : "Enter the car"}
        {...(entry ? { version: entry.version } : {})}
        cancel={{ ...back, label: "Back without saving" }}
        labels={entryLabels}
      >
        {texts ? <Opened fields={texts} /> : null}
        <TextField name="number" label="Running number" value={texts?.number ?? ""} maxLength={12} required />
        <TextField
          name="car"
          label="Car"
          value={texts?.car ?? ""}
          maxLength={60}
          autoComplete="off"
          hint="Chassis number or registration mark. Empty for a car that is not on the register."
        />
        <TextField
          name="describedAs"
          label="What car it is"
          value={texts?.describedAs ?? ""}
          maxLength={200}
          hint="For a car that is not on the register: its sheet has the checks every car gets."
        />
        <TextField
          name="driver"
          label="Driver"
          value={texts?.driver ?? ""}
          maxLength={120}
          autoComplete="off"
        />
        <TextField name="group" label="Group" value={texts?.group ?? ""} maxLength={60} />
        <ChoiceField
          name="eventClass"
          label="Class"
          value={entry?.classId ?? ""}
          options={[
            { value: "", label: "No class" },
            ...classes.map(({ id, label }) => ({ value: id, label })),
          ]}
        />
        {entry ? (
          <TickField
            name="withdrawn"
            label="Withdrawn"
            ticked={withdrawn}
            hint={
              withdrawn
                ? "It is in no list and has no sheet. Untick it to take it back."
                : "It leaves the lists and the stack of sheets; what was found stays."
            }
          />
        ) : null}
        {entry && entry.records > 0 ? (
          <p className="max-w-prose text-small">
            {entry.records} findings and decisions are of this entry. Named to another car, they and what was
            measured go to that one.
          </p>
        ) : null}
      </EditForm>
    </>
  );
}
