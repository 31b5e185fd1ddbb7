import { describe, expect, test } from "vitest";
import { attribute, markup, readText, tags } from "../test/markup";
import { Plate, SmallPlate } from "./plate";

describe("the plate", () => {
  test("carries the number as plain text that selects whole", () => {
    const html = markup(<Plate chassis="S2-0417" maker="Sandvær" />);
    expect(html).toMatch(/select-all[^>]*>.*S2-0417/s);
    expect(readText(<Plate chassis="S2-0417" />)).toContain("Chassis number S2-0417");
  });

  test("offers to copy only where scripts run", () => {
    const html = markup(<Plate chassis="S2-0417" />);
    expect(html).toMatch(/class="scriptless:hidden[^"]*"><button type="button"/);
    expect(readText(<Plate chassis="S2-0417" />)).toContain("Copy chassis number S2-0417");
  });

  test("is a link in lists where it leads somewhere", () => {
    expect(attribute(tags(markup(<SmallPlate chassis="S2-0417" href="/car" />), "a")[0], "href")).toBe(
      "/car",
    );
    expect(tags(markup(<SmallPlate chassis="S2-0417" />), "a")).toHaveLength(0);
  });
});
