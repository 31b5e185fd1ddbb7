import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Context } from "../context";
import { openMember } from "../gate";
import { rollStudy } from "../roll-study";
import { setupPlanModel, setupPlanPage } from "./index";

let world: World;
let owner: WorldPerson;

beforeAll(async () => {
  world = await openWorld();
  owner = await world.person({ roles: ["owner"] });
}, 120_000);
afterAll(() => world?.close());

const ours = <T>(work: (ctx: Context) => Promise<T>) => openMember(world.database, owner, "ours", work);

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
/** Hardpoints as the record keeps them: on both sides alike. */
const hardpoints = Object.fromEntries(
  Object.entries(points).flatMap(([name, [x, y, z]]) =>
    [`x ${x}`, `y ${y}`, `z ${z}`].map((one) => {
      const [axis, mm] = one.split(" ");
      return [`front.hardpoint.${name}.${axis}`, `${mm} mm`];
    }),
  ),
);
const typed = {
  radius: "285 mm",
  "tieRod-pitch": "1/14 in",
  "tieRod-step": "1/12",
  "tieRod-in": "6",
  "tieRod-out": "6",
  wantedToe: "toe-in 8' per side",
};
const read = {
  "front.layout": "double wishbones",
  "front.camber": "-0°30'",
  "front.toe": "toe-in 2' per side",
  "front.track": "1300 mm",
  ...hardpoints,
};

describe("a set-up plan of a car on the register", () => {
  test("takes hardpoints, camber and toe from the record, and asks only for what that lacks", async () => {
    const car = await world.car({ read });
    const page = await ours((ctx) =>
      setupPlanPage(ctx, { car: car.reference, axle: "front", side: "right", typed }),
    );
    expect(page.problems).toEqual([]);
    expect(page.lacking).toEqual([]);
    expect(page.result).toMatchObject({ ok: true, plan: { withinTolerance: true } });
    const bare = await ours((ctx) =>
      setupPlanPage(ctx, { car: car.reference, axle: "front", side: "right", typed: {} }),
    );
    expect(bare.lacking).toEqual(
      bare.fields.some(({ name, si }) => name === "radius" && si !== undefined) ? [] : ["radius"],
    );
  });

  test("is a page for the garage once it is whole, and refused before that", async () => {
    const car = await world.car({ read });
    const model = await ours((ctx) =>
      setupPlanModel(ctx, { car: car.reference, axle: "front", side: "left", typed }),
    );
    expect(model.steps).toHaveLength(1);
    expect(model.steps[0]?.what).toMatch(/^Make track rod end .* longer$/);
    expect(model.wanted).toEqual([{ label: "Toe of this wheel wanted", value: "toe-in 8' per side" }]);
    expect(model.cautions.join(" ")).toMatch(/engagement/);
    const empty = await world.car();
    await expect(
      ours((ctx) => setupPlanModel(ctx, { car: empty.reference, axle: "front", side: "left", typed })),
    ).rejects.toMatchObject({ code: "SETUP_PLAN_NOT_READY" });
  });
});

describe("the rear wheels of a car on the register", () => {
  const rear = {
    "rear.layout": "semi-trailing arms",
    "rear.adjustment": "eccentric",
    "rear.track": "1340 mm",
    "rear.camber": "-1°",
    "rear.toe": "toe-in 8' per side",
    ...Object.fromEntries(
      Object.entries({ armInner: [320, 180, 280], armOuter: [445, 560, 290] }).flatMap(([name, at]) =>
        ["x", "y", "z"].map((axis, index) => [`rear.hardpoint.${name}.${axis}`, `${at[index]} mm`]),
      ),
    ),
  };
  const cam = {
    radius: "295",
    "armOuterCam-eccentricity": "5",
    "armOuterCam-setting": "0",
    "armOuterCam-mark": "7.5",
    "armOuterCam-direction": "up",
    wantedCamber: "-1°20'",
  };
  const planOf = (car: string, given: Record<string, string>) =>
    ours((ctx) => setupPlanPage(ctx, { car, axle: "rear", side: "left", typed: given }));

  test("are planned by the linkage that the record has, and printed for the rear", async () => {
    const { reference } = await world.car({ read: rear });
    const page = await planOf(reference, cam);
    expect([page.problems, page.lacking]).toEqual([[], []]);
    expect(page.layout).toMatchObject({ code: "semiTrailingArms", typed: false });
    expect(page.adjustments).toEqual([expect.objectContaining({ words: "Eccentric bolt" })]);
    const model = await ours((ctx) =>
      setupPlanModel(ctx, { car: reference, axle: "rear", side: "left", typed: cam }),
    );
    expect(model.wheel).toMatch(/^rear /);
    expect(model.steps[0]?.what).toMatch(
      /^Turn trailing arm's outer pivot's eccentric from 0° to \S+ \((up|down)\)$/,
    );
    expect(model.before.castor).toBe("");
  });

  test("of a live axle have nothing to set, and where nothing is recorded that is asked", async () => {
    const live = await world.car({ read: { "rear.layout": "live axle" } });
    expect((await planOf(live.reference, cam)).layout.known).toBe("notPlanned");
    const bare = await world.car();
    expect((await planOf(bare.reference, {})).layout.known).toBe("unknown");
    const said = await planOf(bare.reference, { layout: "swingAxle" });
    expect(said.layout).toMatchObject({ code: "swingAxle", typed: true });
    expect(said.lacking).toContain("radiusArm-x");
  });
});

describe("springs and bars of a car on the register", () => {
  test("are studied from the record and from what was typed, and nothing else", async () => {
    const car = await world.car({ read: { "front.track": "1300 mm", "front.spring.rate": "95 lb/in" } });
    const study = await ours((ctx) => rollStudy(ctx, { car: car.reference, typed: { cgHeight: "450 mm" } }));
    expect(study.car).toBeUndefined();
    expect(study.lacking).not.toContain("front-track");
    expect(study.lacking).not.toContain("cgHeight");
    expect(study.lacking).toContain("rear-rollCentreHeight");
  });
});
