import type { SavedFilter } from "@trunnion/api";
import { EditForm } from "../../components/form/edit-form";
import { TextField, TickField } from "../../components/form/form-field";
import { PageHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { filterPath, registerPath } from "../../lib/path";
import { changeFilter, removeFilter } from "./filter-action";

export interface SavedPageProps {
  readonly club: ClubFace;
  readonly filters: readonly (SavedFilter & { readonly said: string })[];
}

/** The filters one keeps and those the club shares. */
export function SavedPage({ club, filters }: SavedPageProps) {
  return (
    <>
      <PageHead title="Saved filters" back={{ href: registerPath(club.slug), label: "Register" }} />
      {filters.length === 0 ? (
        <p className="max-w-prose">
          None yet. <a href={filterPath(club.slug)}>Put a condition together</a>, look at its cars, and save
          it there.
        </p>
      ) : (
        <ul className="border-hair border-t">
          {filters.map((filter) => (
            <li key={filter.id} className="grid gap-1 border-hair border-b py-4">
              <h2 className="text-lead">
                <a href={registerPath(club.slug, { filter: filter.name })}>{filter.name}</a>
              </h2>
              <p className="max-w-prose">Cars of which {filter.said}.</p>
              <p className="text-small text-soft">{standing(filter)}</p>
              {filter.mayChange ? <Change club={club.slug} filter={filter} /> : null}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

function standing({ own, shared }: SavedFilter): string {
  if (!own) return "Shared by another member.";
  return shared ? "Yours, shared with the club." : "Yours alone.";
}

function Change({ club, filter }: { readonly club: string; readonly filter: SavedFilter }) {
  const { id, name, shared } = filter;
  return (
    <details className="print:hidden">
      <summary className="inline-min-h-11 py-2">Change or take away “{name}”</summary>
      <div className="grid gap-8 py-3">
        <EditForm action={changeFilter.bind(null, club, id)} submit="Save">
          <TextField name="name" label="Name" value={name} maxLength={60} />
          <TickField name="shared" label="Shared with the club" ticked={shared} />
        </EditForm>
        <EditForm action={removeFilter.bind(null, club, id)} submit={`Take “${name}” away`}>
          <p className="text-small">Cars and their records stay as they are.</p>
        </EditForm>
      </div>
    </details>
  );
}
