import { builtInBook, emptyModification, emptySubmission, submissionContentSchema } from "@trunnion/register";
import { describe, expect, test } from "vitest";
import { contentOfForm, editContent, editOf } from "./draft";

const form = (fields: Readonly<Record<string, string>>) => {
  const data = new FormData();
  for (const [name, value] of Object.entries(fields)) data.append(name, value);
  return data;
};

const kept = emptySubmission("metric");

describe("what a form of a change says", () => {
  test("is read field by field, and leaves the setting sheets alone", () => {
    const sheet = { on: "1 May 2020", loadState: "kerb", note: "", readings: [] } as const;
    const content = contentOfForm(
      form({
        units: "imperial",
        "modifications.0.fitted": "1998",
        "modifications.0.changes.0.characteristic": "front.camber",
        "modifications.0.changes.0.side": "left",
        "modifications.0.changes.0.after": "steep",
        "modifications.0.fasteners.0.thread": "5/16 UNF",
      }),
      { ...kept, sheets: [sheet] },
    );
    expect(content).toMatchObject({
      units: "imperial",
      modifications: [
        {
          fitted: "1998",
          changes: [{ characteristic: "front.camber", side: "left", before: "", after: "steep" }],
          fasteners: [{ thread: "5/16 UNF", grade: "" }],
        },
      ],
      sheets: [sheet],
    });
    expect(submissionContentSchema.safeParse(content).success).toBe(true);
  });

  test("is of every change it has; those an older form does not have stay as they were", () => {
    const occasions = ["first", "second", "third"].map((note) => ({ ...emptyModification, note }));
    const content = contentOfForm(
      form({ units: "metric", "modifications.0.note": "corrected", "modifications.1.note": "too" }),
      {
        ...kept,
        modifications: occasions,
      },
    );
    expect(content.modifications.map(({ note }) => note)).toEqual(["corrected", "too", "third"]);
  });

  test("is not what the record has where nobody touched that, and is kept as typed where somebody did", () => {
    const beforeOf = (typed: string, recorded: string) =>
      contentOfForm(
        form({
          "modifications.0.changes.0.characteristic": "front.antiRollBar.diameter",
          "modifications.0.changes.0.before": typed,
          "modifications.0.changes.0.recorded": recorded,
        }),
        kept,
      ).modifications[0]?.changes[0]?.before;
    expect(beforeOf("0.551 in", "0.551 in")).toBe("");
    expect(beforeOf("9/16 in", "0.551 in")).toBe("9/16 in");
    expect(beforeOf("", "0.551 in")).toBe("");
    expect(beforeOf("9/16 in", "")).toBe("9/16 in");
  });

  test("is nothing, whatever a stranger sends in its place", () => {
    const content = contentOfForm(
      form({ units: "furlongs", modifications: "x", "__proto__.units": "y" }),
      kept,
    );
    expect(content).toEqual(kept);
  });
});

describe("a button of the form", () => {
  test("adds the ticked parts, both sides of what has sides, and none twice", () => {
    const data = form({});
    for (const key of ["front.camber", "front.antiRollBar.diameter", "no.such"]) data.append("part[]", key);
    const edit = editOf("add", data);
    if (!edit) throw new Error("no edit");
    const once = editContent(kept, edit, builtInBook);
    expect(
      once.modifications[0]?.changes.map(({ characteristic, side }) => `${characteristic} ${side}`),
    ).toEqual(["front.camber left", "front.camber right", "front.antiRollBar.diameter whole"]);
    expect(editContent(once, edit, builtInBook)).toEqual(once);
  });

  test("says the right as the left, and leaves what was typed where the left says nothing", () => {
    const line = (side: "left" | "right", after: string) =>
      ({ characteristic: "rear.dropLink.length", side, before: "", after }) as const;
    const of = (left: string) => ({
      ...kept,
      modifications: [{ ...emptyModification, changes: [line("left", left), line("right", "5 in")] }],
    });
    const edit = editOf("same:0:1", form({}));
    if (!edit) throw new Error("no edit");
    const afters = (left: string) =>
      editContent(of(left), edit, builtInBook).modifications[0]?.changes.map(({ after }) => after);
    expect(afters("5 1/4 in")).toEqual(["5 1/4 in", "5 1/4 in"]);
    expect(afters("")).toEqual(["", "5 in"]);
  });

  test("takes out one line and one fastener by its place, and keeps the others as typed", () => {
    const change = (after: string) =>
      ({ characteristic: "front.camber", side: "left", before: "", after }) as const;
    const content = {
      ...kept,
      modifications: [{ ...emptyModification, changes: [change("a"), change("b")] }],
    };
    const without = editContent(content, { kind: "remove", to: 0, place: 0 }, builtInBook);
    expect(without.modifications[0]?.changes).toEqual([change("b")]);
    const more = editContent(content, { kind: "addFastener", to: 0 }, builtInBook);
    expect(more.modifications[0]?.fasteners).toHaveLength(1);
    expect(editContent(more, { kind: "removeFastener", to: 0, place: 0 }, builtInBook)).toEqual(content);
  });

  test("begins another change with the ticked parts, adds to the one it names, and takes one out whole", () => {
    const tick = (...keys: readonly string[]) => {
      const data = form({});
      for (const key of keys) data.append("part[]", key);
      return data;
    };
    const press = (content: typeof kept, pressed: string, data: FormData) => {
      const edit = editOf(pressed, data);
      if (!edit) throw new Error("no edit");
      return editContent(content, edit, builtInBook);
    };
    const keysOf = ({ modifications }: typeof kept) =>
      modifications.map(({ changes }) => changes.map(({ characteristic }) => characteristic));
    const bar = press(kept, "add:0", tick("rear.antiRollBar.diameter"));
    const two = press(bar, "add:1", tick("front.disc.face"));
    const more = press(two, "add:0", tick("rear.dropLink.joint"));
    expect(keysOf(more)).toEqual([["rear.antiRollBar.diameter", "rear.dropLink.joint"], ["front.disc.face"]]);
    expect(keysOf(press(more, "removeChange:0", tick()))).toEqual([["front.disc.face"]]);
    expect(press(more, "add:2", tick())).toEqual(more);
  });

  test("is read with the word to the registrar, which goes when it is emptied", () => {
    const said = contentOfForm(form({ text: "Second\r\nthoughts" }), kept);
    expect(said.word).toBe("Second\nthoughts");
    expect(contentOfForm(form({ text: "" }), said)).not.toHaveProperty("word");
  });

  test.each(["save", "submit", "show", "withdraw"])("that is called %s changes no line", (pressed) => {
    expect(editOf(pressed, form({}))).toBeUndefined();
  });
});
