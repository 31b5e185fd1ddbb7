import type { ClubFacts } from "../context";

/** Instruments that one club may have. */
export const INSTRUMENT_LIMIT = 300;

/** What settings are measured in, and so what an instrument may read. */
export const instrumentDimensions = ["angle", "length", "pressure", "mass"] as const;
export type InstrumentDimension = (typeof instrumentDimensions)[number];

/** Unit that a bare number is in, and in which an instrument's figures are told. */
export const instrumentUnit: Readonly<
  Record<InstrumentDimension, Readonly<Record<ClubFacts["unitSystem"], string>>>
> = {
  angle: { metric: "°", imperial: "°" },
  length: { metric: "mm", imperial: "mm" },
  pressure: { metric: "bar", imperial: "psi" },
  mass: { metric: "kg", imperial: "lb" },
};
