import type { FilterForm } from "@trunnion/api";
import {
  type Condition,
  characteristicBook,
  draftFields,
  draftFrom,
  draftOf,
  emptyDraft,
  writeCondition,
} from "@trunnion/register";
import { describe, expect, test, vi } from "vitest";
import { enteredOf } from "../../lib/form-entry";
import { attribute, markup, readText, tags } from "../../test/markup";
import { askedOf, beginningOf } from "./begin";
import { FilterPage } from "./filter-page";

// The server's own half of the form is not drawn.
vi.mock("./filter-action", () => ({ buildFilter: async () => undefined }));

const club = { slug: "sandvaer", name: "Sandvær Register" };
const own = [
  {
    key: "hood.straps",
    label: "Hood straps",
    assembly: "body",
    sided: false,
    help: "Straps over the bonnet.",
    setting: false,
    removable: true,
    kind: "choice",
    choices: [
      { code: "leather", label: "Leather" },
      { code: "web", label: "Webbing" },
    ],
  },
] as const satisfies FilterForm["own"];
const form: FilterForm = {
  own,
  series: [{ slug: "series-2", name: "Series 2" }],
  system: "metric",
  today: "2026-11-25",
};

const bar: Condition = { op: "number", characteristic: "rear.antiRollBar.diameter", is: "gt", si: 0.016 };
const straps: Condition = { op: "code", characteristic: "hood.straps", in: ["leather"] };
const nested: Condition = {
  op: "all",
  of: [bar, { op: "not", of: { op: "any", of: [straps, { op: "series", in: ["series-2"] }] } }],
};

const begin = (where: string) => beginningOf(askedOf({ where }, []), form);
const page = (where: string) => (
  <FilterPage club={club} form={form} begin={begin(where)} kept={{ q: "04" }} />
);

describe("the form of a condition", () => {
  const html = markup(page(writeCondition(nested)));

  test("says what it stands for in words, a club's own characteristic among it", () => {
    expect(readText(page(writeCondition(nested)))).toContain(
      "Now: cars of which rear anti-roll bar diameter is above 16 mm and not (hood straps is leather or the series is Series 2).",
    );
  });

  test("shows each part with the fields that go with its kind, and the value in its unit", () => {
    const names = tags(html, "input").map((tag) => [attribute(tag, "name"), attribute(tag, "value")]);
    expect(names).toContainEqual(["of.0.figure", "16 mm"]);
    expect(names).toContainEqual(["of.1.of.0.characteristic", "Hood straps"]);
    expect(names).toContainEqual(["of.1.of.0.values[]", "leather"]);
    expect(names).toContainEqual(["of.1.of.1.series[]", "series-2"]);
    expect(
      tags(html, "input").filter((tag) => tag.includes('value="leather"') && tag.includes("checked")),
    ).toHaveLength(1);
  });

  test("offers every characteristic of the dictionary, and the club's own", () => {
    expect(html).toContain('<option value="Hood straps">');
    expect(html).toContain('<option value="Front camber">');
  });

  test("ties every control to a label", () => {
    const labelled = new Set(tags(html, "label").map((tag) => attribute(tag, "for")));
    const controls = [...tags(html, "input"), ...tags(html, "select")].filter(
      (tag) => attribute(tag, "type") !== "hidden",
    );
    expect(controls.length).toBeGreaterThan(10);
    for (const tag of controls) expect(labelled, tag).toContain(attribute(tag, "id"));
  });

  test("begins empty, says what is broken, and leaves to words what it cannot hold", () => {
    expect(begin("recorded_front.camber").as).toBe("draft");
    expect(readText(page("recorded"))).toContain(
      "The condition in this address cannot be read: it was cut short.",
    );
    expect(readText(page("recorded_no.such.thing"))).toContain(
      "This form cannot show that condition part by part: it has more than 40 parts, or asks about what",
    );
    expect(beginningOf(askedOf({}, []), form)).toEqual({ as: "empty" });
    expect(askedOf({ filter: "Gone" }, [])).toMatchObject({ ok: false });
  });
});

describe("what the form sends", () => {
  test("is read as the draft it shows", () => {
    const draft = draftOf(nested, { book: characteristicBook(own), system: "metric" }) ?? emptyDraft;
    const data = new FormData();
    for (const [name, values] of Object.entries(draftFields(draft)))
      for (const value of values) data.append(name, value);
    expect(draft).not.toBe(emptyDraft);
    expect(draftFrom(enteredOf(data))).toEqual(draft);
  });
});
