import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import type { CarView } from "../condition/evaluate";
import { stateOn } from "../state/fold";
import { sampleValue } from "../value/sample";
import { fillWhy, whyProblems } from "./for-car";
import { starterChecks } from "./starter";
import { triggers } from "./starter/sample-trigger";

const source = { title: "Works manual", trust: "documented" } as const;

function viewOf(parts: Readonly<Record<string, string>>): CarView {
  const readings = Object.entries(parts).map(([characteristic, entered], sequence) => ({
    id: characteristic,
    on: "2026-04-01",
    sequence,
    characteristic,
    side: "whole" as const,
    value: sampleValue(characteristic, entered),
    source,
  }));
  const state = stateOn("2026-05-01", { entries: new Map(), asBuilt: [], modifications: [], readings });
  return {
    status: "inUse",
    basis: { options: [] },
    state,
    deviations: [],
    eventDay: "2026-05-01",
    book: builtInBook,
  };
}

const bolt = {
  "front.dropLink.spacerStack": "20 mm",
  "front.dropLink.boltGrade": "10.9",
  "front.dropLink.boltThread": "M10x1.5",
};
const whyOf = (id: string, parts: Readonly<Record<string, string>>) =>
  fillWhy(starterChecks.find((check) => check.id === id)?.why ?? "", viewOf(parts), builtInBook);

describe("why a check is on a sheet", () => {
  test("has the force that bends a link's bolt, worked out by beam theory", () => {
    // Cantilever of 20 mm + half of a 14 mm eye, M10 at its stress diameter d_s = 8.593 mm (ISO 898-1: 58.0 mm²), yield
    // of 10.9 = 940 MPa (ISO 898-1, table 3): √((32·F·e/(π·d³))² + 3·(4·F/(π·d²))²) = R_e gives F = 2.16 kN.
    const d = 8.593;
    const bending = (32 * 27) / (Math.PI * d ** 3);
    const shear = 4 / (Math.PI * d ** 2);
    const force = 940 / Math.sqrt(bending ** 2 + 3 * shear ** 2);
    expect(Math.round(force / 10)).toBe(216);
    const why = whyOf("front-link-spacers", bolt);
    expect(why).toContain("link stands 20 mm off its bracket");
    expect(why).toMatch(/the force that sets it: (2,?\s?1[56]\d N|2\.16 kN)/);
  });

  test("says what lacks where the figure cannot be worked out, and takes no default", () => {
    const { "front.dropLink.boltThread": _thread, ...without } = bolt;
    expect(whyOf("front-link-spacers", without)).toContain(
      "not worked out, lacks Front drop link bolt thread",
    );
  });

  test("of a tyre has its rim's share of its width and the verdict", () => {
    const why = whyOf("front-tyre-changed", {
      "tyres.front.size": "185/70 R 13",
      "wheels.front.size": "5.5 J x 13",
    });
    // 5.5 in over 185 mm is 75.5 %.
    expect(why).toContain("rim 76 % of the tyre's width: in the usual range");
  });

  test("of other steering arms asks for the hardpoints that the bump steer lacks", () => {
    expect(whyOf("steering-arm-changed", { "steering.arm.source": "from a van" })).toMatch(
      /bump steer not worked out, lacks .+ and \d+ more/,
    );
  });

  test.each([
    ["{front.camber} and {work:front.tyre.rim/verdict}", []],
    ["{front.cambre}", ["{front.cambre}"]],
    ["{work:front.tyre.rim/weight}", ["{work:front.tyre.rim/weight}"]],
    ["{work:no.such/verdict}", ["{work:no.such/verdict}"]],
    ["{front.camber:colour}", ["{front.camber:colour}"]],
    ["{front.camber", ["{front.camber"]],
  ])("%s cannot fill in %j", (why, unfit) => {
    expect(whyProblems(why, builtInBook)).toEqual(unfit);
  });
});

/** What the brief of the sheet names, each with the rule that brings it and the figures its reason must have. */
const named: readonly (readonly [string, readonly string[], readonly string[]])[] = [
  ["adjustable rod-end links", ["front-link-rod-ends", "rear-link-rod-ends"], ["dropLink.joint"]],
  [
    "a link on a stack of spacers",
    ["front-link-spacers", "rear-link-spacers"],
    ["dropLink.spacerStack", "dropLink.boltGrade", "link.bolt/yieldForce"],
  ],
  ["drilled or grooved discs", ["front-disc-drilled", "rear-disc-drilled"], ["disc.face", "disc.thickness"]],
  ["polyurethane bushes", ["polyurethane-bushes"], ["front.lowerArm.bush", "rear.lowerLink.bush"]],
  ["a thicker bar", ["front-bar-thicker", "rear-bar-thicker"], ["antiRollBar.diameter:stiffness"]],
  ["screwed ball joints", ["screwed-ball-joint"], ["front.upperArm.joint", "front.lowerArm.joint"]],
  [
    "mixed thread systems at calipers",
    ["front-caliper-thread", "rear-caliper-thread"],
    ["caliper.boltThread}", "caliper.boltThread:nominal"],
  ],
  [
    "non-original steering arms",
    ["steering-arm-changed"],
    ["steering.arm.source", "steering.arm.crackTested", "front.linkage/bumpSteer"],
  ],
  ["wheel spacers", ["front-wheel-spacer", "rear-wheel-spacer"], [".spacer}"]],
  ["longer studs", ["stud-engagement", "stud-thread-changed"], ["wheels.stud"]],
  [
    "tyres against rim width and load",
    ["front-tyre-changed", "rear-tyre-changed"],
    ["tyre.rim/rimShare", "tyre.rim/verdict", "tyre.load/loadVerdict"],
  ],
  ["tyres' date code", ["front-tyre-age", "rear-tyre-age"], [".manufactured}"]],
  ["camber outside limits or unproven", ["front-camber", "rear-camber"], [".camber}", ".camber:nominal}"]],
  ["toe outside limits or unproven", ["toe-outside"], ["front.toe}"]],
  ["castor outside limits or unproven", ["castor-outside"], ["front.castor}"]],
  ["a bar left off", ["front-bar-left-off", "rear-bar-left-off"], ["antiRollBar.diameter:nominal"]],
  ["readings too old", ["settings-old", "discs-measured-long-ago"], []],
  ["items that run out", ["harness-date", "seat-date", "extinguisher-due"], ["safety."]],
];

describe("what a scrutineer has to hear of by its name", () => {
  test.each(named)("%s: %j", (_, ids, figures) => {
    for (const id of ids) {
      const check = starterChecks.find((one) => one.id === id);
      expect(triggers.map((trigger) => trigger.check)).toContain(id);
      for (const figure of figures) expect(check?.why).toContain(figure);
    }
  });
});
