import type { RowProvenance, SourceLine } from "@trunnion/api";
import { ChoiceField, TextField } from "../../../components/form/form-field";
import { sourceKindOptions, trustOptions } from "./words";

export interface ProvenanceFieldsProps {
  readonly sources: readonly SourceLine[];
  readonly known?: RowProvenance;
}

/** Where the statement comes from, and how far it is trusted. */
export function ProvenanceFields({ sources, known }: ProvenanceFieldsProps) {
  const choices = [
    { value: "", label: "None, or a new one" },
    ...sources.map(({ id, title }) => ({ value: id, label: title })),
  ];
  return (
    <fieldset className="grid gap-4 border-hair border-t pt-3 sm:grid-cols-2">
      <legend className="float-left w-full font-semibold sm:col-span-2">How it is known</legend>
      <ChoiceField name="source" label="Source" value={known?.sourceId ?? ""} options={choices} />
      <TextField name="locus" label="Page or place" value={known?.locus ?? ""} maxLength={120} />
      <TextField
        name="newSource"
        label="New source"
        hint="Its title, where it is not in the list yet."
        maxLength={200}
      />
      <ChoiceField
        name="newSourceKind"
        label="Kind of the new source"
        value="other"
        options={sourceKindOptions}
      />
      <ChoiceField name="trust" label="Trust" value={known?.trust ?? "unknown"} options={trustOptions} />
    </fieldset>
  );
}
