import { asDrawn, bothSides, onCar } from "./plan-frame";

const axles = [40, 162] as const;

const centreLines =
  asDrawn((p) => `M${p(-12, 0)}L${p(222, 0)}`) +
  axles.map((axle) => asDrawn((p) => `M${p(axle, -50)}L${p(axle, 50)}`)).join("");

const outline = bothSides(
  (p) =>
    `M${p(0, 0)}C${p(0, 15)} ${p(2, 26)} ${p(11, 31)}C${p(20, 36)} ${p(30, 41.5)} ${p(46, 41.5)}` +
    `C${p(66, 41.5)} ${p(84, 38.5)} ${p(104, 38.5)}C${p(124, 38.5)} ${p(138, 42.5)} ${p(160, 42.5)}` +
    `C${p(184, 42.5)} ${p(198, 39)} ${p(204, 31)}C${p(207.5, 25)} ${p(208, 13)} ${p(208, 0)}`,
);
/** Bumper irons, door cuts, the edges of bonnet and boot lid. */
const panels = bothSides(
  (p) =>
    `M${p(96, 38.5)}L${p(99, 32)}M${p(147, 40.6)}L${p(147, 33)}` +
    `M${p(-2, 9)}C${p(-1.8, 18)} ${p(0.5, 28)} ${p(9.5, 32.6)}M${p(205.6, 32.4)}C${p(209.4, 26)} ${p(210.2, 14)} ${p(210.2, 8)}` +
    `M${p(7, 19)}C${p(30, 25)} ${p(58, 27)} ${p(84, 24)}M${p(177, 25)}C${p(186, 25)} ${p(196, 23)} ${p(202.5, 19)}L${p(203, 0)}`,
);
const glass = bothSides(
  (p) =>
    `M${p(86, 0)}C${p(86, 0)} ${p(86, 22)} ${p(97, 33)}C${p(100, 34)} ${p(106, 30)} ${p(110, 25)}` +
    `C${p(104, 16)} ${p(103, 8)} ${p(103, 0)}M${p(146, 0)}C${p(146, 9)} ${p(145, 17)} ${p(143, 24)}` +
    `C${p(152, 28)} ${p(160, 30)} ${p(170, 29)}C${p(175, 20)} ${p(176, 9)} ${p(176, 0)}M${p(110, 25)}L${p(143, 24)}`,
);
/** The backbone: two rails that spread at both ends to carry the suspension. */
const backbone =
  bothSides(
    (p) =>
      `M${p(24, 0)}L${p(24, 13)}L${p(52, 13)}L${p(84, 5.5)}L${p(144, 5.5)}L${p(156, 10)}L${p(180, 10)}L${p(180, 0)}`,
  ) +
  bothSides((p) => `M${p(27, 0)}L${p(27, 10.4)}L${p(51, 10.4)}M${p(157, 7.6)}L${p(177, 7.6)}L${p(177, 0)}`);

/** Wishbone, spring with damper, and disc of one axle. */
const wishbones = axles
  .map((axle) => bothSides((p) => `M${p(axle - 10, 12)}L${p(axle, 25.6)}L${p(axle + 10, 11)}`))
  .join("");
const bars = [
  asDrawn((p) => `M${p(38, 21)}L${p(19, 20)}L${p(19, -20)}L${p(38, -21)}`),
  asDrawn((p) => `M${p(164, 20)}L${p(184, 19)}L${p(184, -19)}L${p(164, -20)}`),
].join("");
const rack =
  bothSides((p) => `M${p(53.7, 14)}L${p(50, 27)}`) +
  asDrawn((p) => `M${p(55, -8)}L${p(86, -17)}L${p(108, -17)}`);

const gearbox = asDrawn((p) => `M${p(91, 7)}L${p(108, 3.4)}L${p(108, -3.4)}L${p(91, -7)}z`);
const shaft = bothSides((p) => `M${p(108, 1)}L${p(156, 1)}M${p(162, 5)}L${p(162, 26)}`);
const exhaust = asDrawn(
  (p) =>
    `M${p(66, -9)}L${p(74, -13.5)}L${p(150, -13.5)}L${p(160, -16)}L${p(186, -16)}M${p(200, -16)}L${p(213, -16)}`,
);
const seats = bothSides(
  (p) =>
    `M${p(113, 8.5)}C${p(120, 8.5)} ${p(128, 8.5)} ${p(130, 8.5)}C${p(137, 9)} ${p(137, 24)} ${p(130, 24.5)}` +
    `C${p(122, 24.5)} ${p(118, 24.5)} ${p(113, 24.5)}C${p(111, 24.5)} ${p(111, 22)} ${p(111, 16.5)}` +
    `C${p(111, 11)} ${p(111, 9)} ${p(113, 8.5)}M${p(128.5, 10.5)}L${p(128.5, 22.5)}`,
);

interface BoxProps {
  readonly back: number;
  /** Right-hand edge. */
  readonly right: number;
  readonly length: number;
  readonly width: number;
  /** Radius of the corners. */
  readonly round?: number;
}

/** A rectangle laid out along the car. */
function Box({ back, right, length, width, round = 0 }: BoxProps) {
  const [x, y] = onCar(back, right);
  return <rect x={x} y={y} width={length} height={width} rx={round} />;
}

function Round({
  back,
  right,
  radius,
}: {
  readonly back: number;
  readonly right: number;
  readonly radius: number;
}) {
  const [cx, cy] = onCar(back, right);
  return <circle cx={cx} cy={cy} r={radius} />;
}

/** Tyre with its tread, disc, and coil over the damper, four times. */
function Wheels() {
  const wheels = axles.flatMap((axle) => ([1, -1] as const).map((side) => ({ axle, side })));
  return wheels.map(({ axle, side }) => (
    <g key={`${axle} ${side}`}>
      <Box back={axle - 15} right={side > 0 ? 38.5 : -29} length={30} width={9.5} round={2.2} />
      <Box back={axle - 15} right={side > 0 ? 36.2 : -31.3} length={30} width={4.9} />
      <Box back={axle - 8} right={side > 0 ? 27 : -25.8} length={16} width={1.2} />
      <Round back={axle + 5} right={19 * side} radius={2.8} />
      <Round back={axle + 5} right={19 * side} radius={1.3} />
    </g>
  ));
}

/**
 * A small two-seat coupé from above as a drawing office would draw it: outline, wheels, axle lines, what lies inside.
 * It is the key to the car's assemblies and no picture of any car; the printed sheet shows the same one.
 */
export function PlanDrawing() {
  return (
    <g aria-hidden className="plan-drawing">
      <path d={centreLines} className="plan-chain" />
      <path d={backbone} className="plan-line" />
      <path d={wishbones + rack} className="plan-thin" />
      <path d={bars} className="plan-line" />
      <path d={shaft} className="plan-thin" />
      <path d={exhaust} className="plan-line" />
      <g className="plan-line fill-paper">
        <Wheels />
        <Box back={57} right={9} length={34} width={18} />
        <Round back={162} right={0} radius={6} />
        <Box back={186} right={-12} length={14} width={8} />
      </g>
      <g className="plan-thin fill-paper">
        <Box back={52} right={14} length={3.4} width={28} />
        <path d={gearbox} />
        {[63, 70, 77, 84].map((back) => (
          <Round key={back} back={back} right={0} radius={3} />
        ))}
        <Box back={9} right={15} length={4} width={30} />
        <Round back={16} right={25.5} radius={4} />
        <Round back={16} right={-25.5} radius={4} />
        <Round back={113} right={0} radius={1.4} />
        <Round back={68} right={15.5} radius={3.6} />
        <Box back={84} right={28} length={9} width={13} />
        <Box back={187} right={19} length={13} width={28} />
        <Round back={193.5} right={12} radius={2.2} />
        <ellipse cx={onCar(109, -17)[0]} cy={onCar(109, -17)[1]} rx="1.2" ry="6.5" />
      </g>
      <path d={seats} className="plan-line" />
      <path d={panels} className="plan-thin" />
      <path d={glass} className="plan-hidden" />
      <path d={outline} className="plan-outline" />
    </g>
  );
}
