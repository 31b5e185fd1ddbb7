import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { designation } from "../catalogue/designation-field";
import { quantity } from "../catalogue/field";
import { CalcRefusal } from "../catalogue/refusal";
import { givenSteps } from "../spring/given";
import { written } from "../spring/guard";
import { worked } from "../spring/worked";
import { sectionWidthOnRim } from "./size";

const input = z.object({
  tyre: designation("tyre", { label: "Tyre size" }),
  wheel: designation("wheel", { label: "Wheel" }),
  measuringRimWidth: quantity("length", {
    label: "Measuring rim of the tyre",
    help: "From the maker's data; left out, 0.7 of the nominal width",
    above: 0,
    max: 0.5,
    unit: "in",
  }).optional(),
});
/** Measuring rim over nominal width, sizes of 1970s proportions (from memory; ETRTO lists 4 in for a 145). */
const measuringShare = 0.7;

export const tyreRimComputation = defineComputation({
  name: "tyre.rim",
  title: "Tyre on a rim",
  summary: "How wide a tyre stands on a given rim, and whether the rim is in the usual range for it.",
  input,
  outputs: {
    sectionWidth: { label: "Section width on this rim", dimension: "length", unit: "mm", decimals: 0 },
    widthChange: {
      how: ["ΔS", "S − S1"],
      label: "Wider than nominal by",
      dimension: "length",
      unit: "mm",
      decimals: 0,
    },
    rimShare: {
      how: ["q", "A/S1"],
      label: "Rim width over nominal section width",
      dimension: "ratio",
      unit: "%",
      decimals: 0,
    },
    verdict: {
      how: ["verdict", "q against the usual range of such tyres"],
      label: "Rim width",
      dimension: "text",
    },
  },
  source: [
    { title: "UN Regulation 30", locus: "6.1.1.1, S = S1 + 0.4(A − A1)", status: "read" },
    { title: "ETRTO recommended rims, 145-section tyre", locus: "4 in", status: "read" },
    { title: "Usual rim widths, 65 to 90 % of the section", status: "common practice, no source" },
  ],
  validity:
    "Section widths of new tyres without lettering; makes differ by some 4 %. The usual range is a guide, not a permission.",
  caution:
    "Only the tyre maker's list of permitted rims decides. A tyre on a rim too narrow or too wide can come off it.",
  example: { tyre: "175/70 R 13", wheel: "5½J x 13" },
  compute(given) {
    const { tyre, wheel } = given;
    if (Math.abs(tyre.rimDiameter - wheel.rimDiameter) > 1e-4)
      throw new CalcRefusal(
        "RIM_DIAMETERS_DIFFER",
        `the tyre wants a ${written(tyre.rimDiameter, "length", "in")} rim, the wheel has ${written(wheel.rimDiameter, "length", "in")}: it cannot be fitted`,
        "wheel",
      );
    const measuringRimWidth = given.measuringRimWidth ?? measuringShare * tyre.sectionWidth;
    const sectionWidth = sectionWidthOnRim({
      sectionWidth: tyre.sectionWidth,
      rimWidth: wheel.width,
      measuringRimWidth,
    });
    const rimShare = wheel.width / tyre.sectionWidth;
    const taken = given.measuringRimWidth === undefined ? measuringRimWidth : null;
    const working = () => [
      { symbol: "tyre", label: "Tyre size", value: tyre.canonical },
      { symbol: "wheel", label: "Wheel", value: wheel.canonical },
      ...givenSteps(input, given, { symbols: { measuringRimWidth: "A1" } }),
      ...worked([
        ["S1", "Nominal section width", "from the size", tyre.sectionWidth, "length", "mm"],
        ["A", "Rim width", "from the wheel", wheel.width, "length", "in"],
        ["A1", "Measuring rim", "taken: 0.7·S1", taken, "length", "in"],
        ["S", "Section width on this rim", "S1 + 0.4·(A − A1)", sectionWidth, "length", "mm"],
        ["q", "Rim over section", "A/S1", rimShare, "ratio", "%"],
      ]),
    ];
    const outputs = {
      sectionWidth,
      widthChange: sectionWidth - tyre.sectionWidth,
      rimShare,
      verdict: verdictOf(rimShare),
    };
    return { outputs, working, warnings: [] };
  },
});

function verdictOf(rimShare: number): string {
  if (rimShare < 0.65) return "narrower than usual: ask the tyre maker";
  return rimShare > 0.9
    ? "wider than usual: ask the tyre maker"
    : "in the usual range: the maker's list decides";
}
