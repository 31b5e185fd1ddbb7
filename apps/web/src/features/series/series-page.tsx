import type { SeriesPage as Page } from "@trunnion/api";
import { EditForm } from "../../components/form/edit-form";
import { TextField } from "../../components/form/form-field";
import { PageHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { sayLongDay } from "../../lib/day";
import { specificationPath } from "../../lib/path";
import { changeSeries } from "./action";
import { SeriesFields, seriesLabels } from "./series-field";

export interface SeriesPageProps {
  readonly club: ClubFace;
  readonly series: Page & { readonly texts: Readonly<Record<string, string>> };
  readonly mayEdit: boolean;
}

const cars = (count: number) => (count === 1 ? "1 car is" : `${count} cars are`);

/** A series' numbers, build dates and options: to read, and to change by who may. */
export function SeriesPage({ club, series, mayEdit }: SeriesPageProps) {
  const { texts, options, slug, name, marque } = series;
  const back = { href: specificationPath(club.slug, slug), label: "Back without saving" };
  const text = (field: string) => texts[field] ?? "";
  return (
    <>
      <PageHead
        title={`${name}: numbers, dates, options`}
        back={{ ...back, label: `Specification of ${name}` }}
        lead={`${marque.name}; ${cars(series.cars)} filed under it`}
      />
      {mayEdit ? (
        <EditForm
          action={changeSeries.bind(null, club.slug, slug)}
          submit="Save the series"
          version={series.version}
          cancel={back}
          labels={seriesLabels}
        >
          <p className="max-w-prose text-soft">
            A change that would leave a car outside is refused, with the cars it would leave out. Serials are
            read again from the chassis numbers.
          </p>
          {Object.entries(texts).map(([field, value]) => (
            <input key={field} type="hidden" name={`opened.${field}`} value={value} />
          ))}
          <SeriesFields
            texts={{
              name: text("name"),
              ordinal: text("ordinal"),
              numberPrefix: text("numberPrefix"),
              numberDigits: text("numberDigits"),
              firstSerial: text("firstSerial"),
              lastSerial: text("lastSerial"),
              numberSuffixes: text("numberSuffixes"),
              builtFrom: text("builtFrom"),
              builtTo: text("builtTo"),
              builtCount: text("builtCount"),
              options,
            }}
          />
          <TextField
            name="reason"
            label="Why"
            hint="For the journal: what shows that it was so."
            maxLength={500}
          />
        </EditForm>
      ) : (
        <p className="max-w-prose">
          Numbers {series.pattern.prefix}
          {series.pattern.first} to {series.pattern.prefix}
          {series.pattern.last}, built {sayLongDay(series.builtFrom)} to {sayLongDay(series.builtTo)}. A
          registrar or fleet manager can change this.
        </p>
      )}
    </>
  );
}
