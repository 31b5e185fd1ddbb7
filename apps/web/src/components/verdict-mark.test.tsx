import { verdicts } from "@trunnion/register";
import { describe, expect, test } from "vitest";
import { markup, readText } from "../test/markup";
import { VerdictMark, wantsAttention } from "./verdict-mark";

describe("the mark of a verdict", () => {
  test.each(verdicts)("%s is told by its word", (verdict) => {
    expect(readText(<VerdictMark verdict={verdict} text="the word" />)).toBe("the word");
  });

  test("every verdict has a form of its own, without its colour", () => {
    const forms = verdicts.map((verdict) =>
      markup(<VerdictMark verdict={verdict} text="" />)
        .replace(/^<span[^>]*>/, "")
        .replaceAll(/(fill|stroke)-red/g, "ink"),
    );
    expect(new Set(forms).size).toBe(verdicts.length);
  });

  test("not being recorded is no pass, and no alarm", () => {
    expect(wantsAttention("notRecorded")).toBe(false);
    expect(markup(<VerdictMark verdict="notRecorded" text="not recorded" />)).not.toContain("red");
    expect(wantsAttention("cannotTell")).toBe(true);
  });
});
