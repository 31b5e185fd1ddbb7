import { EditForm } from "../../components/form/edit-form";
import { ChoiceField, TextField } from "../../components/form/form-field";
import { PageHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { newMarquePath, specificationsPath } from "../../lib/path";
import { addMarque, addSeries } from "./action";
import { emptySeries, SeriesFields, seriesLabels } from "./series-field";

const shortHint = "For addresses and files: series-2. Empty: made of the name. It stays for good.";

/** The form of a new marque. */
export function NewMarquePage({ club }: { readonly club: ClubFace }) {
  const back = { href: specificationsPath(club.slug), label: "Specifications" };
  return (
    <>
      <PageHead title="Add a marque" back={back} lead="A maker's name the club looks after" />
      <EditForm
        action={addMarque.bind(null, club.slug)}
        submit="Add the marque"
        cancel={{ ...back, label: "Back without saving" }}
        labels={seriesLabels}
      >
        <TextField name="name" label="Name" maxLength={80} required />
        <TextField name="slug" label="Short name" maxLength={40} hint={shortHint} />
      </EditForm>
    </>
  );
}

export interface NewSeriesPageProps {
  readonly club: ClubFace;
  readonly marques: readonly { readonly slug: string; readonly name: string }[];
}

/** The form of a new series; it needs a marque to belong to. */
export function NewSeriesPage({ club, marques }: NewSeriesPageProps) {
  const back = { href: specificationsPath(club.slug), label: "Specifications" };
  return (
    <>
      <PageHead
        title="Add a series"
        back={back}
        lead="A marque's model and mark, with its numbers and build dates"
      />
      {marques.length === 0 ? (
        <p>
          The club has no marque yet. <a href={newMarquePath(club.slug)}>Add a marque</a> first.
        </p>
      ) : (
        <EditForm
          action={addSeries.bind(null, club.slug)}
          submit="Add the series"
          cancel={{ ...back, label: "Back without saving" }}
          labels={seriesLabels}
        >
          <ChoiceField
            name="marque"
            label="Marque"
            options={marques.map(({ slug, name }) => ({ value: slug, label: name }))}
          />
          <TextField name="slug" label="Short name" maxLength={40} hint={shortHint} />
          <SeriesFields texts={emptySeries} />
        </EditForm>
      )}
    </>
  );
}
