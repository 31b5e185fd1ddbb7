import { describe, expect, test } from "vitest";
import { markup } from "../test/markup";
import { Bracket } from "./bracket";

describe("the bracket", () => {
  test("is read out by its text, and silent where the words beside it say the same", () => {
    const model = { lower: 0, upper: 1, value: 0.5 };
    expect(markup(<Bracket model={model} text="0.5°, limits 0° to 1°" />)).toContain(
      'role="img" aria-label="0.5°, limits 0° to 1°"',
    );
    expect(markup(<Bracket model={model} />)).toContain('aria-hidden="true"');
  });

  test("marks a value beyond a limit, and only that", () => {
    expect(markup(<Bracket model={{ lower: 0, upper: 1, value: 1.2 }} />)).toContain("fill-red");
    expect(markup(<Bracket model={{ lower: 0, upper: 1, value: 1 }} />)).not.toContain("fill-red");
    expect(markup(<Bracket model={{ lower: 0, upper: 1, value: 1.2 }} differs={false} />)).not.toContain(
      "fill-red",
    );
  });

  test("draws no tick, whisker or number where the value is not known", () => {
    const html = markup(
      <Bracket model={{ lower: 0, upper: 1, value: Number.NaN, expandedUncertainty: 0.1 }} />,
    );
    expect(html).not.toContain("<rect");
    expect(html).not.toContain("NaN");
  });

  test("draws every further value as a tick of its own, equal ones too", () => {
    const html = markup(<Bracket model={{ lower: 0, upper: 1 }} others={[0.2, 0.2, 0.9, Number.NaN]} />);
    expect(html.match(/stroke-soft/g)).toHaveLength(3);
  });

  test("shows a value far outside as an arrow at the edge", () => {
    const html = markup(<Bracket model={{ lower: 0, upper: 1, value: 50 }} width={132} />);
    expect(html).not.toContain("<rect");
    expect(html).toContain("M129 10l-7 -5v10z");
  });
});
