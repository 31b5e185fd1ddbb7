import type { DraftEntry } from "@trunnion/api";
import { assemblies, assemblyLabels, type Characteristic } from "@trunnion/register";
import { useId } from "react";
import { Button } from "../../components/button";
import { EditForm } from "../../components/form/edit-form";
import { ChoiceField, TextArea, TextField } from "../../components/form/form-field";
import { PageHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { sideWords } from "../../lib/assembly";
import { specificationEntryPath, specificationPath } from "../../lib/path";
import { putEntry, removeEntry } from "./action";
import { AlternativeFields, alternativeLabels } from "./alternative-field";
import { sourceKindOptions, trustOptions } from "./source-words";
import { ValueField } from "./value-field";

export interface EntryPageProps {
  readonly club: ClubFace;
  readonly page: DraftEntry;
}

/** The form of one entry of a draft; before a characteristic is chosen, the choice of one. */
export function EntryPage({ club, page }: EntryPageProps) {
  const { series, version, characteristic, entry } = page;
  const back = {
    href: specificationPath(club.slug, series.slug, version),
    label: `Draft, version ${version}`,
  };
  const title = characteristic === undefined ? "Add an entry" : characteristic.label;
  return (
    <>
      <PageHead
        title={title}
        back={back}
        lead={`${entry === undefined ? "New entry" : "Entry"} in the specification of ${series.name}`}
      />
      {characteristic === undefined ? (
        <ChooseCharacteristic club={club.slug} page={page} />
      ) : (
        <EntryForm club={club.slug} page={page} characteristic={characteristic} />
      )}
    </>
  );
}

function ChooseCharacteristic({ club, page }: { readonly club: string; readonly page: DraftEntry }) {
  const id = useId();
  const { series, version, characteristics, text } = page;
  return (
    <form
      action={specificationEntryPath(club, { series: series.slug, version })}
      method="get"
      className="grid max-w-3xl gap-4"
    >
      {text.characteristic === "" ? null : (
        <p>There is no characteristic “{text.characteristic}” any more.</p>
      )}
      <div className="grid gap-1">
        <label htmlFor={id} className="font-semibold">
          Characteristic
        </label>
        <select id={id} name="characteristic" className="field">
          {assemblies.map((assembly) => (
            <optgroup key={assembly} label={assemblyLabels[assembly]}>
              {characteristics
                .filter((one) => one.assembly === assembly)
                .map(({ key, label }) => (
                  <option key={key} value={key}>
                    {label}
                  </option>
                ))}
            </optgroup>
          ))}
        </select>
      </div>
      <p>
        <Button>Go on</Button>
      </p>
    </form>
  );
}

interface EntryFormProps {
  readonly club: string;
  readonly page: DraftEntry;
  readonly characteristic: Characteristic;
}

const labels: Readonly<Record<string, string>> = {
  characteristic: "Characteristic",
  side: "Side",
  nominal: "Nominal",
  lower: "Lower limit",
  upper: "Upper limit",
  serialFrom: "Chassis from",
  serialTo: "Chassis to",
  builtFrom: "Built from",
  builtTo: "Built to",
  option: "Option",
  source: "Source",
  newSource: "A source that is not in the list",
  locus: "Page",
  trust: "Trust",
  note: "Note",
};

function Opened({ opened }: { readonly opened: Readonly<Record<string, string>> }) {
  return Object.entries(opened).map(([field, text]) => (
    <input key={field} type="hidden" name={`opened.${field}`} value={text} />
  ));
}

function EntryForm({ club, page, characteristic }: EntryFormProps) {
  const { series, version, revision, entry, text, opened } = page;
  const draft = { series: series.slug, version };
  const back = { href: specificationPath(club, series.slug, version), label: "Back without saving" };
  return (
    <div className="grid gap-10">
      <EditForm
        action={putEntry.bind(null, club, { ...draft, ...(entry === undefined ? {} : { entry }) })}
        submit="Save the entry"
        version={revision}
        cancel={back}
        labels={{ ...labels, ...alternativeLabels(text.alternatives.length) }}
      >
        <p className="max-w-prose text-soft">{characteristic.help}</p>
        <input type="hidden" name="characteristic" value={characteristic.key} />
        <Opened opened={opened} />
        <Values page={page} characteristic={characteristic} />
        <AlternativeFields page={page} characteristic={characteristic} />
        <Applicability page={page} />
        <Sources page={page} />
      </EditForm>
      {entry === undefined ? null : (
        <details className="print:hidden max-w-3xl border-hair border-t pt-3">
          <summary>Take this entry out of the draft</summary>
          <div className="pt-4">
            <EditForm
              action={removeEntry.bind(null, club, { ...draft, entry })}
              submit="Take the entry out"
              version={revision}
            >
              <Opened opened={opened} />
            </EditForm>
          </div>
        </details>
      )}
    </div>
  );
}

function Values({ page, characteristic }: Omit<EntryFormProps, "club">) {
  const { text, club } = page;
  const words = sideWords[club.sideWords];
  return (
    <fieldset className="grid gap-4">
      <legend className="pb-2 text-lead">What was specified</legend>
      {characteristic.sided ? (
        <ChoiceField
          name="side"
          label="Side"
          value={text.side}
          options={[
            { value: "", label: "both alike" },
            { value: "left", label: words.left },
            { value: "right", label: words.right },
          ]}
        />
      ) : null}
      <ValueField name="nominal" label="Nominal" value={text.nominal} characteristic={characteristic} />
      {characteristic.kind === "quantity" ? (
        <div className="grid gap-4 sm:grid-cols-2">
          <TextField
            name="lower"
            label="Lower limit"
            value={text.lower}
            maxLength={80}
            hint="Included. Leave it empty where there is none."
          />
          <TextField name="upper" label="Upper limit" value={text.upper} maxLength={80} hint="Included." />
        </div>
      ) : null}
    </fieldset>
  );
}

function Applicability({ page }: Pick<EntryFormProps, "page">) {
  const { text, series } = page;
  const { pattern } = series;
  const example = `${pattern.prefix}${String(pattern.first).padStart(pattern.digits, "0")}`;
  return (
    <fieldset className="grid gap-4">
      <legend className="pb-2 text-lead">Which cars it holds for</legend>
      <p className="text-small text-soft">Everything left empty: every car of {series.name}.</p>
      <div className="grid gap-4 sm:grid-cols-2">
        <TextField
          name="serialFrom"
          label="Chassis from"
          value={text.serialFrom}
          maxLength={30}
          hint={`A serial, or the whole number: ${example}.`}
        />
        <TextField name="serialTo" label="Chassis to" value={text.serialTo} maxLength={30} hint="Included." />
        <TextField
          name="builtFrom"
          label="Built from"
          value={text.builtFrom}
          maxLength={40}
          hint="A day, month or year: 1971-03-12, 3/71, 1971."
        />
        <TextField name="builtTo" label="Built to" value={text.builtTo} maxLength={40} hint="Included." />
      </div>
      <ChoiceField
        name="option"
        label="Option the car was built with"
        value={text.option}
        options={[
          { value: "", label: "any, or none" },
          ...series.options.map(({ code, label }) => ({ value: code, label: `${code}: ${label}` })),
        ]}
      />
    </fieldset>
  );
}

function Sources({ page: { text, sources } }: Pick<EntryFormProps, "page">) {
  return (
    <fieldset className="grid gap-4">
      <legend className="pb-2 text-lead">How it is known</legend>
      <ChoiceField
        name="source"
        label="Source"
        value={text.source}
        options={[{ value: "", label: "none" }, ...sources.map((title) => ({ value: title, label: title }))]}
      />
      <div className="grid gap-4 sm:grid-cols-2">
        <TextField
          name="newSource"
          label="A source that is not in the list"
          maxLength={200}
          hint="Its title, as people know it; leave the choice above at none."
        />
        <ChoiceField name="newSourceKind" label="What it is" value="other" options={sourceKindOptions} />
        <TextField
          name="locus"
          label="Page"
          value={text.locus}
          maxLength={120}
          hint="Page, section or drawing."
        />
        <ChoiceField
          name="trust"
          label="Trust"
          value={text.trust === "" ? "unknown" : text.trust}
          options={trustOptions}
        />
      </div>
      <TextArea name="note" label="Note" value={text.note} maxLength={2_000} rows={3} />
    </fieldset>
  );
}
