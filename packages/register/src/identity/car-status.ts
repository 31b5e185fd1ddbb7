/** What has become of a car, as the record keeps it. */
export const carStatuses = [
  "inUse",
  "underRestoration",
  "laidUp",
  "dismantled",
  "destroyed",
  "lostFromSight",
  "identityDisputed",
  "unknown",
] as const;
export type CarStatus = (typeof carStatuses)[number];

/** Each status in words. */
export const carStatusWords: Readonly<Record<CarStatus, string>> = {
  inUse: "In use",
  underRestoration: "Under restoration",
  laidUp: "Laid up",
  dismantled: "Dismantled",
  destroyed: "Destroyed",
  lostFromSight: "Lost from sight",
  identityDisputed: "Identity disputed",
  unknown: "Not known",
};
