import { type DraftGroup, type DraftPart, emptyPart } from "@trunnion/register";
import { expect, test } from "vitest";
import { nextFields } from "./next-field";

const part: DraftPart = emptyPart;
const inner: DraftGroup = { kind: "group", join: "any", of: [part, part] };
const draft: DraftGroup = { kind: "group", join: "all", of: [part, inner] };
const empty: DraftGroup = { kind: "group", join: "all", of: [] };

test.each<[string, string, DraftGroup, string, string]>([
  ["refresh", "of.1.of.0", draft, "of.1.of.0.ask", "looking a name up goes on to what is asked of it"],
  ["pick of.0 Front camber", "of.0", draft, "of.0.ask", "so does choosing one of the likely ones"],
  ["addPart ", "", draft, "of.1.about", "a new part begins with what it asks about"],
  ["addPart of.1", "of.1", draft, "of.1.of.1.about", "within its group"],
  ["remove of.0", "of.0", draft, "of.0.about", "what took the place of the part taken away"],
  ["remove of.1.of.2", "of.1.of.2", draft, "of.1.of.1.about", "or the last one left"],
  ["remove of.0", "of.0", empty, "join", "or the group where none is left"],
])("after %j in %j of %o it goes on at %s: %4$s", (pressed, at, after, expected) => {
  expect(nextFields(pressed.trim(), at, after)[0]).toBe(expected);
});

test("a new group begins with how its parts go together, since it asks about nothing itself", () => {
  expect(nextFields("addGroup", "", draft)).toEqual(["of.1.about", "of.1.join", "join"]);
});
