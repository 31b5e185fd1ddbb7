import { knownText } from "@trunnion/register";
import { describe, expect, test } from "vitest";
import { markup, readText, tags } from "../test/markup";
import { Figure } from "./figure";
import { type ValueRow, ValueTable } from "./value-table";

const row: ValueRow = {
  key: "rear.antiRollBar.diameter",
  label: "Rear anti-roll bar diameter",
  leader: 3,
  specified: "16 mm",
  actual: "19.05 mm",
  difference: "+3.05 mm, ×1.19",
  verdict: "differentPart",
  verdictText: "different part",
  known: {
    origin: "modification",
    since: "April 2024",
    source: { title: "Invoice", locus: "no. 118", trust: "documented" },
  },
};

describe("state against specification", () => {
  test("is a table whose rows are named by the characteristic", () => {
    const html = markup(<ValueTable caption="Rear suspension" rows={[row]} />);
    expect(tags(html, "th").filter((tag) => tag.includes('scope="row"'))).toHaveLength(1);
    expect(tags(html, "th").filter((tag) => tag.includes('scope="col"'))).toHaveLength(7);
    expect(html).toContain("<caption");
  });

  test("a row says what is specified, what is there, the verdict and how it is known", () => {
    expect(readText(<ValueTable caption="" rows={[row]} />)).toMatch(
      /Rear anti-roll bar diameter 16 mm 19 \.05 mm \+3\.05 mm, ×1\.19 different part Modified April 2024: Invoice, no\. 118 \(documented\)$/,
    );
  });

  test("not recorded and not specified are said, never left blank", () => {
    const { known: _, ...unknown } = { ...row, specified: "", actual: "", verdict: "notRecorded" as const };
    expect(readText(<ValueTable caption="" rows={[unknown]} />)).toContain("not specified not recorded");
    expect(readText(<ValueTable caption="" rows={[unknown]} baseline="asBuilt" />)).toContain(
      "not known not recorded",
    );
  });

  test("the unit always stands with its figure, in a lighter weight", () => {
    expect(markup(<Figure text="28 psi" />)).toContain('<span class="font-light">\u00A0psi</span>');
    expect(markup(<Figure text="Rubber bush" />)).toBe("<span>Rubber bush</span>");
  });
});

describe("how a figure is known", () => {
  test.each([
    [{ source: { title: "Build card", trust: "inferred" as const } }, "Build card (inferred)"],
    [
      {
        origin: "reading" as const,
        source: { title: "Setting sheet", locus: "", trust: "documented" as const },
      },
      "Seen or measured: Setting sheet (documented)",
    ],
    [
      { since: "c. 1988", source: { title: "A letter", trust: "stated" as const } },
      "C. 1988: A letter (stated)",
    ],
  ])("%j", (known, text) => {
    expect(knownText(known)).toBe(text);
  });
});
