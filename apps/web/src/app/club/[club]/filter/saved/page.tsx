import { characteristicBook, sayCondition } from "@trunnion/register";
import type { Metadata } from "next";
import { SavedPage } from "../../../../../features/filter/saved-page";
import { clubPage } from "../../../../../lib/club-page";
import { savedFiltersPath } from "../../../../../lib/path";

export const metadata: Metadata = { title: "Saved filters" };

export default async function Page({ params }: { readonly params: Promise<{ readonly club: string }> }) {
  const { club } = await params;
  return clubPage({
    club,
    at: "register",
    path: savedFiltersPath(club),
    load: async (api) => ({
      filters: await api.filter.list({ club }),
      form: await api.filter.form({ club }),
    }),
    draw: ({ filters, form }, face) => {
      const book = characteristicBook(form.own);
      const series = new Map(form.series.map(({ slug, name }) => [slug, name]));
      const words = { series, system: form.system, day: "today" };
      return (
        <SavedPage
          club={face}
          filters={filters.map((one) => ({ ...one, said: sayCondition(one.condition, book, words) }))}
        />
      );
    },
  });
}
