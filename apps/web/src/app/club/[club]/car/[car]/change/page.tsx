import type { Metadata } from "next";
import { beginChange } from "../../../../../../features/submission/action";
import { StartPage } from "../../../../../../features/submission/start-page";
import { fromSegment, withoutControls } from "../../../../../../lib/address";
import { leadersOf } from "../../../../../../lib/assembly";
import { clubPage } from "../../../../../../lib/club-page";
import { startChangePath } from "../../../../../../lib/path";

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly car: string }>;
  readonly searchParams: Promise<{
    readonly assembly?: string;
    readonly find?: string;
    readonly ticked?: string;
  }>;
}

export const metadata: Metadata = { title: "Record a change" };

export default async function Page({ params, searchParams }: Segments) {
  const segments = await params;
  const { club } = segments;
  const car = fromSegment(segments.car);
  const { assembly = "", find = "", ticked = "" } = await searchParams;
  const shown = {
    assembly: withoutControls(String(assembly)).slice(0, 60),
    find: withoutControls(String(find)).slice(0, 80),
    ticked: withoutControls(String(ticked)).slice(0, 4_000),
  };
  return clubPage({
    club,
    at: "garage",
    path: startChangePath(club, car, shown),
    load: async (api) => ({ page: await api.car.page({ club, car }), form: await api.filter.form({ club }) }),
    draw: ({ page, form }) => {
      const { reference, chassis } = page.car;
      return (
        <StartPage
          club={club}
          car={{ reference, chassis }}
          leaders={leadersOf({})}
          own={form.own}
          units={form.system}
          shown={shown}
          action={beginChange.bind(null, { club, car: reference, clientKey: crypto.randomUUID() })}
        />
      );
    },
  });
}
