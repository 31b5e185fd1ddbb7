import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { cornerLayout } from "../linkage/layout";
import { readCorner } from "../linkage/reading";
import { settable } from "./adjuster";
import {
  caution,
  difference,
  exampleCorner,
  exampleJoint,
  millimetres,
  minutes,
  settingsInWords,
  sources,
} from "./entry-part";
import { adjusterField, assembleAdjusted, requireKnownPoints } from "./field";
import { instruction } from "./wording";

const effectInput = z.object({
  corner: cornerLayout,
  adjuster: adjusterField,
  steps: quantity("count", {
    label: "Steps to move it",
    help: "From where it stands; negative the other way",
    min: -1000,
    max: 1000,
  }).prefault(1),
});

/** Catalogue entry `adjuster.effect`. */
export const adjusterEffectComputation = defineComputation({
  name: "adjuster.effect",
  title: "What one adjuster does",
  summary: "What moving one adjuster by some steps does to every angle of the wheel.",
  input: effectInput,
  outputs: {
    action: {
      how: ["action", "the steps asked for, as done at the car"],
      label: "What is done",
      dimension: "text",
    },
    camberChange: {
      how: ["Δγ", "linkage solved with the adjuster moved, less as it stands"],
      label: "Change of camber",
      ...minutes,
    },
    castorChange: { how: ["Δτ", "as above"], label: "Change of castor", ...minutes },
    kingpinChange: { how: ["Δσ", "as above"], label: "Change of kingpin inclination", ...minutes },
    toeInChange: { how: ["Δθ", "as above"], label: "Change of this wheel's toe-in", ...minutes },
    trackChange: {
      how: ["Δy", "contact point outboard, as above"],
      label: "Track change, this wheel",
      ...millimetres,
    },
    wheelShift: {
      how: ["Δx", "contact point forwards, as above"],
      label: "Wheel forwards of where it was",
      ...millimetres,
    },
  },
  source: sources,
  validity:
    "Rigid parts, wheel centre's height over the chassis held. Limits of the adjuster are not asked here.",
  caution,
  example: { corner: exampleCorner, adjuster: exampleJoint, steps: 1 },
  compute(given) {
    requireKnownPoints(given.corner, [given.adjuster]);
    const assemble = assembleAdjusted(given.corner);
    const part = settable(given.adjuster);
    const before = readCorner(assemble({}));
    const after = readCorner(assemble(part.effect(given.steps)));
    return {
      outputs: {
        action: given.steps === 0 ? "nothing" : instruction(part, given.steps, "left"),
        camberChange: after.camber - before.camber,
        castorChange: difference(after.castor, before.castor),
        kingpinChange: difference(after.kingpin, before.kingpin),
        toeInChange: after.toeIn - before.toeIn,
        trackChange: after.trackChange - before.trackChange,
        wheelShift: after.forwardShift - before.forwardShift,
      },
      working: () => [
        { symbol: "0", label: "Before", value: settingsInWords(before) },
        { symbol: "1", label: "After", value: settingsInWords(after) },
      ],
      warnings: [],
    };
  },
});
