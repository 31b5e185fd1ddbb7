import { describe, expect, test } from "vitest";
import { markup, readText } from "../test/markup";
import { AssemblyStrip, Differing } from "./assembly-strip";

const assemblies = [
  { leader: 1, label: "Front suspension", deviations: 2 },
  { leader: 2, label: "Steering", deviations: 0 },
  { leader: 3, label: "Brakes", deviations: 40 },
];

describe("the strip of a car in a list", () => {
  test("reads out where the car differs", () => {
    expect(markup(<AssemblyStrip assemblies={assemblies} />)).toContain(
      'aria-label="Differs at front suspension (2), brakes (40)"',
    );
    expect(markup(<AssemblyStrip assemblies={assemblies.slice(1, 2)} />)).toContain(
      "Nothing known to differ",
    );
  });

  test("a stroke never leaves its row, however many differ", () => {
    const rises = [...markup(<AssemblyStrip assemblies={assemblies} />).matchAll(/v-([\d.]+)/g)].map(
      ([, rise]) => Number(rise),
    );
    expect(Math.max(...rises)).toBeLessThanOrEqual(18);
  });

  test("the number is said in words too", () => {
    expect(readText(<Differing deviating={1} />)).toBe("1 deviation");
    expect(readText(<Differing deviating={12} />)).toBe("12 deviations");
  });
});
