import { CalcRefusal } from "../catalogue/refusal";
import { standardGravity as g } from "../quantity/unit-table/unit";
import { finite, positive, written } from "../spring/guard";
import { type AxleFigures, type AxleName, axleNames, type RollCar } from "./car";
import {
  type PerAxle,
  perAxle,
  type RollFigures,
  rateOnTyres,
  rollFigures,
  totalRate,
  tyreLean,
} from "./gradient";

/** Load transfer of one axle and where it comes from, N: half the difference between outer and inner wheel. */
export interface AxleTransfer {
  /** Through springs and bar. */
  readonly elastic: number;
  /** Of the sprung mass, through the roll centre. */
  readonly geometric: number;
  readonly unsprung: number;
  /** Of the load leaning over on soft tyres; 0 on rigid ones. */
  readonly tipping: number;
  readonly total: number;
  /** Wheel loads, N. */
  readonly outer: number;
  readonly inner: number;
}

/** A car at one lateral acceleration. */
export interface RollState {
  /** Roll of the body, rad, positive to the right as ISO 8855 has it: out of a left-hand bend. */
  readonly angle: number;
  readonly axles: PerAxle<AxleTransfer>;
  /** Front axle's share of all load transfer; `null` at no lateral acceleration. */
  readonly frontTransferShare: number | null;
}

/**
 * A car in steady cornering: roll angle from K·φ = m·h·(a·cos φ + g·sin φ), solved exactly, load transfer by part,
 * wheel loads. Fixed roll centres, rigid body, linear springs; no tyre side deflection, aerodynamic or drive forces.
 *
 * @param acceleration lateral, m/s², positive to the left; turning it round exchanges left and right
 * @throws CalcRefusal (`WHEEL_LIFTS`) beyond the acceleration at which an inner wheel leaves the ground, and as
 * {@link rollFigures}
 */
export function rollAt(car: RollCar, acceleration: number): RollState {
  const figures = rollFigures(car);
  const size = Math.abs(finite(acceleration, "acceleration"));
  const angle = rollAngle(figures, size);
  const axles = perAxle((name) => axleTransfer(figures[name], { angle, acceleration: size }));
  for (const name of axleNames) if (axles[name].inner < 0) throw lifted(car, name);
  const all = axles.front.total + axles.rear.total;
  return {
    angle: acceleration < 0 ? -angle : angle,
    axles,
    frontTransferShare: size === 0 ? null : axles.front.total / all,
  };
}

/** Wheel loads of a state, N, by side. */
export interface WheelLoads {
  readonly frontLeft: number;
  readonly frontRight: number;
  readonly rearLeft: number;
  readonly rearRight: number;
}

/** Wheel loads at a lateral acceleration, m/s², positive to the left, which loads the right wheels. */
export function wheelLoads(car: RollCar, acceleration: number): WheelLoads {
  const { front, rear } = rollAt(car, acceleration).axles;
  const [left, right] = acceleration < 0 ? (["outer", "inner"] as const) : (["inner", "outer"] as const);
  return { frontLeft: front[left], frontRight: front[right], rearLeft: rear[left], rearRight: rear[right] };
}

/** Newton's method from the middle of the bracket needs about six rounds; halving alone would need 52. */
const mostRounds = 100;

/**
 * Roll angle, rad, at a lateral acceleration that is not negative: Newton's method, kept between ±90° by halving.
 * There is one angle, since K > m·g·h: the body would have to lie on its side before its weight won.
 */
function rollAngle(figures: RollFigures, acceleration: number): number {
  const { body } = figures;
  const rate = totalRate(figures);
  const moment = body.mass * body.lever;
  const lean = axleNames.reduce((sum, name) => sum + rateOnTyres(figures[name]) * tyreLean(figures[name]), 0);
  let [low, high, angle] = [-Math.PI / 2, Math.PI / 2, 0];
  for (let round = 0; round < mostRounds; round++) {
    const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
    const excess = rate * angle - lean * acceleration - moment * (acceleration * cosine + g * sine);
    if (excess === 0) return angle;
    if (excess > 0) high = angle;
    else low = angle;
    const newton = angle - excess / (rate + moment * (acceleration * sine - g * cosine));
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - angle) <= 1e-15) return next;
    angle = next;
  }
  throw new CalcRefusal(
    "NO_EQUILIBRIUM",
    `no roll angle balances ${written(acceleration, "acceleration")}`,
    "acceleration",
  );
}

function axleTransfer(
  axle: AxleFigures,
  { angle, acceleration }: { angle: number; acceleration: number },
): AxleTransfer {
  const elasticMoment = rateOnTyres(axle) * (angle - tyreLean(axle) * acceleration);
  const direct = elasticMoment + (axle.geometric + axle.unsprung) * acceleration;
  const parts = {
    elastic: elasticMoment / axle.track,
    geometric: (axle.geometric * acceleration) / axle.track,
    unsprung: (axle.unsprung * acceleration) / axle.track,
    tipping: (direct * axle.tipping * axle.tyreCompliance) / axle.track,
  };
  const total = parts.elastic + parts.geometric + parts.unsprung + parts.tipping;
  return { ...parts, total, outer: axle.weight / 2 + total, inner: axle.weight / 2 - total };
}

function lifted(car: RollCar, name: AxleName): CalcRefusal {
  const first = liftAcceleration(car);
  const at = first === null ? "" : ` at ${written(first.acceleration, "acceleration")}`;
  return new CalcRefusal(
    "WHEEL_LIFTS",
    `the inner ${first?.axle ?? name} wheel leaves the ground${at}; beyond it this model says nothing`,
    "acceleration",
  );
}

/** Enough to halve any search down to the last digit of a number. */
const halvings = 60;

/** Where an inner wheel first leaves the ground. */
export interface WheelLift {
  readonly axle: AxleName;
  /** m/s² */
  readonly acceleration: number;
}

/**
 * The lateral acceleration at which an inner wheel first leaves the ground, found by halving; `null` when none does
 * up to the limit.
 * @param upTo limit of the search, m/s²; left out: 3 g, far beyond any road tyre
 */
export function liftAcceleration(car: RollCar, upTo = 3 * g): WheelLift | null {
  const figures = rollFigures(car);
  positive(upTo, "upTo");
  const inner = (name: AxleName, acceleration: number): number =>
    axleTransfer(figures[name], { angle: rollAngle(figures, acceleration), acceleration }).inner;
  const lifts = axleNames.flatMap((axle) => {
    if (inner(axle, upTo) > 0) return [];
    let [grounded, lifting] = [0, upTo];
    for (let count = 0; count < halvings; count += 1) {
      const middle = (grounded + lifting) / 2;
      if (inner(axle, middle) > 0) grounded = middle;
      else lifting = middle;
    }
    return [{ axle, acceleration: grounded }];
  });
  return lifts.toSorted((one, other) => one.acceleration - other.acceleration)[0] ?? null;
}
