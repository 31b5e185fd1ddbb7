import { readFileSync } from "node:fs";
import { standings } from "@trunnion/register";
import { describe, expect, test } from "vitest";
import { attribute, markup, tags } from "../../test/markup";
import { type Hatch, HatchDefinitions, hatches, hatchFill } from "./hatch";
import { standingHatch } from "./histogram";
import { shareHatches } from "./year-plot";

type Rgb = readonly [number, number, number];
type Matrix = readonly [Rgb, Rgb, Rgb];

/**
 * How a colour is seen without one kind of cone, over linear RGB: Machado, Oliveira and Fernandes, "A Physiologically-based
 * Model for Simulation of Color Vision Deficiency", IEEE TVCG 15 (6), 2009, severity 1.0. Without any cones only the
 * luminance is left: Y of IEC 61966-2-1 (sRGB).
 */
const sights: Readonly<Record<string, Matrix>> = {
  "every cone": [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
  achromatopsia: [
    [0.2126, 0.7152, 0.0722],
    [0.2126, 0.7152, 0.0722],
    [0.2126, 0.7152, 0.0722],
  ],
};

/** IEC 61966-2-1: what a stored channel is in light. */
const linear = (channel: number) =>
  channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;

function lightOf(hex: string): Rgb {
  const whole = hex.length === 4 ? hex.replace(/[\da-f]/gi, "$&$&") : hex;
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) =>
    linear(Number.parseInt(whole.slice(at, at + 2), 16) / 255),
  );
  return [r, g, b];
}

const times = (row: Rgb, [r, g, b]: Rgb) => Math.min(1, Math.max(0, row[0] * r + row[1] * g + row[2] * b));

/** Contrast of two colours as somebody sees them: WCAG 2.2, "contrast ratio". */
function contrast(one: string, other: string, sight: Matrix): number {
  const luminance = (hex: string) => {
    const light = lightOf(hex);
    const [r, g, b] = [times(sight[0], light), times(sight[1], light), times(sight[2], light)];
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

/** The colours of the light, the dark and the printed page, as the style sheet has them. */
function palettes(): readonly (readonly [string, Readonly<Record<string, string>>])[] {
  const css = readFileSync(new URL("../../app/style/token.css", import.meta.url), "utf8");
  const roots = [...css.matchAll(/:root\s*\{([^}]*)\}/g)].map(([, body = ""]) =>
    Object.fromEntries(
      [...body.matchAll(/--([a-z-]+):\s*(#[\da-f]+);/g)].map(([, name, hex]) => [name, hex]),
    ),
  );
  return ["light", "dark", "print"].map((name, place) => [name, roots[place] ?? {}]);
}

const ways = palettes().flatMap(([theme, colours]) =>
  Object.entries(sights).map(([sight, matrix]) => ({ theme, sight, colours, matrix })),
);

describe.each(ways)("on the $theme page, seen with $sight", ({ colours, matrix }) => {
  const against = (name: string, ground: string) =>
    contrast(colours[name] ?? "", colours[ground] ?? "", matrix);

  // WCAG 2.2, 1.4.11: what is needed to understand a graphic stands out 3 : 1 from what it lies beside.
  test.each(["red", "soft", "ink"])("an area or outline in %s stands out from the paper", (name) => {
    expect(against(name, "paper")).toBeGreaterThanOrEqual(3);
  });

  // WCAG 2.2, 1.4.3.
  test.each(["ink", "soft", "red"])("text in %s can be read on the paper", (name) => {
    expect(against(name, "paper")).toBeGreaterThanOrEqual(4.5);
  });
});

/** Where a filling lets paper through: two that do not differ there would differ by colour alone. */
const solid = (hatch: Hatch) => hatch === "mark" || hatch === "ink";

describe.each([
  ["how values stand", standings.map((standing) => standingHatch[standing])],
  ["kinds over the years", shareHatches],
] as const)("the fillings of a plot of %s", (_, used) => {
  test("differ by what is drawn, so that none is told from another by its colour", () => {
    expect(new Set(used).size).toBe(used.length);
    expect(used.filter(solid)).toHaveLength(1);
  });
});

test("every filling is outlined in ink, and each pattern is another drawing", () => {
  for (const hatch of hatches) expect(hatchFill("x", hatch).className).toContain("stroke-ink");
  const html = markup(<HatchDefinitions id="x" />);
  const patterns = html.split("<pattern ").slice(1);
  const drawings = patterns.map((pattern) => pattern.replace(/id="[^"]*"/, ""));
  expect(new Set(drawings).size).toBe(patterns.length);
  expect(tags(html, "pattern").map((tag) => attribute(tag, "id"))).toEqual(["x-lines", "x-dots", "x-cross"]);
});
