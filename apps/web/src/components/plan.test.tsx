import { assemblies } from "@trunnion/register";
import { describe, expect, test } from "vitest";
import { attribute, markup, readText, tags } from "../test/markup";
import { type Leader, Plan, PlanLegend } from "./plan";
import { leaderPlaces } from "./plan-frame";

const leaders: readonly Leader[] = assemblies.map((assembly, index) => ({
  leader: index + 1,
  assembly,
  label: assembly,
  deviations: index === 3 ? 2 : 0,
}));

describe("the plan", () => {
  test("has a place for every assembly of the dictionary", () => {
    expect(Object.keys(leaderPlaces).toSorted()).toEqual([...assemblies].toSorted());
  });

  test("is a list of links to the assemblies, each saying how many deviations", () => {
    const links = tags(markup(<Plan leaders={leaders} />), "a");
    expect(links).toHaveLength(assemblies.length);
    expect(attribute(links[3], "href")).toBe("#assembly-brakes");
    expect(attribute(links[3], "aria-label")).toBe("4 brakes: 2 deviations");
    expect(attribute(links[0], "aria-label")).toBe("1 frontSuspension: none known");
  });

  test("keeps leaders' numbers far enough apart for a thumb", () => {
    const from = Object.values(leaderPlaces).map((place) => place.from);
    for (const [index, [x, y]] of from.entries()) {
      for (const [otherX, otherY] of from.slice(index + 1)) {
        expect(Math.hypot(x - otherX, y - otherY)).toBeGreaterThanOrEqual(30);
      }
    }
  });

  test("leaves an assembly of the club's own to the legend, which leaves out none", () => {
    const own = [...leaders, { leader: 16, assembly: "own:roof rack", label: "Roof rack", deviations: 1 }];
    expect(tags(markup(<Plan leaders={own} />), "a")).toHaveLength(assemblies.length);
    expect(readText(<PlanLegend leaders={own} />)).toContain("16 Roof rack 1 deviation");
    expect(tags(markup(<PlanLegend leaders={own} />), "li")).toHaveLength(16);
  });

  test("leads elsewhere when told to", () => {
    const html = markup(<Plan leaders={leaders} linkTo={({ leader }) => `/x/${leader}`} />);
    expect(attribute(tags(html, "a")[1], "href")).toBe("/x/2");
  });
});
