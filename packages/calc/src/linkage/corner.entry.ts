import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { answerCorner, answerSteered, cornerOutputs, steeredOutputs } from "./corner-answer";
import { doubleWishbone } from "./double-wishbone";
import { exampleSemiTrailing, exampleStrut, exampleSwingAxle, exampleWishbone } from "./example";
import { linkageSources, positionFields, rackField, rigidValidity } from "./field";
import { semiTrailingFields, strutFields, swingAxleFields, wishboneFields } from "./layout";
import { semiTrailingArm, swingAxle } from "./pivoted-arm";
import { strut } from "./strut";

const axle = z
  .enum(["front", "rear"])
  .meta({ title: "Axle", description: "Tells which way the wheelbase changes" });
const steeredPosition = { ...positionFields, rack: rackField, axle };
const position = { ...positionFields, axle };
/** An example as sent: the side is not asked for, since y counts outboard. */
function example<T extends { readonly side: unknown }>({ side: _, ...points }: T): Omit<T, "side"> {
  return points;
}

/** Catalogue entry `linkage.doubleWishbone`. */
export const doubleWishboneComputation = defineComputation({
  name: "linkage.doubleWishbone",
  title: "Double wishbone in bump and steer",
  summary:
    "Every angle, ratio and centre of a double wishbone corner at one position, exactly, from its hardpoints.",
  input: z.object({ ...wishboneFields, ...steeredPosition }),
  outputs: steeredOutputs,
  source: linkageSources,
  validity: rigidValidity,
  example: {
    ...example(exampleWishbone),
    toeIn: "0°6' toe-in per side",
    bump: "25 mm",
    rack: "10 mm",
    axle: "front",
  },
  compute: (given) => answerSteered(doubleWishbone({ ...given, side: "left" }), given),
});

/** Catalogue entry `linkage.strut`. */
export const strutComputation = defineComputation({
  name: "linkage.strut",
  title: "MacPherson strut in bump and steer",
  summary: "Every angle, ratio and centre of a strut corner at one position, exactly, from its hardpoints.",
  input: z.object({ ...strutFields, ...steeredPosition }),
  outputs: steeredOutputs,
  source: linkageSources,
  validity: `${rigidValidity} Spring and damper left out act along the strut.`,
  example: { ...example(exampleStrut), bump: "25 mm", rack: "10 mm", axle: "front" },
  compute: (given) => answerSteered(strut({ ...given, side: "left" }), given),
});

/** Catalogue entry `linkage.swingAxle`. */
export const swingAxleComputation = defineComputation({
  name: "linkage.swingAxle",
  title: "Swing axle in bump",
  summary:
    "Camber, toe, ratios and centres of a swing axle corner at one position, exactly, from its hardpoints.",
  input: z.object({ ...swingAxleFields, ...position }),
  outputs: cornerOutputs,
  source: linkageSources,
  validity: `${rigidValidity} The half axle swings about the line through its inner joint and its radius arm's pivot.`,
  example: { ...example(exampleSwingAxle), bump: "25 mm", axle: "rear" },
  compute: (given) => answerCorner(swingAxle({ ...given, side: "left" }), given),
});

/** Catalogue entry `linkage.semiTrailingArm`. */
export const semiTrailingComputation = defineComputation({
  name: "linkage.semiTrailingArm",
  title: "Semi-trailing arm in bump",
  summary:
    "Camber, toe, ratios and centres of a trailing or semi-trailing arm at one position, exactly, from its hardpoints.",
  input: z.object({ ...semiTrailingFields, ...position }),
  outputs: cornerOutputs,
  source: linkageSources,
  validity: rigidValidity,
  example: { ...example(exampleSemiTrailing), bump: "25 mm", axle: "rear" },
  compute: (given) => answerCorner(semiTrailingArm({ ...given, side: "left" }), given),
});
