import type { EntryChangeLine, EntryLine } from "@trunnion/register";
import { describe, expect, test } from "vitest";
import { markup, readText, tags } from "../../test/markup";
import { ChangeList, sayChanges } from "./change-list";
import { EntryTable } from "./entry-table";
import { MoveSection } from "./move-section";

const sideWords = { left: "Nearside", right: "Offside" };

const change: EntryChangeLine = {
  kind: "changed",
  characteristic: "front.camber",
  label: "Front camber",
  assembly: "settings",
  side: "left",
  cars: "from M1-061",
  fields: [
    { label: "Upper limit", before: "0°30'", after: "0°45'" },
    { label: "Note", before: "", after: "bulletin 7" },
  ],
};

describe("differences between specifications", () => {
  test("are read as what was and what is, and nothing is not struck out", () => {
    const text = readText(<ChangeList changes={[change]} sideWords={sideWords} />);
    expect(text).toContain("Front camber , nearside Settings; from M1-061");
    expect(text).toMatch(/Upper limit 0°30' .*becomes 0°45'/);
    expect(text).toMatch(/Note nothing .*becomes bulletin 7/);
    expect(tags(markup(<ChangeList changes={[change]} sideWords={sideWords} />), "del")).toHaveLength(1);
  });

  test("in nothing but the source stand apart, folded away", () => {
    const fields = [{ label: "Source", before: "Works manual, A", after: "Works manual, B" }];
    const other = { ...change, label: "Rear camber", fields };
    const html = markup(<ChangeList changes={[change, other]} sideWords={sideWords} />);
    expect(html.indexOf("Front camber")).toBeLessThan(html.indexOf("<details"));
    expect(html.indexOf("Rear camber")).toBeGreaterThan(html.indexOf("<details"));
    expect(html).toContain("1 entry differs in its source only");
    expect(sayChanges([change, other])).toBe("1 changed, 1 in their source only");
  });

  test("are counted by what happened, and none is said", () => {
    expect(sayChanges([change, { kind: "added" }, { kind: "changed" }])).toBe("1 added, 2 changed");
    expect(sayChanges([])).toBe("nothing differs");
  });
});

describe("verdicts that move", () => {
  test("are told with their counts, and how many are not listed", () => {
    const line = {
      car: "M1-010",
      chassis: "M1-010",
      claim: 1,
      characteristic: "front.camber",
      label: "Front camber",
      side: "right",
      actual: "0°40'",
      specifiedBefore: "0° (-0°30' to 0°30')",
      specifiedAfter: "",
      before: "outsideLimits",
    } as const;
    const counts = [{ before: "outsideLimits", after: undefined, count: 3 }] as const;
    const moves = { cars: 9, carsMoved: 3, total: 3, counts, lines: [line] };
    const text = readText(<MoveSection club="ours" moves={moves} sideWords={sideWords} />);
    expect(text).toContain("Looked at 9 cars: 3 verdicts move, on 3 cars.");
    expect(text).toContain("3 outside limits becomes not specified");
    expect(text).toContain("Front camber, offside");
    expect(text).toContain("The first 1 of 3 are listed");
    const still = { ...moves, total: 0, carsMoved: 0, counts: [], lines: [] };
    expect(readText(<MoveSection club="ours" moves={still} sideWords={sideWords} />)).toContain(
      "no verdict moves",
    );
  });
});

describe("entries of a specification", () => {
  const line: EntryLine = {
    id: "e1",
    characteristic: "front.antiRollBar.diameter",
    label: "Front anti-roll bar diameter",
    assembly: "frontSuspension",
    setting: false,
    nominal: "9/16 in",
    limits: "14 mm to 15 mm",
    bracket: { lower: 0.014, upper: 0.015 },
    alternatives: [
      {
        role: "acceptedSubstitute",
        roleText: "accepted substitute",
        value: "18 mm",
        note: "nearest still made",
        source: { title: "Bulletin 7", trust: "stated" },
      },
    ],
    cars: "",
    source: { title: "Works manual", locus: "section A", trust: "documented" },
    note: "",
  };

  test("say nominal, limits, what may stand in, for which cars and how it is known", () => {
    const text = readText(<EntryTable caption="Front suspension" lines={[line]} sideWords={sideWords} />);
    expect(text).toContain("14 mm to 15 mm");
    expect(text).toContain("18 mm accepted substitute nearest still made Bulletin 7 (stated)");
    expect(text).toContain("every car");
    expect(text).toContain("Works manual, section A (documented)");
    expect(text).not.toContain("Change");
  });

  test("lead to their form in a draft, each link by the characteristic's name", () => {
    const table = (
      <EntryTable caption="x" lines={[line]} sideWords={sideWords} change={(id) => `/entry/${id}`} />
    );
    expect(markup(table)).toContain('href="/entry/e1"');
    expect(readText(table)).toContain("Change Front anti-roll bar diameter");
  });
});
