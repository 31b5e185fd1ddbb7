/** Where the weighing formulas come from. */
export const cornerArticle = {
  title: "Spring supplier's article on corner weights",
  locus: "worked example",
  status: "read",
} as const;
export const crossPractice = {
  title: "Cross weight as right front and left rear",
  locus: "magazine article, definitions",
  status: "read-formula",
} as const;
export const raisedAxle = {
  title: "Derivation of the height of the centre of gravity with axle-height correction (1997)",
  locus: "equations 1 to 9",
  status: "read-formula",
} as const;
export const statics = { title: "Statics of a rigid body on four springs", status: "memory" } as const;
export const gumCombination = {
  title: "JCGM 100:2008 (GUM)",
  locus: "5.1, combination",
  status: "memory",
} as const;

/** Said where a car is lifted or stands on blocks. */
export const liftCaution =
  "A car on blocks or a hoist can fall and kill. Lift by a rated hoist at the jacking points, chock and tether it, and let nobody under it or in it.";
/** Said where weight is bolted into a car. */
export const ballastCaution =
  "Ballast that comes loose in a crash kills. How it must be fastened, and whether it may be carried, the organiser's regulations decide.";
