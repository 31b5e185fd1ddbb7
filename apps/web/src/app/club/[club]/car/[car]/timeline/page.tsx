import type { Metadata } from "next";
import { askedDay } from "../../../../../../features/timeline/handle";
import { TimelinePage } from "../../../../../../features/timeline/timeline-page";
import { fromSegment, withoutControls } from "../../../../../../lib/address";
import { clubPage } from "../../../../../../lib/club-page";
import { timelinePath } from "../../../../../../lib/path";

type Asked = Readonly<Record<string, string | readonly string[] | undefined>>;

interface Segments {
  readonly params: Promise<{ readonly club: string; readonly car: string }>;
  readonly searchParams: Promise<Asked>;
}

export async function generateMetadata({ params }: Segments): Promise<Metadata> {
  return { title: `${fromSegment((await params).car)}, the whole life` };
}

const names = ["on", "since", "believed"] as const;

/** Longest a written day may be. */
const LONGEST = 40;

export default async function Page({ params, searchParams }: Segments) {
  const { club, ...segments } = await params;
  const car = fromSegment(segments.car);
  const query = await searchParams;
  const today = new Date().toISOString().slice(0, 10);
  const written = names.flatMap((name) => {
    const given = query[name];
    const text = typeof given === "string" ? withoutControls(given).slice(0, LONGEST) : "";
    return text === "" ? [] : [{ name, text, day: askedDay(text, "1900-01-01", today) }];
  });
  const asked = Object.fromEntries(
    written.flatMap(({ name, day }) => (day === undefined ? [] : [[name, day]])),
  );
  const { on, since, believed } = asked as Partial<Record<(typeof names)[number], string>>;
  return clubPage({
    club,
    at: "register",
    path: timelinePath(club, car, asked),
    load: (api) => api.timeline.of({ club, car, ...(believed === undefined ? {} : { believed }) }),
    draw: (timeline) => (
      <TimelinePage
        timeline={timeline}
        on={on ?? timeline.today}
        {...(since === undefined ? {} : { since })}
        unread={written.flatMap(({ text, day }) => (day === undefined ? text : []))}
      />
    ),
  });
}
