import type { CarForm } from "@trunnion/api";
import type { ReactNode } from "react";
import { EditForm } from "../../../components/form/edit-form";
import { TextField } from "../../../components/form/form-field";
import { PageHead, SectionHead } from "../../../components/page-head";
import { Plate } from "../../../components/plate";
import type { ClubFace } from "../../../components/shell/shell";
import type { FormAction } from "../../../lib/form-state";
import { editCarPath } from "../../../lib/path";
import { Opened } from "./opened";
import { reasonHint } from "./words";

/** What the form over a part of a record gets. */
export interface PartProps {
  readonly club: ClubFace;
  readonly car: CarForm;
  /** Id of the row to correct; left out for a new one. */
  readonly row?: string;
}

export interface RecordFrameProps extends Pick<PartProps, "club" | "car"> {
  readonly title: string;
  /** Section of the record one comes back to. */
  readonly section: string;
  readonly children: ReactNode;
}

/** A page over one part of a car's record. */
export function RecordFrame({ club, car, title, section, children }: RecordFrameProps) {
  return (
    <>
      <PageHead
        title={title}
        back={{ href: editCarPath(club.slug, car.reference, section), label: "The car's record" }}
        plate={<Plate chassis={car.chassis} />}
      />
      <div className="grid gap-12">{children}</div>
    </>
  );
}

export interface RecordFormProps extends Pick<PartProps, "club" | "car"> {
  readonly action: FormAction;
  readonly submit: string;
  readonly section: string;
  /** What the fields say now, by name; empty for a new row. */
  readonly opened: Readonly<Record<string, string>>;
  readonly labels: Readonly<Record<string, string>>;
  readonly children: ReactNode;
}

/** A form over one part of a car's record, with the version it was opened at and the reason for the journal. */
export function RecordForm({ club, car, section, opened, children, labels, ...form }: RecordFormProps) {
  const back = editCarPath(club.slug, car.reference, section);
  return (
    <EditForm
      {...form}
      version={car.version}
      cancel={{ href: back, label: "Back, without saving" }}
      labels={{ source: "Source", newSource: "New source", locus: "Page or place", reason: "Why", ...labels }}
    >
      <Opened at={car.openedAt} fields={opened} />
      {children}
      <TextField name="reason" label="Why" hint={reasonHint} maxLength={500} />
    </EditForm>
  );
}

export interface RemoveFormProps extends Pick<PartProps, "club" | "car"> {
  readonly action: FormAction;
  /** Heading and button: "Take this mark away". */
  readonly title: string;
  readonly text: string;
}

/** Takes a wrong row away: apart from the form above, and said plainly. */
export function RemoveForm({ car, action, title, text }: RemoveFormProps) {
  return (
    <section aria-labelledby="take-away">
      <SectionHead id="take-away" title="Wrong altogether?" />
      <p className="max-w-prose pb-4">{text}</p>
      <EditForm action={action} submit={title} weight="plain" version={car.version}>
        <input type="hidden" name="openedAt" value={car.openedAt} />
        <RemoveReason />
      </EditForm>
    </section>
  );
}

function RemoveReason() {
  // A form of its own on the page, so a field of its own: two may not share a name's id.
  return (
    <div className="grid gap-1">
      <label htmlFor="take-away-reason" className="font-semibold">
        Why
      </label>
      <input id="take-away-reason" name="reason" maxLength={500} className="field" />
      <p className="text-fine text-soft">{reasonHint}</p>
    </div>
  );
}
