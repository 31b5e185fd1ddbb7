import {
  type Assembly,
  assemblies,
  assemblyLabels,
  type ExtractPart,
  extractPartLabels,
  extractParts,
} from "@trunnion/register";
import { EditForm } from "../../components/form/edit-form";
import { TextArea, TickField } from "../../components/form/form-field";
import { PageHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { deskPath, extractPath } from "../../lib/path";
import { chooseExtract } from "./extract-action";

export interface ExtractSettingsProps {
  readonly club: ClubFace;
  readonly choice: {
    readonly open: boolean;
    readonly parts: readonly ExtractPart[];
    readonly characteristics: readonly string[];
    readonly series: readonly string[];
    readonly lead: string;
    readonly version: number;
  };
  readonly series: readonly { readonly slug: string; readonly name: string }[];
  readonly characteristics: readonly {
    readonly key: string;
    readonly label: string;
    readonly assembly: Assembly;
  }[];
}

/** What a club shows to everybody: off until somebody turns it on. */
export function ExtractSettings({ club, choice, series, characteristics }: ExtractSettingsProps) {
  const address = extractPath(club.slug);
  return (
    <>
      <PageHead
        title="Public extract"
        back={{ href: deskPath(club.slug), label: "Desk" }}
        lead={
          choice.open ? <a href={address}>Everybody can see {address}</a> : "Nothing is shown to the public."
        }
      />
      <p className="max-w-prose pb-6">
        Never shown, whatever is ticked: keepers, registration marks, remarks, the free history, drivers and
        photographs. A value can still point at somebody where only one car has it; tick with that in mind.
      </p>
      <EditForm action={chooseExtract.bind(null, club.slug)} submit="Save" version={choice.version}>
        <TickField
          name="open"
          label="Show the extract to everybody"
          ticked={choice.open}
          hint={`At ${address}, without signing in; search engines may list it.`}
        />
        <TextArea
          name="lead"
          label="At the head of the extract"
          value={choice.lead}
          rows={3}
          maxLength={600}
          hint="A sentence or two: what this register is, whom to write to (an office, not a person)."
        />
        <fieldset className="grid gap-1">
          <legend className="font-semibold">Of each car, besides number and series</legend>
          {extractParts.map((part) => (
            <TickField
              key={part}
              name="parts[]"
              of={part}
              label={extractPartLabels[part].label}
              hint={extractPartLabels[part].hint}
              ticked={choice.parts.includes(part)}
            />
          ))}
        </fieldset>
        <fieldset className="grid gap-1">
          <legend className="font-semibold">Series</legend>
          <p className="text-fine text-soft">None ticked: all of them.</p>
          {series.map(({ slug, name }) => (
            <TickField
              key={slug}
              name="series[]"
              of={slug}
              label={name}
              ticked={choice.series.includes(slug)}
            />
          ))}
        </fieldset>
        <fieldset className="grid gap-2">
          <legend className="font-semibold">Characteristics, as built and as last recorded</legend>
          <p className="text-fine text-soft">At most 60.</p>
          {assemblies.map((assembly) => {
            const here = characteristics.filter((one) => one.assembly === assembly);
            const ticked = here.filter(({ key }) => choice.characteristics.includes(key)).length;
            if (here.length === 0) return null;
            return (
              <details key={assembly} open={ticked > 0} className="border-hair border-b pb-2">
                <summary className="min-h-11 cursor-pointer py-2">
                  {assemblyLabels[assembly]}
                  <span className="text-soft">, {ticked === 0 ? "none" : ticked} shown</span>
                </summary>
                <div className="grid gap-x-8 sm:grid-cols-2">
                  {here.map(({ key, label }) => (
                    <TickField
                      key={key}
                      name="characteristics[]"
                      of={key}
                      label={label}
                      ticked={choice.characteristics.includes(key)}
                    />
                  ))}
                </div>
              </details>
            );
          })}
        </fieldset>
      </EditForm>
    </>
  );
}
