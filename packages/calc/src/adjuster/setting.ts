import { camberOf, castorOf, kingpinOf, toeInOf } from "../alignment/axis";
import { CalcRefusal } from "../catalogue/refusal";
import type { Corner } from "../linkage/corner";

/** What an alignment gauge shows, rad, trade signs. */
export interface Settings {
  readonly camber: number;
  /** `null` where nothing steers. */
  readonly castor: number | null;
  readonly kingpin: number | null;
  /** Of this wheel. */
  readonly toeIn: number;
}
/** An angle that can be asked for. */
export type TargetName = "camber" | "castor" | "toeIn";

/** What is wanted, rad; what is left out may become what it will. */
export type Target = Readonly<Partial<Record<TargetName, number | undefined>>>;

/** Reads the settings of a corner where it stands. */
export function readSettings({ wheel, steeringAxis }: Corner): Settings {
  const settings = { camber: camberOf(wheel.spin), toeIn: toeInOf(wheel.spin, wheel.side) };
  if (steeringAxis === null) return { ...settings, castor: null, kingpin: null };
  const { upper, lower } = steeringAxis;
  const axis = { x: upper.x - lower.x, y: upper.y - lower.y, z: upper.z - lower.z };
  return { ...settings, castor: castorOf(axis), kingpin: kingpinOf(axis, wheel.side) };
}

/**
 * A wanted setting of a corner.
 * @throws CalcRefusal for castor where nothing steers
 */
export function settingOf(settings: Settings, name: TargetName): number {
  const value = settings[name];
  if (value !== null) return value;
  throw new CalcRefusal("NO_STEERING", "this corner does not steer, so it has no castor to set", "castor");
}
