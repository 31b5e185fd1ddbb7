import { z } from "zod";
import { defineComputation, type WorkingStep } from "../catalogue/computation";
import { designation } from "../catalogue/designation-field";
import { quantity } from "../catalogue/field";
import { CalcRefusal } from "../catalogue/refusal";
import { givenSteps } from "../spring/given";
import { written } from "../spring/guard";
import { worked } from "../spring/worked";
import { loadIndexRange, loadOfIndex } from "./load-index";
import {
  isSpeedSymbol,
  loadShareAtSpeed,
  type SpeedSymbol,
  speedOfSymbol,
  speedSymbols,
  tooFastFor,
} from "./speed-symbol";

const input = z.object({
  size: designation("tyre", {
    label: "Tyre with its service description",
    help: "Or give load index and speed symbol",
  }).optional(),
  loadIndex: quantity("count", {
    label: "Load index",
    min: loadIndexRange.lowest,
    max: loadIndexRange.highest,
  }).optional(),
  speedSymbol: z.enum(speedSymbols).meta({ title: "Speed symbol" }).optional(),
  axleMass: quantity("mass", {
    label: "Greatest mass on the axle",
    help: "Both wheels, fully loaded",
    above: 0,
    max: 5000,
    unit: "kg",
  }),
  topSpeed: quantity("speed", {
    label: "Top speed to be driven",
    above: 0,
    max: 150,
    unit: "km/h",
  }).optional(),
});
type Input = z.output<typeof input>;

export const tyreLoadComputation = defineComputation({
  name: "tyre.load",
  title: "Load index and speed symbol",
  summary: "What a tyre's service description allows, against the axle's load and the top speed.",
  input,
  outputs: {
    capacity: { label: "Load of one tyre by its index", dimension: "mass", unit: "kg", decimals: 0 },
    symbolSpeed: { label: "Speed of its symbol", dimension: "speed", unit: "km/h", decimals: 0 },
    allowed: { label: "Load of one tyre at the top speed", dimension: "mass", unit: "kg", decimals: 0 },
    load: { label: "Load on one tyre", dimension: "mass", unit: "kg", decimals: 0 },
    use: {
      how: ["u", "Q_1/Q_v"],
      label: "Share of the allowed load used",
      dimension: "ratio",
      unit: "%",
      decimals: 0,
    },
    loadVerdict: { how: ["load", "Q_1 against Q_v"], label: "Load", dimension: "text" },
    speedVerdict: { how: ["speed", "v against v_s"], label: "Speed", dimension: "text" },
  },
  source: [
    { title: "ISO 4000-1 / UN R30 Annex 4, load indices, as reproduced on two tyre pages", status: "read" },
    { title: "UN R30, speed symbols and load against speed for V and W", status: "read" },
    { title: "UN R30, symbols J to M and load against speed for Y", status: "memory" },
  ],
  validity:
    "Single fitment at the pressure the tyre's standard gives, camber up to 4°; half the axle's load on each wheel at rest.",
  caution:
    "An overloaded or too slow tyre bursts. Age, damage and pressure count as much as the figures; the maker's data decide.",
  example: { size: "175/70 R 13 82T", axleMass: "480 kg", topSpeed: "175 km/h" },
  compute(given) {
    const index = given.loadIndex ?? given.size?.loadIndex ?? null;
    const symbol = symbolOf(given);
    const load = given.axleMass / 2;
    const capacity = index === null ? null : loadOfIndex(index);
    const symbolSpeed = symbol === null ? null : speedOfSymbol(symbol);
    const tooFast = symbol !== null && given.topSpeed !== undefined && tooFastFor(symbol, given.topSpeed);
    const share =
      symbol === null || given.topSpeed === undefined || tooFast
        ? null
        : loadShareAtSpeed(symbol, given.topSpeed);
    const allowed = capacity === null || share === null ? null : capacity * share;
    const use = allowed === null ? null : load / allowed;
    const working = (): WorkingStep[] => [
      ...(given.size === undefined
        ? []
        : [{ symbol: "size", label: "Tyre size", value: given.size.canonical }]),
      ...givenSteps(input, given, {
        symbols: { loadIndex: "LI", speedSymbol: "SI", axleMass: "m", topSpeed: "v" },
      }),
      ...worked([
        ["Q", "Load of one tyre by its index", `table, index ${index}`, capacity, "mass", "kg"],
        ["v_s", "Speed of its symbol", `table, symbol ${symbol}`, symbolSpeed, "speed", "km/h"],
        [
          "f",
          "Share of the load at the top speed",
          "1; V, W and Y less near their limit",
          share,
          "ratio",
          "%",
        ],
        ["Q_v", "Load of one tyre at the top speed", "f·Q", allowed, "mass", "kg"],
        ["Q_1", "Load on one tyre", "m/2", load, "mass", "kg"],
      ]),
    ];
    const outputs = { capacity, symbolSpeed, allowed, load, use };
    return {
      outputs: {
        ...outputs,
        loadVerdict: loadVerdict({ load, capacity, allowed, tooFast }),
        speedVerdict: speedVerdict(symbol, given.topSpeed),
      },
      working,
      warnings: [],
    };
  },
});

/** The symbol given, else the one on the tyre. */
function symbolOf({ speedSymbol, size }: Input): SpeedSymbol | null {
  if (speedSymbol !== undefined) return speedSymbol;
  const marked = size?.speedSymbol ?? null;
  if (marked === null || isSpeedSymbol(marked)) return marked;
  throw new CalcRefusal(
    "UNKNOWN_SPEED_SYMBOL",
    `speed symbol ${marked} has no one speed here; known are ${speedSymbols.join(" ")}`,
    "speedSymbol",
  );
}

interface LoadFigures {
  readonly load: number;
  readonly capacity: number | null;
  readonly allowed: number | null;
  readonly tooFast: boolean;
}

function loadVerdict({ load, capacity, allowed, tooFast }: LoadFigures): string {
  if (capacity === null) return "cannot tell: the load index is not known";
  if (load > (allowed ?? capacity)) return "too little: the tyre is overloaded";
  if (tooFast) return "none at that speed: it is beyond the tyre's symbol";
  return allowed === null ? "cannot tell: speed symbol and top speed are needed" : "enough";
}

function speedVerdict(symbol: SpeedSymbol | null, topSpeed: number | undefined): string {
  if (symbol === null) return "cannot tell: the speed symbol is not known";
  if (topSpeed === undefined) return "cannot tell: the top speed is not given";
  if (!tooFastFor(symbol, topSpeed)) return "fast enough";
  return `too slow: the symbol ends at ${written(speedOfSymbol(symbol), "speed")}`;
}
