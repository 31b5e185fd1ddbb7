/** The trade designations that have a grammar of their own. */
export const designationKinds = ["thread", "grade", "tyre", "wheel"] as const;
export type DesignationKind = (typeof designationKinds)[number];
