/** Where the fastener formulas and figures come from. */
export const iso898 = {
  title: "ISO 898-1",
  locus: "stress area, strengths, proof loads",
  status: "read",
} as const;
export const saeJ429 = {
  title: "SAE J429, in Shigley, Mechanical Engineering Design, 9th ed.",
  locus: "table 8-9, p. 433",
  status: "read",
} as const;
export const shigleyTorque = {
  title: "Shigley, Mechanical Engineering Design, 9th ed.",
  locus: "eq. 8-5, tables 8-2, 8-14 and 8-15",
  status: "read",
} as const;
export const shigleyJoint = {
  title: "Shigley, Mechanical Engineering Design, 9th ed.",
  locus: "8-7, example 8-3, p. 439",
  status: "read",
} as const;
export const vdi2230 = {
  title: "VDI 2230",
  locus: "tightening stress, endurance of threads",
  status: "memory",
} as const;
export const handbookEngagement = {
  title: "Machinery's Handbook, 24th ed.",
  locus: "length of engagement, formula 1",
  status: "read-formula",
} as const;
export const threadFits = {
  title: "ISO 965-1, ASME B1.1",
  locus: "tolerance formulas, 6g/6H and 2A/2B",
  status: "memory",
} as const;
export const threadBasics = {
  title: "ISO 68-1, ISO 261, ASME B1.1, BS 84, BS 93",
  locus: "basic profiles and sizes",
  status: "memory",
} as const;
export const engagementRule = {
  title: "Guide to thread engagement",
  locus: "1 d steel, 1½ d cast iron, 2 d aluminium",
  status: "read",
} as const;
export const beam = { title: "Statics: cantilever, πd³/32", status: "memory" } as const;
export const eurocode = {
  title: "EN 1993-1-8",
  locus: "table 3.4, shear of bolts",
  status: "memory",
} as const;
export const boltLengths = {
  title: "ISO 888, ASME B18.2.1",
  locus: "lengths of bolts and threads",
  status: "memory",
} as const;
export const workshop = { title: "Workshop practice", status: "common practice, no source" } as const;

/** Said wherever somebody may fit a bolt because of a figure. */
export const boltCaution =
  "A bolt in suspension, steering, brakes or harness that fails can kill. Use the maker's part, grade and torque where they are known; the figures here do not replace them. A competent mechanic and the organiser's regulations decide.";
