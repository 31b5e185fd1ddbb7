import type { Assembly } from "../characteristic/characteristic";
import type { Station } from "./check";

/** Station at which an assembly is looked at, where a check does not say its own. */
export const assemblyStation: Readonly<Record<Assembly, Station>> = {
  frontSuspension: "front",
  steering: "front",
  rearSuspension: "rear",
  brakes: "driverSide",
  wheels: "driverSide",
  settings: "front",
  chassis: "underneath",
  body: "driverSide",
  engine: "engineBay",
  fuel: "engineBay",
  oil: "engineBay",
  exhaust: "rear",
  electrical: "engineBay",
  driveline: "underneath",
  safety: "cockpit",
};
