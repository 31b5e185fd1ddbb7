/** Where the brake formulas come from. */
export const statics = { title: "Statics of levers, pistons and friction", status: "memory" } as const;
export const limpert = {
  title: "Limpert, Brake Design and Safety",
  locus: "ideal curve, locking",
  status: "memory",
} as const;
export const gillespie = {
  title: "Gillespie, Fundamentals of Vehicle Dynamics",
  locus: "ch. 3",
  status: "memory",
} as const;
export const shigleyShoe = {
  title: "Shigley, Mechanical Engineering Design",
  locus: "ch. 16-2, internal shoes, example 16-2",
  status: "memory",
} as const;
export const duoServoShoes = {
  title: "Limpert, Brake Design and Safety",
  locus: "duo-servo drum brakes",
  status: "memory",
} as const;
export const r13h = {
  title: "UN Regulation No. 13-H",
  locus: "Annex 3, stopping distances; Annex 5, 3.1",
  status: "memory",
} as const;
export const r13 = {
  title: "UN Regulation No. 13",
  locus: "Annex 4, 1.1.2, 2.1.1 and 2.2",
  status: "read-formula",
} as const;
export const energyBalance = {
  title: "College Physics 11th ed.",
  locus: "ch. 11 P24, heat of a stop",
  status: "read-formula",
} as const;
export const shopRule = {
  title: "Workshop figures on pads and discs",
  status: "common practice, no source",
} as const;

/** Said wherever somebody may change a brake because of a figure. */
export const brakeCaution =
  "Brakes: a wrong part or a wrong figure can kill. Rear wheels that lock first spin the car. Prove every change on an empty road or a brake tester before use; a competent mechanic, the law and the organiser's regulations decide.";
