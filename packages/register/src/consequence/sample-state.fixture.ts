import { builtInBook } from "../characteristic/book";
import { type Side, sides } from "../characteristic/characteristic";
import { stateKey } from "../state/key";
import type { State, StateValue } from "../state/state";
import { parseValue } from "../value/parse";

/** A state by hand: key, or `key left`, to the entry; "not fitted" where the part is absent. */
export function stateWith(entries: Readonly<Record<string, string>>): State {
  const book = builtInBook;
  const values = Object.entries(entries).map(([place, entered]): readonly [string, StateValue] => {
    const [key = "", said] = place.split(" ");
    const side: Side = sides.find((one) => one === said) ?? "whole";
    const characteristic = book.find(key);
    if (!characteristic) throw new Error(`no characteristic ${key}`);
    const parsed = parseValue(characteristic, entered);
    if (!parsed.ok) throw new Error(`${place}: ${parsed.problem.message}`);
    const source = { title: "by hand", trust: "stated" } as const;
    return [
      stateKey(key, side),
      { characteristic: key, side, value: parsed.value, origin: "reading", originId: place, source },
    ];
  });
  return new Map(values);
}

/** A car with everything the calculator asks for, apart from hardpoints. */
export const fullCar: Readonly<Record<string, string>> = {
  "front.antiRollBar.diameter": "16 mm",
  "front.antiRollBar.middleLength": "900 mm",
  "front.antiRollBar.leverLength": "200 mm",
  "front.antiRollBar.armLength": "215 mm",
  "front.antiRollBar.motionRatio": "0.6",
  "rear.antiRollBar.diameter": "14 mm",
  "rear.antiRollBar.middleLength": "820 mm",
  "rear.antiRollBar.leverLength": "210 mm",
  "rear.antiRollBar.armLength": "220 mm",
  "rear.antiRollBar.motionRatio": "0.7",
  "front.track": "1300 mm",
  "rear.track": "1290 mm",
  "front.spring.rate": "28 N/mm",
  "rear.spring.rate": "24 N/mm",
  "front.spring.motionRatio": "0.72",
  "rear.spring.motionRatio": "0.8",
  "front.spring.freeLength": "310 mm",
  "rear.spring.freeLength": "330 mm",
  "front.unsprungMass": "62 kg",
  "rear.unsprungMass": "70 kg",
  "front.cornerWeight left": "198 kg",
  "front.cornerWeight right": "192 kg",
  "rear.cornerWeight left": "216 kg",
  "rear.cornerWeight right": "214 kg",
  "tyres.front.size": "155/80 R 13 79T",
  "tyres.rear.size": "155/80 R 13 79T",
  "wheels.front.size": "5J x 13",
  "wheels.rear.size": "5J x 13",
  "driveline.ratio.fourth": "1",
  "driveline.finalDrive.ratio": "3.9",
  "front.caliper.pistons": "2",
  "front.caliper.pistonDiameter": "48 mm",
  "front.disc.diameter": "9 1/2 in",
  "brakes.pedalRatio": "5",
  "brakes.masterCylinder.diameter": "0.7 in",
  "rear.dropLink.boltThread": "M10x1.5",
  "rear.dropLink.boltGrade": "10.9",
  "rear.dropLink.spacerStack": "10 mm",
};
