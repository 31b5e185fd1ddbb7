import type { EventPack } from "@trunnion/api";
import type { Paddock } from "./use-paddock";

/** Dimensions as they are said of figures. */
const dimensionWords: Readonly<Record<string, string>> = {
  angle: "Angles",
  length: "Lengths",
  pressure: "Pressures",
  mass: "Weights",
  volume: "Volumes",
  force: "Forces",
  torque: "Torques",
};

/** Which of the club's instruments this device's figures are measured with, one for each kind of figure. */
export function GaugeChoice({ pack, paddock }: { readonly pack: EventPack; readonly paddock: Paddock }) {
  const asked = new Set(
    pack.characteristics.flatMap((one) => (one.kind === "quantity" ? [one.dimension] : [])),
  );
  // A pack kept by an earlier version has none.
  const instruments = (pack.instruments ?? []).filter(
    ({ dimension, retired }) => retired !== true && asked.has(dimension as never),
  );
  const dimensions = [...new Set(instruments.map(({ dimension }) => dimension))];
  if (dimensions.length === 0) return null;
  return (
    <details className="border-ink border-t pt-2">
      <summary className="min-h-14 py-4">What you measure with</summary>
      <div className="grid gap-3 pb-4">
        {dimensions.map((dimension) => (
          <label key={dimension} className="grid gap-1">
            <span className="text-small">{dimensionWords[dimension] ?? dimension}</span>
            <select
              value={paddock.kept.gauges.get(dimension) ?? ""}
              onChange={({ target }) => void paddock.chooseGauge(dimension, target.value)}
              className="min-h-14 border border-ink bg-paper px-3"
            >
              <option value="">Not said</option>
              {instruments
                .filter((one) => one.dimension === dimension)
                .map(({ id, label }) => (
                  <option key={id} value={id}>
                    {label}
                  </option>
                ))}
            </select>
          </label>
        ))}
        <p className="text-small text-soft">
          Its uncertainty decides how near a limit can be told. Not said: only what the figure's notation
          implies.
        </p>
      </div>
    </details>
  );
}
