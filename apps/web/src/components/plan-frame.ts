/** Leaders' numbers stand along the upper and lower edge. One unit is about 19 mm of car. */
const height = 152;

/** Parts of the drawing to show, as view boxes. */
export const planFrame = {
  /** With the leaders' numbers. */
  view: `24 0 254 ${height}`,
  /** The car alone. */
  car: `36 24 232 ${height - 48}`,
} as const;

const nose = 46;
const centre = height / 2;

export type Place = readonly [x: number, y: number];

/** A place told from the nose: so far back, so far to the car's right. Forward is to the left of the drawing. */
export function onCar(back: number, right: number): Place {
  return [nose + back, centre - right];
}

type Point = (back: number, right: number) => string;

const right: Point = (back, aside) => onCar(back, aside).join(" ");
const left: Point = (back, aside) => onCar(back, -aside).join(" ");

/** A path drawn as given, for what is not the same on both sides. */
export const asDrawn = (path: (point: Point) => string): string => path(right);
/** A path and its mirror image in the centre plane. */
export const bothSides = (path: (point: Point) => string): string => path(right) + path(left);

interface LeaderPlace {
  readonly at: Place;
  readonly from: Place;
}

const upper = (slot: number): Place => [38 + slot * 32, 12];
const lower = (slot: number): Place => [54 + slot * 32, height - 12];

/** Where each assembly's leader starts (its number) and what it points at; slots keep leaders from crossing. */
export const leaderPlaces: Readonly<Record<string, LeaderPlace>> = {
  settings: { from: upper(0), at: onCar(31, 34) },
  frontSuspension: { from: upper(1), at: onCar(44, 20) },
  oil: { from: upper(2), at: onCar(68, 15.5) },
  engine: { from: upper(3), at: onCar(82, 5) },
  electrical: { from: upper(4), at: onCar(90, 24) },
  safety: { from: upper(5), at: onCar(124, 17) },
  rearSuspension: { from: upper(6), at: onCar(167, 18) },
  fuel: { from: upper(7), at: onCar(196, 12) },
  brakes: { from: lower(0), at: onCar(36, -26.4) },
  steering: { from: lower(1), at: onCar(53.6, -11) },
  driveline: { from: lower(2), at: onCar(101, -3.5) },
  chassis: { from: lower(3), at: onCar(116, -5.5) },
  body: { from: lower(4), at: onCar(136, -39.4) },
  wheels: { from: lower(5), at: onCar(160, -34) },
  exhaust: { from: lower(6), at: onCar(193, -16) },
};
