import { describe, expect, test } from "vitest";
import { attribute, markup, tags } from "../test/markup";
import { Choice, Field } from "./field";

describe("a field", () => {
  test("is tied to its label, hint and error", () => {
    const html = markup(<Field name="email" label="E-mail address" hint="As invited." error="No @ in it." />);
    const input = tags(html, "input")[0];
    const id = attribute(input, "id");
    expect(attribute(tags(html, "label")[0], "for")).toBe(id);
    expect(attribute(input, "aria-invalid")).toBe("true");
    expect(attribute(input, "aria-describedby")).toBe(`${id}-hint ${id}-error`);
    expect(html).toContain(`id="${id}-error"`);
  });

  test("without an error it claims none", () => {
    const input = tags(markup(<Field name="email" label="E-mail address" />), "input")[0];
    expect(input).not.toContain("aria-");
  });

  test("keeps what was written", () => {
    const input = tags(markup(<Field name="email" label="E-mail" value='a"b' />), "input")[0];
    expect(input).toContain('value="a&quot;b"');
  });

  test("a choice shows the one that was chosen", () => {
    const options = [
      { value: "", label: "Every series" },
      { value: "s2", label: "Series 2" },
    ];
    expect(markup(<Choice name="series" label="Series" value="s2" options={options} />)).toContain(
      '<option value="s2" selected="">Series 2</option>',
    );
  });
});
