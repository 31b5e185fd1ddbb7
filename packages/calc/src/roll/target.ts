import { wheelRateOfRollRate } from "../bar/rate";
import { CalcRefusal } from "../catalogue/refusal";
import { standardGravity as g } from "../quantity/unit-table/unit";
import { positive, written } from "../spring/guard";
import { type AxleFigures, type AxleName, axleNames, type RollCar } from "./car";
import { type PerAxle, perAxle, type RollFigures, rateOnTyres, rollFigures, tyreLean } from "./gradient";

/** What may be changed: both axles' bars or springs reach two aims together, one axle's reaches one. */
export const rollChanges = ["bars", "springs", "frontBar", "rearBar", "frontSprings", "rearSprings"] as const;
export type RollChange = (typeof rollChanges)[number];

/** What is wanted, as lateral acceleration tends to zero. */
export interface RollAim {
  /** Roll gradient, rad per m/s². */
  readonly gradient?: number | undefined;
  /** Front axle's share of lateral load transfer, 0 to 1. */
  readonly frontTransferShare?: number | undefined;
}

interface Plan {
  readonly part: "bar" | "springs";
  readonly axles: readonly AxleName[];
}
const plans: Readonly<Record<RollChange, Plan>> = {
  bars: { part: "bar", axles: axleNames },
  springs: { part: "springs", axles: axleNames },
  frontBar: { part: "bar", axles: ["front"] },
  rearBar: { part: "bar", axles: ["rear"] },
  frontSprings: { part: "springs", axles: ["front"] },
  rearSprings: { part: "springs", axles: ["rear"] },
};

/**
 * The reverse of {@link rollGradient}: the same car with the bars or springs that reach an aim. Closed form: moments
 * per lateral acceleration are linear in what is asked for, so it reaches the aim to rounding, soft tyres included.
 *
 * @throws CalcRefusal when the aim does not fit the change (two aims for two axles, one for one), when no rate that
 * is not negative reaches it (saying what stands in the way), and as {@link rollFigures}
 */
export function reachRoll(car: RollCar, { change, aim }: { change: RollChange; aim: RollAim }): RollCar {
  const plan = plans[change];
  const figures = rollFigures(car);
  const wanted =
    plan.axles.length === 2 ? bothAxles(figures, aim) : oneAxle(figures, aim, plan.axles[0] ?? "front");
  const changed = perAxle((name) => {
    if (!plan.axles.includes(name)) return car[name];
    const needed = neededRate(figures[name], { name, wanted });
    return { ...car[name], ...changedPart(car, { name, needed, part: plan.part, figures }) };
  });
  const reached = { ...car, ...changed };
  // A share alone can also be met by a car that falls over; that one is refused here.
  rollFigures(reached);
  return reached;
}

/** A gradient and the elastic moment of each axle that goes with it, both per lateral acceleration. */
interface Wanted {
  readonly gradient: number;
  readonly elastic: PerAxle;
}

/** Elastic moments of both axles together at a gradient: m·h·(1 + g·φ′). */
function elasticSum({ body }: RollFigures, gradient: number): number {
  return body.mass * body.lever * (1 + g * gradient);
}

/** Load transfer per elastic moment: how the moment an axle hands to the road grows, over its track. */
const transferFactor = (axle: AxleFigures): number => (1 + axle.tipping * axle.tyreCompliance) / axle.track;

function bothAxles(figures: RollFigures, aim: RollAim): Wanted {
  if (aim.gradient === undefined || aim.frontTransferShare === undefined)
    throw aimRefusal("two axles can reach a roll gradient and a front share together: give both");
  const gradient = positive(aim.gradient, "gradient");
  const share = checkedShare(aim.frontTransferShare);
  const [front, rear] = [transferFactor(figures.front), transferFactor(figures.rear)];
  const [frontDirect, rearDirect] = [direct(figures.front), direct(figures.rear)];
  const sum = elasticSum(figures, gradient);
  const atFront =
    (share * rear * (sum + rearDirect) - (1 - share) * front * frontDirect) /
    ((1 - share) * front + share * rear);
  return { gradient, elastic: { front: atFront, rear: sum - atFront } };
}

const direct = (axle: AxleFigures): number => axle.geometric + axle.unsprung;

function oneAxle(figures: RollFigures, aim: RollAim, name: AxleName): Wanted {
  if ((aim.gradient === undefined) === (aim.frontTransferShare === undefined))
    throw aimRefusal("one axle can reach either a roll gradient or a front share: give one of them");
  const kept = figures[name === "front" ? "rear" : "front"];
  const wantedAt = (gradient: number): Wanted => {
    const other = rateOnTyres(kept) * (gradient - tyreLean(kept));
    const own = elasticSum(figures, gradient) - other;
    return {
      gradient,
      elastic: name === "front" ? { front: own, rear: other } : { front: other, rear: own },
    };
  };
  if (aim.gradient !== undefined) return wantedAt(positive(aim.gradient, "gradient"));
  const share = checkedShare(aim.frontTransferShare ?? Number.NaN);
  const off = ({ elastic }: Wanted): number =>
    (1 - share) * transferFactor(figures.front) * (elastic.front + direct(figures.front)) -
    share * transferFactor(figures.rear) * (elastic.rear + direct(figures.rear));
  // `off` is a straight line over the gradient: two of its points give its zero exactly.
  const [atZero, atOne] = [off(wantedAt(0)), off(wantedAt(1))];
  return wantedAt(atZero / (atZero - atOne));
}

function checkedShare(share: number): number {
  if (share > 0 && share < 1) return share;
  throw new CalcRefusal(
    "SHARE_OUT_OF_RANGE",
    `front share must lie between 0 and 1, but is ${share}`,
    "frontTransferShare",
  );
}

function aimRefusal(message: string): CalcRefusal {
  return new CalcRefusal("AIM_DOES_NOT_FIT", message, "gradient");
}

/** Roll rate between body and wheels that carries the elastic moment at what the tyres leave of the roll. */
function neededRate(axle: AxleFigures, { name, wanted }: { name: AxleName; wanted: Wanted }): number {
  const elastic = wanted.elastic[name];
  const roll = wanted.gradient - axle.tyreCompliance * (elastic + direct(axle));
  const rate = elastic / roll;
  // Both may be negative: an axle can lean further on its tyres than the body does, and its springs then push back.
  if (Number.isFinite(rate) && rate >= 0) return rate;
  throw new CalcRefusal(
    "OUT_OF_REACH",
    `no rate at the ${name} reaches the aim: ${whyNot(axle, { name, elastic })}`,
    name,
  );
}

function whyNot(
  { tyreCompliance }: AxleFigures,
  { name, elastic }: { name: AxleName; elastic: number },
): string {
  if (elastic < 0) return `springs and bar would have to push the ${name} the wrong way`;
  return tyreCompliance > 0
    ? `the ${name} tyres alone roll further than that`
    : "the body would have to roll inwards";
}

interface ChangedPartInput {
  readonly name: AxleName;
  readonly needed: number;
  readonly part: Plan["part"];
  readonly figures: RollFigures;
}

function changedPart(car: RollCar, { name, needed, part, figures }: ChangedPartInput) {
  const { track, springBase } = car[name];
  const { springs, bar } = figures[name].rollRate;
  if (part === "bar")
    return { barWheelRate: wheelRateOfRollRate(remainder({ needed, kept: springs, part, name }), track) };
  return {
    springWheelRate: wheelRateOfRollRate(remainder({ needed, kept: bar, part, name }), springBase ?? track),
  };
}

/** A bar short of nothing by rounding is no bar, not an impossible one. */
const rounding = 1e-9;

/** What the changed part has to add to the part that stays; a bar may vanish, springs may not. */
function remainder({
  needed,
  kept,
  part,
  name,
}: {
  needed: number;
  kept: number;
  part: Plan["part"];
  name: AxleName;
}): number {
  const rest = needed - kept;
  if (part === "bar" ? rest >= -rounding * kept : rest > 0) return Math.max(0, rest);
  const [has, wants] = [written(kept, "angularRate"), written(needed, "angularRate")];
  const keeps = part === "bar" ? "springs" : "bar";
  throw new CalcRefusal(
    "OUT_OF_REACH",
    `the ${name} ${keeps} alone ${keeps === "bar" ? "gives" : "give"} ${has}, the aim wants ${wants}: a softer one is needed there first`,
    name,
  );
}
