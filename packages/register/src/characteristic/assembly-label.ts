import type { Assembly } from "./characteristic";

/** Names of the assemblies, as the plan's leaders say them. */
export const assemblyLabels: Readonly<Record<Assembly, string>> = {
  frontSuspension: "Front suspension",
  steering: "Steering",
  rearSuspension: "Rear suspension",
  brakes: "Brakes",
  wheels: "Wheels and tyres",
  settings: "Settings",
  chassis: "Chassis",
  body: "Body",
  engine: "Engine",
  fuel: "Fuel",
  oil: "Oil",
  exhaust: "Exhaust",
  electrical: "Electrical",
  driveline: "Driveline",
  safety: "Safety equipment",
};
