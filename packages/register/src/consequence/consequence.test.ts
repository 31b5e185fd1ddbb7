import { computationNamed, inputOf, listComputation, runComputation } from "@trunnion/calc";
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { z } from "zod";
import { builtInBook as book } from "../characteristic/book";
import { bindingsOf, type Feed, placesOf } from "./binding";
import { bindingsTouchedBy, type Consequence, consequencesOf, lackingFor } from "./consequence";
import { fullCar, stateWith } from "./sample-state.fixture";
import { bindings } from "./table";

const change = (entries: Readonly<Record<string, string>>, from = fullCar) =>
  consequencesOf(stateWith(from), stateWith({ ...from, ...entries }), book);

const find = (list: readonly Consequence[], id: string) => {
  const found = list.find((one) => one.id === id);
  if (!found) throw new Error(`${id} is not among ${list.map((one) => one.id).join(", ")}`);
  return found;
};
const figure = (list: readonly Consequence[], id: string, output: string) => {
  const found = find(list, id).figures.find((one) => one.output === output);
  if (!found) throw new Error(`${id} tells no ${output}`);
  return found;
};
const run = (name: string, input: object) => runComputation(computationNamed(name), input);
const si = (name: string, input: object, output: string) => Number(run(name, input).outputs[output]?.si);

/** Names of the inputs a JSON Schema requires that no feed is for, groups within groups. */
function unfed(feeds: Readonly<Record<string, Feed>>, schema: unknown): readonly string[] {
  const { required, properties } = objectSchema.parse(schema);
  return required.flatMap((name) => {
    const feed = feeds[name];
    if (feed === undefined) return [name];
    if (feed.from !== "group") return [];
    return unfed(feed.fields, properties[name]).map((inner) => `${name}.${inner}`);
  });
}
const objectSchema = z.object({
  required: z.array(z.string()).default([]),
  properties: z.record(z.string(), z.unknown()).default({}),
});

describe("the table of bindings", () => {
  test.each(bindings.map((one) => [one.id, one] as const))(
    "%s fits its computation and the dictionary",
    (_, binding) => {
      const computation = computationNamed(binding.computation);
      const shape: Readonly<Record<string, z.ZodType>> = inputOf(computation).shape;
      expect(Object.keys(binding.inputs).filter((name) => !(name in shape))).toEqual([]);
      for (const { output, before } of binding.figures) {
        expect(computation.outputs).toHaveProperty(output);
        if (before !== undefined) expect(computation.outputs).toHaveProperty(before);
      }
      for (const feed of Object.values(binding.inputs)) {
        for (const { key } of placesOf(feed)) expect(book.find(key)?.key).toBe(key);
        for (const other of bindingsOf(feed)) expect(bindings.map(({ id }) => id)).toContain(other);
      }
      if (binding.mode === "change")
        expect(Object.keys(binding.inputs)).toEqual(expect.arrayContaining(["before", "after"]));
    },
  );

  test.each(bindings.map((one) => [one.id, one] as const))(
    "%s feeds every input that its computation cannot do without",
    (_, { computation, inputs }) => {
      expect(unfed(inputs, listComputation(computationNamed(computation)).input)).toEqual([]);
    },
  );

  test("runs again with its working from what it was given", () => {
    const told = find(change({ "rear.antiRollBar.diameter": "20 mm" }), "rear.bar.rate");
    const again = runComputation(computationNamed(told.computation), told.raw);
    expect(again.outputs.rate?.text).toBe(figure([told], "rear.bar.rate", "rate").after);
    expect(again.working.length).toBeGreaterThan(5);
  });

  test("names each binding once", () => {
    expect(new Set(bindings.map(({ id }) => id)).size).toBe(bindings.length);
  });

  test("tells what a change reaches, through other results too", () => {
    const reached = bindingsTouchedBy(new Set(["rear.antiRollBar.diameter"])).map(({ id }) => id);
    expect(reached).toEqual(
      expect.arrayContaining(["rear.bar.rate", "rear.roll", "roll.share", "roll.cornering"]),
    );
    expect(reached).not.toContain("front.bar.rate");
  });
});

describe("a thicker rear bar", () => {
  const told = change({ "rear.antiRollBar.diameter": "20 mm" });
  const shape = {
    middleLength: "820 mm",
    leverLength: "210 mm",
    armLength: "220 mm",
    motionRatio: 0.7,
    track: "1290 mm",
  };

  test("has the rate the calculator gives, before and after", () => {
    const rate = figure(told, "rear.bar.rate", "rate");
    expect(rate.numberBefore).toBe(si("bar.rate", { diameter: "14 mm", ...shape }, "rate"));
    expect(rate.numberAfter).toBe(si("bar.rate", { diameter: "20 mm", ...shape }, "rate"));
    // Torsion and bending of round sections both go with d⁴ (any text on strength of materials).
    expect(rate.ratio).toBeCloseTo((20 / 14) ** 4, 9);
  });

  test("moves the balance to the rear by the calculator's own figures", () => {
    const rates = (["front", "rear"] as const).map((axle) =>
      find(told, "roll.share").inputs.find(({ field }) => field === `${axle}RollRate`),
    );
    expect(rates.every((one) => one?.origin === "computed")).toBe(true);
    const share = figure(told, "roll.share", "rearShare");
    expect(share.numberAfter).toBeGreaterThan(share.numberBefore ?? 1);
    const rear = {
      track: "1290 mm",
      springWheelRate: si("spring.ride", { springRate: "24 N/mm", motionRatio: 0.8 }, "wheelRate"),
      barWheelRate: si("bar.rate", { diameter: "20 mm", ...shape }, "wheelRate"),
    };
    expect(figure(told, "rear.roll", "rollRate").numberAfter).toBeCloseTo(
      si("roll.axle", rear, "rollRate"),
      9,
    );
  });

  test("leaves the lesser answer, the ratio of diameters, to cars whose shape is not known", () => {
    expect(told.map(({ id }) => id)).not.toContain("rear.bar.ratio");
    const bare = { "rear.antiRollBar.diameter": "5/8 in" };
    const little = consequencesOf(
      stateWith(bare),
      stateWith({ "rear.antiRollBar.diameter": "11/16 in" }),
      book,
    );
    // Common practice, no source: a solid 11/16 in bar against a 5/8 in one of the same shape is (11/16 ÷ 5/8)⁴ as stiff.
    expect(figure(little, "rear.bar.ratio", "ratio").numberAfter).toBeCloseTo((11 / 16 / (5 / 8)) ** 4, 9);
    expect(find(little, "rear.bar.rate").missing.map(({ label }) => label)).toContain(
      "Rear anti-roll bar lever",
    );
  });

  test("that is taken off leaves nothing at the wheel, and says so", () => {
    const off = change({ "rear.antiRollBar.diameter": "not fitted" });
    expect(figure(off, "rear.bar.rate", "rate")).toMatchObject({ after: "none", numberAfter: 0 });
    expect(figure(off, "roll.share", "frontShare").numberAfter).toBeGreaterThan(
      figure(off, "roll.share", "frontShare").numberBefore ?? 1,
    );
    expect(figure(off, "rear.roll", "barShare").numberAfter).toBe(0);
  });
});

describe("other springs", () => {
  const told = change({ "front.spring.rate": "35 N/mm", "front.spring.freeLength": "290 mm" });

  test("have the wheel rate, frequency and ride height the calculator gives", () => {
    const sprung = (198 + 192 - 62) / 2;
    const ride = { motionRatio: 0.72, sprungMass: sprung };
    expect(figure(told, "front.spring.ride", "frequency").numberAfter).toBe(
      si("spring.ride", { springRate: "35 N/mm", ...ride }, "frequency"),
    );
    const height = si(
      "spring.rideHeight",
      {
        before: { rate: "28 N/mm", freeLength: "310 mm" },
        after: { rate: "35 N/mm", freeLength: "290 mm" },
        ...ride,
      },
      "heightChange",
    );
    expect(figure(told, "front.spring.rideHeight", "heightChange").numberAfter).toBe(height);
  });

  test("say which corner weights they were worked out with", () => {
    expect(find(told, "front.spring.rideHeight").inputs).toContainEqual(
      expect.objectContaining({
        field: "sprungMass",
        label: "half of both corner weights less the unsprung mass",
      }),
    );
  });
});

describe("another tyre size", () => {
  const told = change({ "tyres.rear.size": "175/70 R 13 82T" });
  const sizes = { before: { size: "155/80 R 13 79T" }, after: { size: "175/70 R 13 82T" } };

  test("changes circumference, speedometer and gearing by the calculator's figures", () => {
    const turned = figure(told, "rear.tyre.change", "circumferenceAfter");
    expect(turned.numberBefore).toBe(si("tyre.change", sizes, "circumferenceBefore"));
    expect(turned.numberAfter).toBe(si("tyre.change", sizes, "circumferenceAfter"));
    expect(figure(told, "speedometer", "readingChange").numberAfter).toBe(
      si("tyre.speedometer", { ...sizes, indicated: "100 km/h" }, "readingChange"),
    );
    expect(figure(told, "gearing", "speedPer1000").numberAfter).toBe(
      si("tyre.gearing", { tyre: sizes.after, gearRatio: 1, finalDrive: 3.9 }, "speedPer1000"),
    );
  });

  test("carries the calculator's caution and looks at rim and load", () => {
    expect(find(told, "rear.tyre.change").caution).toMatch(/clearance/);
    expect(figure(told, "rear.tyre.rim", "verdict").after).toBe(
      run("tyre.rim", { tyre: "175/70 R 13 82T", wheel: "5J x 13" }).outputs.verdict?.text,
    );
  });

  test("of the front leaves the speedometer alone: the rear wheels drive it", () => {
    expect(change({ "tyres.front.size": "175/70 R 13 82T" }).map(({ id }) => id)).not.toContain(
      "speedometer",
    );
  });
});

describe("a larger disc with larger pistons", () => {
  const told = change({ "front.disc.diameter": "10 1/2 in", "front.caliper.pistonDiameter": "54 mm" });
  const with_ = (pistons: string, disc: string) =>
    si(
      "brake.discTorque",
      {
        pressure: "50 bar",
        pistonDiameters: [pistons],
        friction: 0.38,
        discDiameter: disc,
        padHeight: "45 mm",
      },
      "torque",
    );

  test("is told as a ratio only, since pressure and friction were assumed", () => {
    const torque = figure(told, "front.brake.disc", "torque");
    expect(torque.onlyRatio).toBe(true);
    expect(torque.ratio).toBeCloseTo(with_("54 mm", "10 1/2 in") / with_("48 mm", "9 1/2 in"), 12);
    const origins = find(told, "front.brake.disc").inputs.map(({ field, origin }) => `${field} ${origin}`);
    expect(origins).toEqual(
      expect.arrayContaining(["pressure assumed", "friction assumed", "discDiameter reading"]),
    );
    expect(find(told, "front.brake.disc").caution).toMatch(/can kill/);
  });
});

describe("a link on a taller stack of spacers", () => {
  const told = change({ "rear.dropLink.spacerStack": "20 mm" });

  test("bends its bolt as the calculator says, with the caution", () => {
    const input = { thread: "M10x1.5", grade: "10.9", force: "1000 N", eyeWidth: "14 mm", section: "thread" };
    const force = figure(told, "rear.link.bolt", "yieldForce");
    expect(force.numberBefore).toBe(
      si("fastener.spacerStack", { ...input, stackLength: "10 mm" }, "yieldForce"),
    );
    expect(force.numberAfter).toBe(
      si("fastener.spacerStack", { ...input, stackLength: "20 mm" }, "yieldForce"),
    );
    expect(force.ratio).toBeLessThan(1);
    expect(find(told, "rear.link.bolt").caution).toMatch(/can kill/);
  });
});

describe("what is not recorded", () => {
  test("is named, and what it would add is told by what lacks only it", () => {
    const { "rear.spring.motionRatio": _, ...without } = fullCar;
    const told = change({ "rear.spring.rate": "30 N/mm" }, without);
    expect(find(told, "rear.spring.ride").missing).toEqual([
      { characteristic: "rear.spring.motionRatio", label: "Rear spring motion ratio" },
    ]);
    expect(find(told, "rear.spring.ride").figures).toEqual([]);
    expect(lackingFor(stateWith(without), book).get("rear.spring.motionRatio")).toContain("Rear springs");
  });

  test("is never a pass: nothing is worked out from an empty record", () => {
    expect(
      consequencesOf(new Map(), stateWith({ "front.spring.rate": "28 N/mm" }), book).every(
        ({ figures }) => figures.length === 0,
      ),
    ).toBe(true);
  });
});

describe("any change", () => {
  const keys = Object.keys(fullCar);
  test("of nothing has no consequence, and one undone gives the figures back", () => {
    fc.assert(
      fc.property(fc.subarray(keys, { minLength: 1 }), (left) => {
        const fewer = stateWith(
          Object.fromEntries(Object.entries(fullCar).filter(([key]) => !left.includes(key))),
        );
        expect(consequencesOf(fewer, fewer, book)).toEqual([]);
        const there = consequencesOf(stateWith(fullCar), fewer, book);
        const back = consequencesOf(fewer, stateWith(fullCar), book);
        for (const { id, figures } of there) {
          const other = back.find((one) => one.id === id);
          for (const { output, numberBefore, numberAfter } of figures) {
            const mirrored = other?.figures.find((one) => one.output === output);
            const binding = bindings.find((one) => one.id === id);
            if (binding?.mode === "each")
              expect([mirrored?.numberAfter, mirrored?.numberBefore]).toEqual([numberBefore, numberAfter]);
          }
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe("a front suspension whose hardpoints are known", () => {
  // Millimetres, left side: the example of the calculator's own documentation.
  const points = {
    lowerArmFront: [135, 240, 190],
    lowerArmRear: [-125, 245, 184],
    lowerJoint: [6, 600, 165],
    upperArmFront: [80, 310, 402],
    upperArmRear: [-110, 312, 395],
    upperJoint: [-12, 568, 418],
    tieRodInner: [-118, 258, 213],
    tieRodOuter: [-128, 584, 201],
  };
  const car = {
    ...fullCar,
    "chassis.centreOfGravityHeight": "480 mm",
    ...Object.fromEntries(
      Object.entries(points).flatMap(([point, at]) =>
        (["x", "y", "z"] as const).map((axis, index) => [
          `front.hardpoint.${point}.${axis} left`,
          `${at[index]} mm`,
        ]),
      ),
    ),
  };
  const told = change({ "front.hardpoint.upperJoint.x left": "-20 mm" }, car);

  test("gives castor, roll centre and roll of the car, before and after a joint is moved", () => {
    // Castor is atan2(x of the lower joint less that of the upper, z of the upper less that of the lower).
    const castor = (x: number) => Math.atan2(6 - x, 418 - 165);
    expect(figure(told, "front.linkage", "castor").numberBefore).toBeCloseTo(castor(-12), 9);
    expect(figure(told, "front.linkage", "castor").numberAfter).toBeCloseTo(castor(-20), 9);
    expect(figure(told, "front.linkage", "rollCentreHeight").numberAfter).toBeTypeOf("number");
    expect(figure(told, "roll.cornering", "angle").numberAfter).toBeGreaterThan(0);
    for (const id of ["front.linkage", "roll.cornering"]) expect(find(told, id).refused).toBeUndefined();
  });

  test("takes the roll centre of the hardpoints into the roll of the car", () => {
    const stiffer = change({ "front.spring.rate": "35 N/mm" }, car);
    const { raw } = find(stiffer, "roll.cornering");
    const centre = run("linkage.doubleWishbone", find(told, "front.linkage").rawBefore as object);
    expect(raw).toMatchObject({ front: { rollCentreHeight: centre.outputs.rollCentreHeight?.si } });
  });
});

describe("the bore of a bar", () => {
  const rateOf = (bore: string | undefined) => {
    const { "rear.antiRollBar.bore": _bore, ...bare } = fullCar as Record<string, string>;
    const car = bore === undefined ? bare : { ...bare, "rear.antiRollBar.bore": bore };
    const list = consequencesOf(
      stateWith(bare),
      stateWith({ ...car, "rear.antiRollBar.diameter": "20 mm" }),
      book,
    );
    return find(list, "rear.bar.rate");
  };
  const inputOfBore = (bore: string | undefined) => rateOf(bore).inputs.find(({ field }) => field === "bore");

  test("that is not recorded is taken as solid, and the assumption is told", () => {
    expect(inputOfBore(undefined)).toMatchObject({
      origin: "assumed",
      label: "bar taken as solid: no bore is recorded",
    });
  });

  test("that is said to be none is solid and no assumption; a bore softens the bar by its fourth power", () => {
    expect(inputOfBore("none")).toMatchObject({ text: "not fitted", origin: "reading" });
    const rate = (bore: string | undefined) =>
      rateOf(bore).figures.find(({ output }) => output === "rate")?.numberAfter ?? Number.NaN;
    expect(rate("none")).toBe(rate(undefined));
    // Polar second moment d⁴ − b⁴: 12 mm in 20 mm takes 13 % (first principles).
    expect(rate("12 mm") / rate("none")).toBeCloseTo(1 - (12 / 20) ** 4, 9);
  });
});
