import type { BracketModel } from "@trunnion/register";
import type { ContentWriter, Ink } from "../content/content-writer";
import { rule } from "../layout/style";

export interface BracketArea {
  readonly x: number;
  /** The bracket's floor; the tick stands 8 points above it, the nominal notch hangs 3.5 below. */
  readonly y: number;
  readonly width: number;
}

interface Scale {
  /** Place across the area, 0 to 1, of a value; not yet kept within it. */
  readonly at: (value: number) => number;
}

const finite = (value: number | undefined): number | undefined =>
  value !== undefined && Number.isFinite(value) ? value : undefined;

/**
 * The signature mark: limits as a bracket on its back, value as a tick, expanded uncertainty as a whisker,
 * nominal as a notch under the floor. A limit that is not there leaves its end open; a value far outside
 * becomes an arrow at the edge.
 */
export function drawBracket(page: ContentWriter, area: BracketArea, model: BracketModel): void {
  const lower = finite(model.lower);
  const upper = finite(model.upper);
  const nominal = finite(model.nominal);
  const value = finite(model.value);
  const uncertainty = Math.abs(finite(model.expandedUncertainty) ?? 0);
  const marks = { lower, upper, nominal, value, uncertainty };
  const scale = scaleFor(marks);
  const x = (of: number) => area.x + Math.min(1, Math.max(0, scale.at(of))) * area.width;

  drawLimits(page, area, {
    from: lower === undefined ? undefined : x(lower),
    to: upper === undefined ? undefined : x(upper),
  });
  if (nominal !== undefined && scale.at(nominal) >= 0 && scale.at(nominal) <= 1) {
    const at = x(nominal);
    page.polygon(
      [
        [at, area.y - 0.6],
        [at - 1.9, area.y - 3.9],
        [at + 1.9, area.y - 3.9],
      ],
      { stroke: rule.hair, fill: "paper" },
    );
  }
  if (value === undefined) return;
  const place = scale.at(value);
  const shown = place >= 0 && place <= 1;
  if (uncertainty > 0 && shown) drawWhisker(page, area.y, x(value - uncertainty), x(value + uncertainty));
  const beyond = (lower !== undefined && value < lower) || (upper !== undefined && value > upper);
  drawValue(page, area, { place, ink: beyond ? "red" : "black" });
}

interface Marks {
  readonly lower: number | undefined;
  readonly upper: number | undefined;
  readonly nominal: number | undefined;
  readonly value: number | undefined;
  readonly uncertainty: number;
}

/** Two limits fill the middle half; one limit stands at a quarter from its side; none: nominal in the middle. */
function scaleFor({ lower, upper, nominal, value, uncertainty }: Marks): Scale {
  if (lower !== undefined && upper !== undefined && upper > lower) {
    return { at: (of) => 0.25 + (0.5 * (of - lower)) / (upper - lower) };
  }
  const others = [nominal, value].filter((one) => one !== undefined);
  const reach = (from: number) => Math.max(...others.map((one) => Math.abs(one - from)), uncertainty) || 1;
  const only = lower ?? upper;
  if (only !== undefined && lower !== upper) {
    const unit = 0.5 / reach(only);
    return { at: (of) => (lower === undefined ? 0.75 : 0.25) + unit * (of - only) };
  }
  const middle = only ?? nominal ?? value ?? 0;
  const unit = 0.3 / reach(middle);
  return { at: (of) => 0.5 + unit * (of - middle) };
}

function drawLimits(
  page: ContentWriter,
  { x, y, width }: BracketArea,
  limits: { readonly from: number | undefined; readonly to: number | undefined },
): void {
  const { from, to } = limits;
  const cap = 4.6;
  if (from === undefined && to === undefined) {
    page.line([x, y, x + width, y], { stroke: rule.hair });
    return;
  }
  page.line([x, y, x + width, y], { stroke: rule.hair, dash: "0.7 1.6" });
  const floor = { stroke: 1.1 };
  if (from !== undefined && to !== undefined) {
    page.polyline(
      [
        [from, y + cap],
        [from, y],
        [to, y],
        [to, y + cap],
      ],
      floor,
    );
  } else if (from !== undefined) {
    page.polyline(
      [
        [from, y + cap],
        [from, y],
        [x + width * 0.8, y],
      ],
      floor,
    );
  } else if (to !== undefined) {
    page.polyline(
      [
        [x + width * 0.2, y],
        [to, y],
        [to, y + cap],
      ],
      floor,
    );
  }
}

function drawWhisker(page: ContentWriter, floor: number, from: number, to: number): void {
  const y = floor + 4;
  page.line([from, y, to, y], { stroke: rule.line });
  for (const end of [from, to]) page.line([end, y - 1.6, end, y + 1.6], { stroke: rule.line });
}

function drawValue(
  page: ContentWriter,
  { x, y, width }: BracketArea,
  value: { readonly place: number; readonly ink: Ink },
): void {
  const { place, ink } = value;
  if (place >= 0 && place <= 1) {
    const at = x + place * width;
    page.line([at, y - 1.6, at, y + 8.4], { stroke: 1.4, ink });
    return;
  }
  const tip = place < 0 ? x : x + width;
  const back = place < 0 ? tip + 5 : tip - 5;
  page.polygon(
    [
      [tip, y + 4],
      [back, y + 7.6],
      [back, y + 0.4],
    ],
    { fill: ink },
  );
}

/** Height a bracket needs, floor to tick's top and floor to notch's foot. */
export const bracketRise = 8.4;
export const bracketFall = 4;
