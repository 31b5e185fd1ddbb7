import type { CarTimeline } from "@trunnion/api";
import { builtInBook, parseValue, type Value } from "@trunnion/register";
import { describe, expect, test } from "vitest";
import { readText } from "../../test/markup";
import { TimelinePage } from "./timeline-page";

function value(key: string, entered: string): Value {
  const characteristic = builtInBook.find(key);
  const parsed = characteristic && parseValue(characteristic, entered);
  if (!parsed?.ok) throw new Error(`${key} does not read ${entered}`);
  return parsed.value;
}

const source = { title: "Owner's letter", trust: "stated" } as const;
const bar = "rear.antiRollBar.diameter";
const in1998 = { text: "1998", earliest: "1998-01-01", latest: "1998-12-31" };

const timeline: CarTimeline = {
  club: {
    id: "1",
    slug: "ours",
    name: "Our Register",
    kind: "ownersClub",
    unitSystem: "metric",
    sideWords: "nearOff",
  },
  today: "2026-11-25",
  car: { reference: "M1-030", chassis: "M1-030", claim: 1, version: 4, marque: "Hølmvik", series: "Mark 1" },
  known: true,
  specification: 2,
  keepersShown: false,
  lost: [],
  events: [
    {
      id: "built",
      lane: "life",
      title: "Built",
      when: { text: "c. 1971", earliest: "1970-01-01", latest: "1972-12-31" },
    },
    {
      id: "m",
      lane: "work",
      title: "Modified",
      when: in1998,
      details: [{ label: "Rear bar", before: "14 mm", after: "16 mm" }],
    },
    { id: "s", lane: "life", title: "In use", when: in1998, until: "open" },
  ],
  data: {
    entries: [
      {
        id: "e",
        characteristic: "front.camber",
        side: "left",
        nominal: value("front.camber", "0°00'"),
        limits: { lower: -0.0087266, upper: 0.0087266 },
        alternatives: [],
        applicability: {},
        source,
      },
    ],
    asBuilt: [{ id: "b", characteristic: bar, side: "whole", value: value(bar, "14 mm"), source }],
    modifications: [
      {
        id: "m",
        on: "1998-12-31",
        earliest: "1998-01-01",
        said: "1998",
        sequence: 1,
        changes: [{ characteristic: bar, side: "whole", after: value(bar, "16 mm") }],
        source,
      },
    ],
    readings: [
      {
        id: "r",
        on: "2020-05-01",
        sequence: 1,
        characteristic: "front.camber",
        side: "left",
        value: value("front.camber", "-0°28'"),
        expandedUncertainty: 0.00174533,
        source,
      },
    ],
    own: [],
  },
};

const shown = (on: string, more: Partial<CarTimeline> = {}, since?: string) =>
  readText(
    <TimelinePage
      timeline={{ ...timeline, ...more }}
      on={on}
      unread={[]}
      {...(since === undefined ? {} : { since })}
    />,
  );

describe("a car's life", () => {
  test("shows the state of the day asked for, as the server sends it", () => {
    expect(shown("1997-12-31")).toContain("On 31 December 1997 1 of 1 characteristic compared differed");
    expect(shown("2020-05-01")).toMatch(/Front camber , nearside .* -0°28' ± 6', k = 2 .* cannot tell/);
  });

  test("says what the dates leave open on a day within them, and nothing of it behind them", () => {
    const within = shown("1998-06-01");
    expect(within).toContain("Rear anti-roll bar diameter: 14 mm, or 16 mm (1998)");
    expect(within).toContain("perhaps: the dates leave it open");
    expect(shown("1999-01-01")).not.toContain("What the dates leave open");
  });

  test("never says a day that the record does not know", () => {
    for (const on of ["1998-06-01", "1999-01-01", "2026-11-25"]) {
      expect(shown(on, {}, "1990-01-01")).not.toMatch(/31 Dec/);
    }
  });

  test("tells what changed between two days, whichever is named first", () => {
    const told = "Rear anti-roll bar diameter: 14 mm → to 16 mm".replace("→ ", "");
    expect(shown("1999-01-01", {}, "1990-01-01").replace(/\s+/g, " ")).toContain(told);
    expect(shown("1990-01-01", {}, "1999-01-01")).toContain(
      "What changed between 1 January 1990 and 1 January 1999",
    );
  });

  test("says of a day before it was built that it was not, or perhaps not", () => {
    expect(shown("1969-12-31")).toContain("Not built yet on this day");
    expect(shown("1971-06-01")).toContain("Perhaps not built yet on this day: it was built c. 1971.");
  });

  test("says whose belief it is, and what of it cannot be told any more", () => {
    const text = shown("1999-01-01", { believed: "2026-05-03", lost: ["the remarks"], keepersShown: true });
    expect(text).toContain("As the record stood at the end of 3 May 2026 (UTC)");
    expect(text).toContain("not kept by the journal as it was then: the remarks");
    expect(text).toContain("Keepers are shown as the record has them now");
    expect(shown("1999-01-01", { believed: "2019-05-03", known: false })).toContain(
      "did not know of this car on 3 May 2019",
    );
  });

  test("has the whole life in words", () => {
    expect(shown("2026-11-25")).toMatch(/c\. 1971 Built .* 1998 Modified Rear bar: 14 mm .*16 mm/);
  });
});
