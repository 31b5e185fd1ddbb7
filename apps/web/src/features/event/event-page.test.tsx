import { describe, expect, test } from "vitest";
import { attribute, markup, readText, tags } from "../../test/markup";
import { EventPage, type EventPageProps } from "./event-page";
import { EventsPage } from "./events-page";

const club = { slug: "grusvik", name: "Grusvik Track School" };
const event = {
  slug: "autumn",
  name: "Autumn day",
  on: "26 September 2026",
  venue: "Short course",
  entryCount: 2,
  ruleSet: "Club rules, 2026",
};
const props: EventPageProps = {
  club,
  event,
  entries: [
    {
      id: "1",
      runningNumber: "7A",
      driver: "Åse",
      group: "A",
      className: "",
      describedAs: "",
      car: { reference: "S2-0417", chassis: "S2-0417", series: "Series 2 coupé", deviating: 0 },
    },
    {
      id: "2",
      runningNumber: "12",
      driver: "",
      group: "",
      className: "1 Standard",
      describedAs: "Kit car, blue",
    },
  ],
  cautions: [],
};

describe("what an event's page says besides", () => {
  const [first, ...rest] = props.entries;
  if (!first) throw new Error("an event without entries");
  const html = markup(
    <EventPage
      {...props}
      entries={[
        {
          ...first,
          className: "B Road tyres",
          standing: {
            id: "b",
            code: "B",
            name: "Road tyres",
            truth: "no",
            obstacles: [
              {
                truth: "no",
                asks: "front wheel size is as specified",
                has: "6 J x 14",
                factory: "4.5 J x 13",
              },
              { truth: "unknown", asks: "tyres are road tyres", has: "not recorded", factory: "" },
            ],
          },
          open: ["C"],
        },
        ...rest,
      ]}
      withdrawn={[{ number: "31", car: "S2-0009" }]}
      devices={[
        {
          id: "1",
          by: "Åse",
          takenAt: "2026-09-26T06:00:00.000Z",
          heardAt: "2026-09-26T08:12:00.000Z",
          made: 57,
          held: 3,
          clockOff: 0,
        },
        {
          id: "2",
          by: "",
          takenAt: "2026-09-26T06:00:00.000Z",
          heardAt: "2026-09-26T09:30:00.000Z",
          made: 8,
          held: 0,
          clockOff: -31_536_000,
        },
      ]}
    />,
  );
  const text = html
    .replace(/<[^>]+>/g, "")
    .replaceAll("&#x27;", "'")
    .replace(/\s+/g, " ");

  test("why a car may not be in its class, what to put back, and which class it may enter", () => {
    expect(text).toContain(
      "may not enter. Asks that front wheel size is as specified; the car: 6 J x 14; put back: 4.5 J x 13",
    );
    expect(text).toContain("and 1 more. It may enter C.");
  });

  test("which phone had not sent everything when it was last heard of, and whose clock is out", () => {
    expect(text).toContain(
      "s phone, last heard of 2026-09-26 08:12 UTC: it had made 57 and held 3 not sent. They are missing here.",
    );
    expect(text).toContain(
      "A phone, last heard of 2026-09-26 09:30 UTC: it had made 8 and held nothing unsent.",
    );
    expect(text).toContain("Its clock is 365 days behind");
  });

  test("what was withdrawn, with the way to take it back", () => {
    expect(html).toContain('href="/club/grusvik/event/autumn/entry/31/change"');
  });
});

describe("an event's page", () => {
  const html = markup(<EventPage {...props} />);

  test("prints the stack by a form that needs no script, on the paper chosen", () => {
    const form = tags(html, "form")[0];
    expect(attribute(form, "action")).toBe("/api/club/grusvik/event/autumn/sheets.pdf");
    expect(attribute(form, "method")).toBe("get");
    expect(html).toContain(">Print 2 sheets</button>");
    expect(
      tags(html, "input")
        .filter((tag) => tag.includes("checked"))
        .map((tag) => attribute(tag, "value")),
    ).toEqual(["A4", "plain"]);
  });

  test("links one sheet per entry by its running number", () => {
    expect(html).toContain('href="/api/club/grusvik/event/autumn/sheets.pdf?number=7A&amp;paper=A4"');
    expect(html).toContain('aria-label="Print the sheet of number 12"');
  });

  test("keeps the order it was given, and says which car is not on the register", () => {
    const text = readText(<EventPage {...props} />);
    expect(text.indexOf("7A")).toBeLessThan(text.indexOf("Kit car, blue"));
    expect(text).toContain("Kit car, blue not on the register");
  });

  test("offers no print where nobody is entered", () => {
    const empty = <EventPage {...props} entries={[]} />;
    expect(tags(markup(empty), "form")).toHaveLength(0);
    expect(readText(empty)).toContain("there is no sheet to print");
  });

  test("one car is one sheet", () => {
    expect(markup(<EventPage {...props} entries={props.entries.slice(0, 1)} />)).toContain(
      ">Print 1 sheet</button>",
    );
  });
});

test("the list says what is coming, and that nothing is", () => {
  expect(readText(<EventsPage club={club} ahead={[event]} past={[]} />)).toContain(
    "Autumn day Short course. Checked by Club rules, 2026. 2 cars entered",
  );
  expect(readText(<EventsPage club={club} ahead={[]} past={[event]} />)).toContain("No event is coming up.");
});
