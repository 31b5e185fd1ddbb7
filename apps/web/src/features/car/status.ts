/** What has become of a car. */
export type CarStatus =
  | "inUse"
  | "underRestoration"
  | "laidUp"
  | "dismantled"
  | "destroyed"
  | "lostFromSight"
  | "identityDisputed"
  | "unknown";

export const statusWords: Readonly<Record<CarStatus, string>> = {
  inUse: "In use",
  underRestoration: "Under restoration",
  laidUp: "Laid up",
  dismantled: "Dismantled",
  destroyed: "Destroyed",
  lostFromSight: "Lost from sight",
  identityDisputed: "Identity disputed",
  unknown: "Not known",
};
