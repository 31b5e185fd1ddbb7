import type { CarForm } from "@trunnion/api";
import { describe, expect, test } from "vitest";
import { attribute, markup, readText, tags } from "../../../test/markup";
import { AdviceText } from "./number-fields";
import { RecordPage } from "./record-page";

const known = { sourceId: "", source: "Build sheet", locus: "p. 2", trust: "documented" } as const;
const car: CarForm = {
  reference: "S2-0421",
  chassis: "S2-0421",
  claim: 1,
  version: 3,
  openedAt: 9,
  series: "series-2",
  seriesName: "Series 2",
  built: "c. 1971",
  firstRegistered: "",
  remarks: "",
  options: ["OD"],
  identities: [
    { id: "a", kind: "registration", number: "AB 1", standing: "disputed", from: "1971", to: "", ...known },
  ],
  statuses: [{ id: "b", status: "laidUp", from: "", to: "", ...known }],
  notes: [],
  asBuilt: [
    {
      id: "c",
      characteristic: "front.camber",
      label: "Front camber",
      side: "left",
      entered: "0°10'",
      ...known,
    },
  ],
  keepers: [],
  sources: [],
  allSeries: [
    {
      id: "s",
      slug: "series-2",
      name: "Series 2",
      pattern: { series: "Series 2", prefix: "S2-", digits: 4, first: 1, last: 398, suffixes: [] },
      builtFrom: "1970-01-01",
      builtTo: "1972-05-31",
      options: [],
    },
  ],
};
const page = <RecordPage club={{ slug: "sandvaer", name: "Sandvær Register" }} car={car} />;

describe("a car's record", () => {
  test("says every row with its span, standing and where it is known from", () => {
    const text = readText(page);
    expect(text).toContain("AB 1 (1971 to now), disputed Build sheet, p. 2 (documented)");
    expect(text).toContain("Front camber, left 0°10'");
    expect(text).toContain("First registered not recorded");
  });

  test("leads from every row to its form, each link named by what it corrects", () => {
    const links = tags(markup(page), "a").map((tag) => attribute(tag, "href"));
    expect(links).toContain("/club/sandvaer/car/S2-0421/edit/identity?row=a");
    expect(links).toContain("/club/sandvaer/car/S2-0421/edit/as-built?characteristic=front.camber");
    expect(readText(page)).toContain("Correct AB 1");
  });

  test("explains a number that does not fit, without a script", () => {
    expect(readText(page)).toContain(
      "0421 lies above the last of Series 2, which is 0398. Could be meant: S2-0241 (two digits exchanged).",
    );
  });
});

describe("advice on a number", () => {
  test("asks for one, says that it fits, or what is wrong and what could be meant", () => {
    expect(readText(<AdviceText advice={{ fits: [], proposals: [] }} typed=" " />)).toContain(
      "Write the number",
    );
    expect(readText(<AdviceText advice={{ fits: ["s"], proposals: [], serial: 7 }} typed="S2-0007" />)).toBe(
      "The number fits the series.",
    );
    const advice = { fits: [], problem: "X fits no series of this club", proposals: [] };
    expect(readText(<AdviceText advice={advice} typed="X" />)).toContain("Nothing near it fits either.");
  });
});
