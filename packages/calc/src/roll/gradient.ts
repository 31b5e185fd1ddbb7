import { CalcRefusal } from "../catalogue/refusal";
import { standardGravity as g } from "../quantity/unit-table/unit";
import { written } from "../spring/guard";
import {
  type AxleFigures,
  type AxleName,
  axleFigures,
  axleNames,
  type RollCar,
  type SprungBody,
  sprungBody,
} from "./car";

/** All figures of a car in roll, checked. */
export interface RollFigures {
  readonly front: AxleFigures;
  readonly rear: AxleFigures;
  readonly body: SprungBody;
}

/** One value per axle. */
export type PerAxle<T = number> = Readonly<Record<AxleName, T>>;

/** Works one value out for each axle. */
export function perAxle<T>(work: (name: AxleName) => T): PerAxle<T> {
  return { front: work("front"), rear: work("rear") };
}

/** Roll rate of an axle on its tyres, N·m/rad: springs and bar in series with the tyres. */
export function rateOnTyres({ rollRate, tyreCompliance }: AxleFigures): number {
  return 1 / (1 / rollRate.total + tyreCompliance);
}

/**
 * Checks a car and works out its figures.
 * @throws CalcRefusal (`FALLS_OVER`) when weight tips the body over faster than springs and bars hold it
 */
export function rollFigures(car: RollCar): RollFigures {
  const axles = perAxle((name) => axleFigures(car, name));
  const figures = { ...axles, body: sprungBody(car, axles) };
  if (netRate(figures) > 0) return figures;
  const held = written(totalRate(figures), "angularRate");
  const tipping = written(figures.body.mass * g * figures.body.lever, "angularRate");
  throw new CalcRefusal(
    "FALLS_OVER",
    `springs and bars hold ${held}, but the body's weight tips it by ${tipping}: it does not stand`,
  );
}

/** Roll rate of the car on its tyres, K, N·m/rad. */
export function totalRate({ front, rear }: RollFigures): number {
  return rateOnTyres(front) + rateOnTyres(rear);
}

/** K − m·g·h, N·m/rad: what is left of the roll rate against the weight that leans out. */
function netRate(figures: RollFigures): number {
  return totalRate(figures) - figures.body.mass * g * figures.body.lever;
}

/** How a car answers small lateral accelerations; every figure per m/s². */
export interface RollGradient {
  /** Roll angle, rad per m/s², with the weight of the rolling body: m·h/(K − m·g·h) on rigid tyres. */
  readonly gradient: number;
  /** The same without that weight, m·h/K. */
  readonly gradientWithoutWeight: number;
  /** Load transfer of each axle, N per m/s²: half the difference between outer and inner wheel. */
  readonly transfer: PerAxle;
  /** Front axle's share of the load transfer. */
  readonly frontTransferShare: number;
  /** Front axle's share of the roll rate between body and wheels. */
  readonly frontRollRateShare: number;
}

/**
 * Roll gradient and load transfer of a car as lateral acceleration tends to zero: exact there, and the usual figure
 * for a car. Fixed roll centres, rigid body, linear springs; tyres rigid unless their rate is given.
 *
 * @throws CalcRefusal naming the input that is no good, or when the car does not stand
 */
export function rollGradient(car: RollCar): RollGradient {
  const figures = rollFigures(car);
  const { body } = figures;
  const onTyres = axleNames.reduce(
    (sum, name) => sum + rateOnTyres(figures[name]) * tyreLean(figures[name]),
    0,
  );
  const gradient = (body.mass * body.lever + onTyres) / netRate(figures);
  const transfer = perAxle((name) => {
    const axle = figures[name];
    return axleMoment(axle, rateOnTyres(axle) * (gradient - tyreLean(axle))) / axle.track;
  });
  return {
    gradient,
    gradientWithoutWeight: (body.mass * body.lever + onTyres) / totalRate(figures),
    transfer,
    frontTransferShare: transfer.front / (transfer.front + transfer.rear),
    frontRollRateShare: frontRateShare(figures),
  };
}

/** Front share of the roll rate between body and wheels. */
export function frontRateShare({ front, rear }: RollFigures): number {
  return front.rollRate.total / (front.rollRate.total + rear.rollRate.total);
}

/** Lean of the axle on its tyres per lateral acceleration that springs and bar have no part in, rad per m/s². */
export function tyreLean({ tyreCompliance, geometric, unsprung }: AxleFigures): number {
  return tyreCompliance * (geometric + unsprung);
}

/**
 * Moment an axle hands to the road per lateral acceleration, N·m per m/s²: elastic, geometric, unsprung, and the
 * tipping of its load on soft tyres.
 */
function axleMoment(axle: AxleFigures, elastic: number): number {
  return (elastic + axle.geometric + axle.unsprung) * (1 + axle.tipping * axle.tyreCompliance);
}
