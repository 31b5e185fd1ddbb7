import type { FeedPage } from "@trunnion/api";
import { sayDay } from "@trunnion/register";
import { EditForm } from "../../components/form/edit-form";
import { ChoiceField, TextField } from "../../components/form/form-field";
import { PageHead, SectionHead } from "../../components/page-head";
import { duePath } from "../../lib/path";
import { makeFeed, takeFeedBack } from "./feed-action";

/** Private links by which the reader's own calendar program reads what falls due. */
export function FeedsPage({ page, takenBack }: { readonly page: FeedPage; readonly takenBack: boolean }) {
  const { club, feeds, series } = page;
  return (
    <>
      <PageHead title="In your own calendar" back={{ href: duePath(club.slug), label: "What falls due" }} />
      <div className="grid max-w-3xl grid-cols-1 gap-10">
        <p className="max-w-prose">
          A calendar program can read what falls due by a private link, again and again. It shows chassis
          numbers, what falls due and the day: no keeper, no driver, no remark. Whoever has the link can read
          it, so send it to nobody; take it back and it is dead at once.
        </p>
        <section aria-labelledby="new" className="grid gap-3">
          <SectionHead id="new" title="Make a link" />
          <EditForm action={makeFeed.bind(null, club.slug)} submit="Make the link">
            <TextField
              name="label"
              label="Which calendar will read it"
              maxLength={60}
              hint="Workshop calendar, say."
            />
            <ChoiceField
              name="series"
              label="Cars of"
              value=""
              options={[
                { value: "", label: "every series" },
                ...series.map(({ slug, name }) => ({ value: slug, label: name })),
              ]}
            />
          </EditForm>
        </section>
        <section aria-labelledby="own" className="grid gap-2">
          <SectionHead id="own" title="Links of yours" />
          {takenBack ? (
            <p role="status" className="max-w-prose border-ink border-l-4 py-1 pl-4 font-semibold">
              Taken back: whoever reads it is told that there is no such calendar.
            </p>
          ) : null}
          {feeds.length === 0 ? (
            <p>None.</p>
          ) : (
            <ul>
              {feeds.map(({ id, label, series: of, madeAt, lastReadAt }) => (
                <li key={id} className="grid gap-2 border-hair border-b py-4">
                  <p>
                    <strong>{label}</strong>
                    {of === undefined ? "" : `, ${of}`}
                    <span className="block text-small text-soft">
                      Made on {sayDay(madeAt.slice(0, 10))};{" "}
                      {lastReadAt === undefined
                        ? "never read yet"
                        : `last read on ${sayDay(lastReadAt.slice(0, 10))}`}
                      .
                    </span>
                  </p>
                  <EditForm
                    action={takeFeedBack.bind(null, club.slug, id)}
                    submit={`Take “${label}” back`}
                    weight="plain"
                  >
                    {null}
                  </EditForm>
                </li>
              ))}
            </ul>
          )}
        </section>
      </div>
    </>
  );
}
