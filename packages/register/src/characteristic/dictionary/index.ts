import type { Characteristic } from "../characteristic";
import { body } from "./body";
import { brakes } from "./brake";
import { chassis } from "./chassis";
import { driveline } from "./driveline";
import { electrical } from "./electrical";
import { engine } from "./engine";
import { exhaust } from "./exhaust";
import { frontSuspension } from "./front-suspension";
import { fuel } from "./fuel";
import { hardpoints } from "./hardpoint";
import { oil } from "./oil";
import { rearSuspension } from "./rear-suspension";
import { safety } from "./safety";
import { settings } from "./setting";
import { steering } from "./steering";
import { withUsual } from "./usual";
import { wheels } from "./wheel";

/**
 * The built-in dictionary, in walking order of the assemblies, hardpoints last. Keys are stable: records, rules and
 * specifications refer to them.
 */
export const builtInCharacteristics: readonly Characteristic[] = [
  ...frontSuspension,
  ...steering,
  ...rearSuspension,
  ...brakes,
  ...wheels,
  ...settings,
  ...chassis,
  ...body,
  ...engine,
  ...fuel,
  ...oil,
  ...exhaust,
  ...electrical,
  ...driveline,
  ...safety,
  ...hardpoints,
].map(withUsual);
