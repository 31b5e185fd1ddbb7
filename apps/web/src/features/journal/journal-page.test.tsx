import type { JournalItem } from "@trunnion/api";
import { describe, expect, test } from "vitest";
import { attribute, markup, readText, tags } from "../../test/markup";
import { JournalPage, type JournalPageProps } from "./journal-page";

const club = { slug: "sandvaer", name: "Sandvær Register" };
const item: JournalItem = {
  sequence: 412,
  at: "2026-11-25T16:48:41.000Z",
  who: { personId: "1", name: "Ragnhild Tveitås", left: true },
  action: "car.correct",
  what: "Facts of the car corrected",
  car: { reference: "S2-0145~2", chassis: "S2-0145" },
  reason: "the build book, p. 12",
  changes: [
    { label: "Built", before: "1971", after: "3/72" },
    { label: "Remarks", before: "blue", after: "" },
  ],
};
const page = { items: [item], persons: [item.who], actions: [{ action: item.action, what: item.what }] };

const shown = (more: Partial<JournalPageProps> = {}) => (
  <JournalPage club={club} page={page} query={{}} errors={{}} {...more} />
);

describe("the journal", () => {
  test("says who, what, why, before and after, and names who has left", () => {
    const text = readText(shown());
    expect(text).toContain("Ragnhild Tveitås (left the club)");
    expect(text).toContain("Facts of the car corrected: S2-0145");
    expect(text).toContain("the build book, p. 12");
    expect(text).toContain("Built: 1971 to 3/72");
    expect(text).toContain("Remarks: blue to nothing");
  });

  test("has its times in UTC in the markup, and says so where no script runs", () => {
    const html = markup(shown());
    expect(attribute(tags(html, "time")[0], "dateTime")).toBe("2026-11-25T16:48:41.000Z");
    expect(readText(shown())).toContain("25 Nov 2026, 16:48");
    expect(readText(shown())).toContain("Times are in UTC.");
  });

  test("leads to the car by its reference and to the entry as it is kept", () => {
    const links = tags(markup(shown()), "a").map((tag) => attribute(tag, "href"));
    expect(links).toContain("/club/sandvaer/car/S2-0145~2");
    expect(links).toContain("/club/sandvaer/journal/412");
  });

  test("goes on and back with what it is narrowed to", () => {
    const query = { person: "none", before: "500", check: "chain" };
    const links = tags(markup(shown({ query, page: { ...page, next: 400 } })), "a").map((tag) =>
      attribute(tag, "href"),
    );
    expect(links).toContain("/club/sandvaer/journal?person=none&amp;before=400");
    expect(links).toContain("/club/sandvaer/journal?person=none");
  });

  test("of one car asks for no car and names none at each entry", () => {
    const html = markup(shown({ car: "S2-0145~2" }));
    expect(html).not.toContain('name="car"');
    expect(tags(html, "form").map((tag) => attribute(tag, "action"))).toEqual([
      "/club/sandvaer/car/S2-0145~2/journal",
    ]);
    expect(readText(shown({ car: "S2-0145~2" }))).not.toContain("corrected: ");
  });

  test("tells of a chain that holds, and where one does not", () => {
    const last = { sequence: 412, at: item.at, hash: "ab".repeat(32) };
    const holds = readText(shown({ chain: { report: { breaks: [], from: 1, last } } }));
    expect(holds).toContain("The chain holds: 412 entries, from the first to no. 412.");
    expect(holds).toContain("ab".repeat(32));
    const report = { breaks: [{ sequence: 7, problem: "link" as const }], from: 1, last };
    const broken = readText(shown({ chain: { report } }));
    expect(broken).toContain("The chain does not hold.");
    expect(broken).toContain("Entry 7 : it does not follow the entry before it");
    expect(readText(shown({ chain: { report: { breaks: [], from: 213, last } } }))).toContain(
      "200 entries, from no. 213 to no. 412.",
    );
  });
});
