import type { SetupPlanModel } from "@trunnion/register";
import { describe, expect, test } from "vitest";
import { outside, overlaps, readBack } from "../sample/read-back";
import { drawSetupPlan } from "./draw-setup-plan";

const reading = { camber: "-0.50°", castor: "4.07°", toe: "6' toe-in per side" };
const model: SetupPlanModel = {
  layoutVersion: 2,
  hash: "0123456789abcdef".repeat(4),
  preparedAt: "2026-11-25T18:30:00Z",
  club: "Sandvær Register",
  car: { chassis: "S2-0211", marque: "Sandvær", series: "Series 2" },
  wheel: "front nearside wheel",
  wanted: [
    { label: "Camber wanted", value: "-1°0'" },
    { label: "Castor wanted", value: "4°40'" },
  ],
  before: reading,
  steps: [
    { what: "Add 2 shims at upper arm shims (5 in all)", ...reading },
    { what: "Screw upper ball joint 1½ turns inboard", ...reading },
    { what: "Make track rod end ⅙ turn shorter", ...reading },
  ],
  left: { camber: "+2'", castor: "−1'", toe: "±0'" },
  sideEffects: [
    "Kingpin inclination +28'",
    "Scrub radius −1.2 mm",
    "Trail +3.4 mm",
    "Track, this wheel −0.8 mm",
    "Wheel forwards ±0 mm",
    "Roll-centre height +1.1 mm",
    "Toe change per 10 mm of bump +2' before, −3' after",
  ],
  verdict: "Every angle comes within its tolerance: camber 5', castor 15', toe 2'.",
  remarks: ["The target lies beyond the limit of the upper ball joint."],
  cautions: ["Settle the suspension and measure after each step, lock everything before the car moves."],
};

describe("a set-up plan for the garage", () => {
  test.each(["A4", "Letter"] as const)(
    "is one page of %s that says every step and reading",
    async (paper) => {
      const { pages, text, title } = await readBack(await drawSetupPlan(model, { paper }));
      expect(pages).toHaveLength(1);
      for (const page of pages) expect([...overlaps(page), ...outside(page)]).toEqual([]);
      const squeezed = (words: string) => words.replaceAll(/\s/g, "");
      for (const part of [
        "S2-0211",
        "front nearside wheel",
        "Add 2 shims",
        "1½ turns inboard",
        "⅙ turn",
        "4.07°",
        "toe-in",
        "lock everything",
        "beyond the limit",
        "Left over",
        "+2'",
        "What else it moves",
        "Scrub radius −1.2 mm",
        "page 1 of 1",
      ])
        expect(squeezed(text)).toContain(squeezed(part));
      expect(title).toBe("Set-up plan of S2-0211, front nearside wheel");
    },
  );

  test("is the same bytes for the same model", async () => {
    const draw = () => drawSetupPlan(model, { paper: "A4" });
    expect(Buffer.from(await draw()).equals(Buffer.from(await draw()))).toBe(true);
  });

  test("with as many steps as a plan can have still is one page", async () => {
    const step = model.steps[0] ?? { what: "", ...reading };
    const many = { ...model, steps: Array.from({ length: 8 }, () => step) };
    expect((await readBack(await drawSetupPlan(many, { paper: "Letter" }))).pages).toHaveLength(1);
  });

  test.each([
    [{ layoutVersion: 1 }, /layout 1 is not known/],
    [{ preparedAt: "yesterday" }, /must be an ISO instant/],
  ])("refuses %j", async (changes, message) => {
    await expect(drawSetupPlan({ ...model, ...changes }, { paper: "A4" })).rejects.toThrow(message);
  });
});
