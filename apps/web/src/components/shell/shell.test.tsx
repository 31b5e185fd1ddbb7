import { describe, expect, test } from "vitest";
import { attribute, markup, readText, tags } from "../../test/markup";
import { Broken } from "./broken";
import { Shell } from "./shell";
import { generalNote, TitleBlock } from "./title-block";

const club = { slug: "sandvaer", name: "Sandvær Register" };
const school = { slug: "grusvik", name: "Grusvik Track School" };
const person = { name: "Åse", roles: ["registrar", "fleetManager"] };

describe("the shell", () => {
  const html = markup(
    <Shell club={club} clubs={[club, school]} person={person} at="register">
      <h1>Register</h1>
    </Shell>,
  );

  test("begins with a way past the header", () => {
    expect(attribute(tags(html, "a")[0], "href")).toBe("#content");
    expect(html).toContain('<main id="content"');
  });

  test("marks the page one is on", () => {
    const current = tags(html, "a").filter((tag) => tag.includes("aria-current"));
    expect(current.map((tag) => attribute(tag, "href"))).toEqual(["/club/sandvaer/car"]);
  });

  test("switches to the other club by a link, and signs out by posting a form", () => {
    expect(html).toContain('href="/club/grusvik"');
    const form = tags(html, "form")[0];
    expect([attribute(form, "action"), attribute(form, "method")]).toEqual(["/sign-out", "post"]);
  });

  test("offers no switch to who has one club", () => {
    const one = (
      <Shell club={club} clubs={[club]} person={person}>
        x
      </Shell>
    );
    expect(markup(one)).not.toContain("Other clubs");
    expect(readText(one)).toContain("Åse , registrar, fleet manager");
  });
});

describe("a page that could not be drawn", () => {
  const error = Object.assign(new Error("password is hunter2 at /srv/x.ts:3"), { digest: "38492" });
  const text = readText(<Broken error={error} retry={() => undefined} />);

  test("gives the reference, and nothing else of the error", () => {
    expect(text).toContain("give them the reference 38492");
    expect(text).not.toContain("hunter2");
    expect(text).not.toContain(".ts");
  });

  test("says what to do", () => {
    expect(text).toContain("Try again");
  });
});

test("the title block always says that a record is no certificate", () => {
  const text = readText(<TitleBlock club="Sandvær Register" kind="Car" title="S2-0417" notes={["One."]} />);
  expect(text).toContain(generalNote);
  expect(text).toContain("Car S2-0417");
});
