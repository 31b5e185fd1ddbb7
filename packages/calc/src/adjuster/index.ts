export type { Adjuster, Eccentric, ScrewedJoint, Shims, Slot, TieRodThread } from "./adjuster";
export type { CamberBolt } from "./camber-bolt";
export * from "./plan";
export type { Settings, Target, TargetName } from "./setting";
export { readSettings } from "./setting";
