export type { Adjuster, Eccentric, ScrewedJoint, Shims, TieRodThread } from "./adjuster";
export * from "./plan";
export type { Settings, Target, TargetName } from "./setting";
export { readSettings } from "./setting";
