import type { SeriesDetail, SourceLine } from "@trunnion/api";
import { EditForm } from "../../../components/form/edit-form";
import { ChoiceField, TextArea, TextField } from "../../../components/form/form-field";
import { PageHead } from "../../../components/page-head";
import type { ClubFace } from "../../../components/shell/shell";
import { addCarPath, registerPath } from "../../../lib/path";
import { addCar } from "./action";
import { NumberFields } from "./number-fields";
import { ProvenanceFields } from "./provenance-fields";
import { dateHint, reasonHint, statusOptions } from "./words";

export interface AddPageProps {
  readonly club: ClubFace;
  readonly series: readonly SeriesDetail[];
  readonly sources: readonly SourceLine[];
  /** What was typed before a number was checked without a script. */
  readonly typed: Readonly<Record<string, string | undefined>>;
}

/** The form that adds a car: who it is and what is known at once. */
export function AddPage({ club, series, sources, typed }: AddPageProps) {
  const text = (name: string) => ({ name, value: typed[name] ?? "", maxLength: 60 });
  return (
    <>
      <PageHead
        title="Add a car"
        back={{ href: registerPath(club.slug), label: "Register" }}
        lead="What is not known stays empty; the rest is added to its record afterwards."
      />
      <EditForm
        action={addCar.bind(null, club.slug)}
        submit="Add the car"
        cancel={{ href: registerPath(club.slug), label: "Back, without adding" }}
        labels={{
          chassis: "Chassis number",
          series: "Series",
          built: "Built",
          firstRegistered: "First registered",
          since: "Since",
          newSource: "New source",
        }}
      >
        <NumberFields
          series={series}
          chassis={typed.chassis ?? ""}
          chosen={typed.series ?? ""}
          checkPath={addCarPath(club.slug)}
        />
        <div className="grid gap-4 sm:grid-cols-2">
          <TextField label="Built" hint={dateHint} {...text("built")} />
          <TextField label="First registered" {...text("firstRegistered")} />
          <TextField label="Engine number" {...text("engine")} />
          <TextField label="Registration mark" {...text("registration")} />
          <ChoiceField
            name="status"
            label="Status"
            value={typed.status ?? "unknown"}
            options={statusOptions}
          />
          <TextField label="Since" {...text("since")} />
        </div>
        <TextArea name="remarks" label="Remarks" value={typed.remarks ?? ""} maxLength={4_000} />
        <ProvenanceFields sources={sources} />
        <TextField name="reason" label="Why" hint={reasonHint} maxLength={500} />
      </EditForm>
    </>
  );
}
