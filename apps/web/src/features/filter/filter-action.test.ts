import { draftFields, emptyDraft } from "@trunnion/register";
import { beforeEach, expect, test, vi } from "vitest";
import { untouched } from "../../lib/form-state";
import { buildFilter } from "./filter-action";

const asked = vi.hoisted(() => ({ to: "" }));

vi.mock("server-only", () => ({}));
// The framework ends an action that leads elsewhere by throwing; here it is told where to.
vi.mock("next/navigation", () => ({
  redirect: (to: string) => {
    asked.to = to;
  },
}));
vi.mock("../../lib/service", () => ({
  api: async () => ({
    filter: { form: async () => ({ own: [], series: [], system: "metric", today: "2026-11-25" }) },
  }),
}));

beforeEach(() => {
  asked.to = "";
});

/** The empty form with something filled in and a button pressed. */
function form(fields: Readonly<Record<string, string>>, pressed = ""): FormData {
  const data = new FormData();
  for (const [name, values] of Object.entries({ ...draftFields(emptyDraft) })) {
    for (const value of values) data.append(name, fields[name] ?? value);
  }
  data.append("do", pressed);
  return data;
}

const send = (data: FormData) => buildFilter("sandvaer", { q: "04" }, untouched, data);
const bar = { "of.0.characteristic": "Rear anti-roll bar diameter", "of.0.is": "gt" };

test("a button gives the form back with its parts changed and everything that was typed", async () => {
  const state = await send(form({ ...bar, "of.0.figure": "15 mm" }, "addGroup"));
  expect(state).toMatchObject({ tries: 1, errors: {} });
  expect(state.typed).toMatchObject({
    "of.0.figure": ["15 mm"],
    "of.0.is": ["gt"],
    "of.1.kind": ["group"],
    "of.1.of.0.kind": ["part"],
  });
  const without = await send(form(bar, "remove of.0"));
  expect(Object.keys(without.typed)).toEqual(["kind", "join"]);
  expect(asked.to).toBe("");
});

test("what cannot be read is told at its field, with what was typed still there", async () => {
  const state = await send(form({ ...bar, "of.0.figure": "steep" }));
  expect(Object.keys(state.errors)).toEqual(["of.0.figure"]);
  expect(state.errors["of.0.figure"]?.join()).toContain('"steep"');
  expect(state.typed["of.0.figure"]).toEqual(["steep"]);
  expect(asked.to).toBe("");
});

test("a condition that reads leads to its cars, the search kept", async () => {
  await send(form({ ...bar, "of.0.figure": "15 mm" }, "show"));
  expect(asked.to).toBe("/club/sandvaer/car?q=04&where=number_rear.antiRollBar.diameter_gt_0.015");
});
