import { openWorld, type World } from "@trunnion/fixtures";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { carPage } from "../car-page";
import type { Context } from "../context";
import { openOperator } from "../gate";
import { importRegister } from "../import-run";
import {
  addCharacteristic,
  addCharacteristicInput,
  bookOf,
  type ChangeCharacteristicInput,
  changeCharacteristic,
  changeCharacteristicInput,
  characteristicTexts,
  ownCharacteristic,
} from "./index";

let world: World;

beforeAll(async () => {
  world = await openWorld();
}, 120_000);
afterAll(() => world?.close());

const ours = <T>(work: (ctx: Context) => Promise<T>) => openOperator(world.database, "ours", work);

const lamps = {
  label: "Fog lamps",
  assembly: "electrical",
  kind: "choice",
  help: "Lamps below the bumper.",
  removable: "yes",
  choices: [{ label: "Round" }, { label: "Square", also: "oblong" }, {}],
} as const;
const key = "club.fogLamps";

const add = (parts: object) =>
  ours((ctx) => addCharacteristic(ctx, addCharacteristicInput.parse({ ...lamps, ...parts })));

async function form(parts: object = {}): Promise<ChangeCharacteristicInput> {
  const { characteristic, version } = await ours((ctx) => ownCharacteristic(ctx, key));
  const opened = characteristicTexts(characteristic);
  return changeCharacteristicInput.parse({ ...lamps, key, version, opened, ...parts });
}
const change = async (parts: object) => {
  const input = await form(parts);
  return ours((ctx) => changeCharacteristic(ctx, input));
};

async function refusal(attempt: () => Promise<unknown>) {
  const before = await world.fingerprint();
  const error = await attempt().then(
    () => undefined,
    (reason: unknown) => reason,
  );
  expect(await world.fingerprint()).toEqual(before);
  return error as {
    readonly code?: string;
    readonly details?: unknown;
    readonly problems?: readonly { readonly field: string; readonly message: string }[];
  };
}

describe("a characteristic the club adds", () => {
  test("has a key and codes made of its words, and is in the dictionary at once", async () => {
    expect(await add({})).toBe(key);
    expect((await ours(bookOf)).named("fog lamps")).toMatchObject({
      key,
      removable: true,
      choices: [
        { code: "round", label: "Round" },
        { code: "square", label: "Square", also: ["oblong"] },
      ],
    });
  });

  test.each([
    ["a key that is built in", { key: "front.camber" }, "key"],
    ["a name that is built in", { label: "Front camber" }, "label"],
    ["a name of its own again", { key: "club.other" }, "label"],
    ["a key of one word", { key: "lamps", label: "Lamps" }, "key"],
    ["one choice only", { label: "Lamps", choices: [{ label: "Round" }] }, "choices"],
    [
      "two choices of one spelling",
      { label: "Lamps", choices: [{ label: "Round" }, { label: "round" }] },
      "choices.1.label",
    ],
    [
      "a unit of another dimension",
      { label: "Lamps", kind: "quantity", dimension: "length", metric: "kg", imperial: "in" },
      "metric",
    ],
    [
      "a bound that does not read",
      {
        label: "Lamps",
        kind: "quantity",
        dimension: "length",
        metric: "mm",
        imperial: "in",
        minimum: "little",
      },
      "minimum",
    ],
    [
      "a least above the most",
      {
        label: "Lamps",
        kind: "quantity",
        dimension: "length",
        metric: "mm",
        imperial: "in",
        minimum: "2 in",
        maximum: "10 mm",
      },
      "maximum",
    ],
    [
      "a lowest usual figure without a highest",
      {
        label: "Lamps",
        kind: "quantity",
        dimension: "length",
        metric: "mm",
        imperial: "in",
        usualLowest: "100 mm",
      },
      "usualHighest",
    ],
  ])("is refused for %s, at its field", async (_, parts, field) => {
    const error = await refusal(() => add(parts));
    expect(error.problems?.map((problem) => problem.field)).toContain(field);
  });

  test("may change its kind and choices while nothing is recorded of it", async () => {
    await change({ kind: "text", maximumLength: "40" });
    expect((await ours(bookOf)).find(key)).toMatchObject({ kind: "text", maximumLength: 40 });
    await change({});
    expect((await ours(bookOf)).find(key)?.kind).toBe("choice");
  });

  test("keeps kind, sides and the choices in use once values are recorded; label, help and further choices change", async () => {
    await ours(async (ctx) =>
      importRegister(ctx, {
        file: "a.csv",
        bytes: new TextEncoder().encode("Chassis;now: fog lamps\nM1-001;round"),
        book: await bookOf(ctx),
        asOf: ctx.today,
        dryRun: false,
      }),
    );
    const has = (what: string) => ({ code: "CHARACTERISTIC_HAS_VALUES", details: { what, count: 1 } });
    expect(await refusal(() => change({ kind: "text" }))).toMatchObject(has("kind"));
    expect(await refusal(() => change({ sided: "yes" }))).toMatchObject(has("being on each side"));
    expect(await refusal(() => change({ choices: [{ label: "Square" }, { label: "Long" }] }))).toMatchObject(
      has('choice "round"'),
    );
    await change({
      label: "Fog lights",
      choices: [{ code: "round", label: "Round, 5 in" }, { label: "Long" }],
    });
    const page = await ours((ctx) => carPage(ctx, "M1-001"));
    expect(page.deviating).toMatchObject([{ label: "Fog lights", verdict: "added", actual: "Round, 5 in" }]);
  });

  test("shows the second of two editors what the first changed, and is nobody's who does not know it", async () => {
    const [first, second] = [await form({ help: "Below the bumper" }), await form({ help: "Under it" })];
    const kept = { choices: [{ code: "round", label: "Round" }, { label: "Long" }] };
    await ours((ctx) =>
      changeCharacteristic(ctx, { ...first, ...changeCharacteristicInput.parse({ ...first, ...kept }) }),
    );
    const error = await refusal(() => ours((ctx) => changeCharacteristic(ctx, second)));
    expect(error).toMatchObject({ code: "CHANGED_MEANWHILE", details: { what: "this characteristic" } });
    const fields = (error.details as { readonly differences: readonly { readonly field: string }[] })
      .differences;
    expect(fields.map(({ field }) => field)).toContain("help");
    expect(await refusal(() => ours((ctx) => ownCharacteristic(ctx, "front.camber")))).toMatchObject({
      code: "CHARACTERISTIC_NOT_FOUND",
    });
  });
});
