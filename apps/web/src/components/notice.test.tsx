import { refused, sayRefusal } from "@trunnion/register";
import { describe, expect, test } from "vitest";
import { attribute, markup, readText, tags } from "../test/markup";
import { Caution } from "./caution";
import { Notice } from "./notice";
import { Pager } from "./pager";
import { SearchBox } from "./search-box";

describe("a notice", () => {
  test("says what was wrong and what to do, and is announced", () => {
    const text = sayRefusal(refused("WRONG_SIGN_IN", {}));
    expect(markup(<Notice text={text} />)).toContain('role="alert"');
    expect(readText(<Notice text={text} />)).toBe(`${text.what} ${text.remedy}`);
  });

  test("lists places to look at one by one", () => {
    const text = { what: "Two rows were refused.", remedy: "Mend them." };
    expect(tags(markup(<Notice text={text} tone="note" details={["Row 2", "Row 9"]} />), "li")).toHaveLength(
      2,
    );
  });
});

test("a caution is named as one, and nothing is drawn where there is none", () => {
  expect(markup(<Caution cautions={["Hot."]} />)).toContain('aria-label="Caution"');
  expect(markup(<Caution cautions={[]} />)).toBe("");
});

describe("the pager", () => {
  test("is a landmark only where there is somewhere to go", () => {
    expect(markup(<Pager shown="3 of 3 cars" />)).not.toContain("<nav");
    const links = tags(markup(<Pager shown="50 of 412 cars" first="/a" next="/b" />), "a");
    expect(links.map((link) => attribute(link, "href"))).toEqual(["/a", "/b"]);
    expect(attribute(links[1], "rel")).toBe("next");
  });
});

test("a search asks by address, so that it can be kept and sent", () => {
  const html = markup(<SearchBox action="/club/sandvaer/car" label="Find a car" query="S2" />);
  expect(html).toContain("<search");
  expect(attribute(tags(html, "form")[0], "method")).toBe("get");
  expect(tags(html, "input")[0]).toContain('name="q"');
  expect(tags(html, "input")[0]).toContain('value="S2"');
});
