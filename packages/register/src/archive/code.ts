// table: the codes that fields of an archive may hold, as the database has them

/** Why another value stands in for the nominal. */
export const alternativeRoleCodes = ["periodOption", "acceptedSubstitute", "serviceReplacement"] as const;

/** What has become of a car. */
export const carStatusCodes = [
  "inUse",
  "underRestoration",
  "laidUp",
  "dismantled",
  "destroyed",
  "lostFromSight",
  "identityDisputed",
  "unknown",
] as const;

/** An owners' club or a fleet: one tenancy. */
export const clubKindCodes = ["ownersClub", "fleet"] as const;

/** Outcome of scrutineering. */
export const decisionOutcomeCodes = ["pass", "passWithAdvice", "refused"] as const;

/** Scrutineer's result for one check. */
export const findingResultCodes = ["pass", "advise", "refuse", "notApplicable"] as const;

/** What a number identifies. */
export const identityKindCodes = ["chassis", "commission", "engine", "body", "registration"] as const;

/** How a number on a car stands. */
export const identityStandingCodes = ["accepted", "disputed", "restamped"] as const;

/** How far a reading-in is. */
export const importStatusCodes = ["planned", "running", "interrupted", "done", "failed", "undone"] as const;

/** How the car was loaded when it was measured. */
export const loadStateCodes = ["kerb", "driver", "driverAndPassenger", "unknown"] as const;

/** What a registrar decided about a number that several cars claim. */
export const numberOutcomeCodes = ["oneHolds", "allStand", "sameCar", "undecided"] as const;

/** What kind of thing a feature of a part is. */
export const partFeatureKindCodes = [
  "characteristic",
  "thread",
  "length",
  "diameter",
  "offset",
  "stop",
  "other",
] as const;

/** How a part goes with a series. */
export const partFitStandingCodes = ["original", "fits", "altered", "doesNotFit"] as const;

/** Where a part comes from. */
export const partKindCodes = ["works", "donor", "substitute"] as const;

/** What a member noted about a part on a day. */
export const partNoteKindCodes = ["found", "notFound", "confirmed", "doubted"] as const;

/** What a member may do. */
export const roleCodes = ["registrar", "owner", "scrutineer", "fleetManager"] as const;

/** Side of the car, seen from the driver's seat; `whole` where it has one. */
export const sideCodes = ["whole", "left", "right"] as const;

/** What kind of thing a source is. */
export const sourceKindCodes = [
  "worksRecord",
  "publication",
  "letter",
  "photograph",
  "keeperStatement",
  "registerFile",
  "inspection",
  "other",
] as const;

/** How a version of a rule set stands. */
export const ruleSetStatusCodes = ["draft", "current", "superseded"] as const;

/** Where a version of a specification stands. */
export const specificationStatusCodes = ["draft", "current", "superseded"] as const;

/** Where a submission stands. */
export const submissionStatusCodes = [
  "draft",
  "submitted",
  "queried",
  "answered",
  "accepted",
  "declined",
  "withdrawn",
] as const;

/** How far a statement is trusted. */
export const trustCodes = ["documented", "stated", "inferred", "unknown"] as const;

/** Kind of a recorded value. */
export const valueKindCodes = ["quantity", "choice", "designation", "text", "date", "absent"] as const;
