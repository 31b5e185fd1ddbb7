import type { PartForm } from "@trunnion/api";
import {
  assemblies,
  assemblyLabels,
  partFeatureKinds,
  partFeatureWords,
  partFitStandings,
  partFitWords,
  partKinds,
  partKindWords,
} from "@trunnion/register";
import { EditForm } from "../../components/form/edit-form";
import { ChoiceField, TextArea, TextField, TickField } from "../../components/form/form-field";
import { PageHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { partPath, partsPath } from "../../lib/path";
import { ProvenanceFields } from "../car/edit/provenance-fields";
import { addPart, changePart } from "./action";

/** Empty rows to write further features and spans in. */
const SPARE_FEATURES = 4;
const SPARE_FITS = 1;

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
const labels = {
  assembly: "Assembly",
  place: "Place",
  name: "Name",
  kind: "Kind",
  origin: "Donor or maker",
  partNumber: "Part number",
};

/** The form of a part there is, or of a new one. */
export function PartFormPage({ club, form }: { readonly club: ClubFace; readonly form: PartForm }) {
  const { part } = form;
  const opened: Readonly<Record<string, string>> = form.opened ?? {};
  const back = part
    ? { href: partPath(club.slug, part.slug), label: part.name }
    : { href: partsPath(club.slug), label: "Parts" };
  return (
    <>
      <PageHead title={part ? "Change the part" : "Add a part"} back={back} />
      <EditForm
        action={part ? changePart.bind(null, club.slug, part.slug) : addPart.bind(null, club.slug)}
        submit={part ? "Save the part" : "Add the part"}
        cancel={{ ...back, label: "Back without saving" }}
        labels={labels}
        {...(part ? { version: part.version } : {})}
      >
        {Object.entries(opened).map(([field, value]) => (
          <input key={field} type="hidden" name={`opened.${field}`} value={value} />
        ))}
        <What form={form} />
        <Fits form={form} />
        <Features form={form} />
        <TextArea
          name="note"
          label="Note"
          value={part?.note ?? ""}
          rows={3}
          maxLength={2_000}
          hint="No personal data: every member reads it."
        />
        <ProvenanceFields
          sources={form.sources}
          {...(part
            ? {
                known: { sourceId: part.sourceId, source: part.source, locus: part.locus, trust: part.trust },
              }
            : {})}
        />
      </EditForm>
    </>
  );
}

function What({ form: { part, places } }: { readonly form: PartForm }) {
  return (
    <>
      <datalist id="places">
        {places.map((place) => (
          <option key={place} value={place} />
        ))}
      </datalist>
      <div className="grid gap-4 sm:grid-cols-2">
        <ChoiceField
          name="assembly"
          label="Assembly"
          value={part?.assembly ?? "frontSuspension"}
          options={assemblies.map((one) => ({ value: one, label: assemblyLabels[one] }))}
        />
        <TextField
          name="place"
          label="Place"
          value={part?.place ?? ""}
          list="places"
          maxLength={80}
          required
          hint="Where it sits: parts of one place stand in for one another. Front caliper."
        />
        <TextField
          name="name"
          label="Name"
          value={part?.name ?? ""}
          maxLength={120}
          required
          hint="What it is."
        />
        <ChoiceField
          name="kind"
          label="Kind"
          value={part?.kind ?? "donor"}
          options={partKinds.map((one) => ({ value: one, label: capital(partKindWords[one]) }))}
        />
        <TextField
          name="origin"
          label="Donor or maker"
          value={part?.origin ?? ""}
          maxLength={160}
          hint="The donor car and its years, or who makes it."
        />
        <TextField name="partNumber" label="Part number" value={part?.partNumber ?? ""} maxLength={60} />
      </div>
    </>
  );
}

function Fits({ form: { part, series } }: { readonly form: PartForm }) {
  const known = part?.fits ?? [];
  const unsaid = series.filter(({ slug }) => !known.some((fit) => fit.series === slug));
  const empty = { standing: "", serialFrom: undefined, serialTo: undefined, note: "" } as const;
  const spare = Array.from({ length: SPARE_FITS }, () => ({ ...empty, series: series[0]?.slug ?? "" }));
  const rows = [...known, ...unsaid.map(({ slug }) => ({ ...empty, series: slug })), ...spare];
  return (
    <fieldset className="grid gap-2">
      <legend className="pb-2 text-lead">What it fits</legend>
      {rows.map((fit, index) => (
        <div
          // biome-ignore lint/suspicious/noArrayIndexKey: rows are told apart by their place only
          key={index}
          className="grid grid-cols-2 gap-x-4 gap-y-2 border-hair border-t py-3 sm:grid-cols-4"
        >
          <ChoiceField
            name={`fits.${index}.series`}
            label={`Series, row ${index + 1}`}
            value={fit.series}
            options={series.map(({ slug, name }) => ({ value: slug, label: name }))}
          />
          <ChoiceField
            name={`fits.${index}.standing`}
            label={`How it goes, row ${index + 1}`}
            value={fit.standing}
            options={[
              { value: "", label: "Nothing said" },
              ...partFitStandings.map((one) => ({ value: one, label: capital(partFitWords[one]) })),
            ]}
          />
          <TextField
            name={`fits.${index}.serialFrom`}
            label={`From serial, row ${index + 1}`}
            value={fit.serialFrom === undefined ? "" : String(fit.serialFrom)}
            inputMode="numeric"
            maxLength={9}
          />
          <TextField
            name={`fits.${index}.serialTo`}
            label={`To serial, row ${index + 1}`}
            value={fit.serialTo === undefined ? "" : String(fit.serialTo)}
            inputMode="numeric"
            maxLength={9}
          />
          <div className="col-span-2 sm:col-span-4">
            <TextField
              name={`fits.${index}.note`}
              label={`What to alter, or why not, row ${index + 1}`}
              value={fit.note ?? ""}
              maxLength={300}
            />
          </div>
        </div>
      ))}
    </fieldset>
  );
}

function Features({ form: { part, characteristics } }: { readonly form: PartForm }) {
  const spare = Array.from({ length: SPARE_FEATURES }, () => undefined);
  const rows = [...(part?.features ?? []), ...spare];
  return (
    <fieldset className="grid gap-2">
      <legend className="pb-2 text-lead">What matters about it</legend>
      <p className="max-w-prose text-small text-soft">
        Threads, lengths, offsets, stops: what decides whether it goes with its neighbours. By a name of the
        dictionary, or by the spot on the part, which its neighbour's row must name alike: bolt to upright.
      </p>
      <datalist id="characteristics">
        {characteristics.map((label) => (
          <option key={label} value={label} />
        ))}
      </datalist>
      {rows.map((feature, index) => (
        <div
          // biome-ignore lint/suspicious/noArrayIndexKey: rows are told apart by their place only
          key={index}
          className="grid gap-x-4 gap-y-2 border-hair border-t py-3 sm:grid-cols-[2fr_1fr_1fr]"
        >
          <TextField
            name={`features.${index}.about`}
            label={`What, row ${index + 1}`}
            value={feature?.label ?? ""}
            list="characteristics"
            maxLength={120}
          />
          <ChoiceField
            name={`features.${index}.kind`}
            label={`Kind, row ${index + 1}`}
            value={feature?.kind ?? "characteristic"}
            options={partFeatureKinds.map((one) => ({ value: one, label: capital(partFeatureWords[one]) }))}
          />
          <TextField
            name={`features.${index}.value`}
            label={`Value, row ${index + 1}`}
            value={feature?.value.entered ?? ""}
            maxLength={200}
          />
          <div className="sm:col-span-3">
            <TickField
              name={`features.${index}.tells`}
              label={`A car recorded with this has the part, row ${index + 1}`}
              ticked={feature?.tells ?? false}
            />
          </div>
        </div>
      ))}
    </fieldset>
  );
}
