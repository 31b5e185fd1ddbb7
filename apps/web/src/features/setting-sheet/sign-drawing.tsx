import type { CornerSigns } from "@trunnion/api";
import type { ReactNode } from "react";

export interface SignDrawingProps {
  readonly signs: CornerSigns;
  readonly sideWords: { readonly left: string; readonly right: string };
}

type Wheel = CornerSigns["front"]["left"];

/** How many times too large an angle is drawn, and the most it is drawn to. */
const camberTimes = 10;
const toeTimes = 25;
const most = 32;

const degrees = (rad: number) => (rad * 180) / Math.PI;
const drawn = (rad: number, times: number) =>
  Math.round(Math.max(-most, Math.min(most, degrees(rad) * times)) * 10) / 10;

/** Angles smaller than this are drawn and said as nought, rad. */
const nought = 1e-4;

function words(rad: number | undefined, negative: string, positive: string): string {
  if (rad === undefined) return "not read";
  if (Math.abs(rad) < nought) return "upright";
  return rad < 0 ? negative : positive;
}

const camberWords = ({ camber }: Wheel) => words(camber, "top leans in", "top leans out");
const toeWords = ({ toeIn }: Wheel) =>
  words(toeIn, "points out", "points in").replace("upright", "straight ahead");

/**
 * The car from above and both axles from the front with the wheels turned far beyond their true angles, so that a
 * wrong sign is seen. From the front the car's left is on the right of the picture, as it is for whoever stands there.
 */
export function SignDrawing({ signs, sideWords }: SignDrawingProps) {
  return (
    <figure className="sign-drawing">
      <FromAbove signs={signs} sideWords={sideWords} />
      <FromFront signs={signs} sideWords={sideWords} axle="front" />
      <FromFront signs={signs} sideWords={sideWords} axle="rear" />
      <figcaption className="text-fine text-soft">
        Signs, not sizes: toe is drawn {toeTimes} times and camber {camberTimes} times too large, up to {most}
        °. A wheel that was not read is drawn dashed.
      </figcaption>
    </figure>
  );
}

function TopWheel({
  wheel,
  x,
  y,
  out,
}: {
  readonly wheel: Wheel;
  readonly x: number;
  readonly y: number;
  readonly out: 1 | -1;
}) {
  const known = wheel.toeIn !== undefined;
  // Nose up: toe-in turns the left wheel clockwise, the right one the other way.
  const turn = known ? drawn(wheel.toeIn ?? 0, toeTimes) * -out : 0;
  return (
    <g transform={`translate(${x} ${y}) rotate(${turn})`}>
      <rect
        x="-8"
        y="-21"
        width="16"
        height="42"
        rx="3"
        className="fill-paper stroke-ink"
        strokeWidth="1.6"
        {...(known ? {} : { strokeDasharray: "3 3" })}
      />
      {known ? <path d="M0 -21v-10" className="stroke-red" strokeWidth="1.6" /> : null}
    </g>
  );
}

function FromAbove({ signs, sideWords }: SignDrawingProps): ReactNode {
  const says = (["front", "rear"] as const)
    .flatMap((axle) =>
      (["left", "right"] as const).map(
        (side) => `${axle} ${sideWords[side].toLowerCase()} ${toeWords(signs[axle][side])}`,
      ),
    )
    .join(", ");
  return (
    <svg role="img" aria-label={`Toe from above: ${says}.`} viewBox="0 0 180 240" className="sign-above">
      <path
        d="M58 24C66 14 114 14 122 24L126 84V170L120 214H60L54 170V84z"
        fill="none"
        className="stroke-line"
        strokeWidth="1"
      />
      <path d="M90 8V232" className="stroke-line" strokeWidth="1" strokeDasharray="10 3 2 3" />
      <path d="M40 62H140M40 182H140" className="stroke-line" strokeWidth="1" />
      <TopWheel wheel={signs.front.left} x={40} y={62} out={-1} />
      <TopWheel wheel={signs.front.right} x={140} y={62} out={1} />
      <TopWheel wheel={signs.rear.left} x={40} y={182} out={-1} />
      <TopWheel wheel={signs.rear.right} x={140} y={182} out={1} />
      <text x="90" y="128" textAnchor="middle">
        from above
      </text>
      <text x="4" y="126">
        {sideWords.left}
      </text>
      <text x="176" y="126" textAnchor="end">
        {sideWords.right}
      </text>
    </svg>
  );
}

function FrontWheel({ wheel, x, out }: { readonly wheel: Wheel; readonly x: number; readonly out: 1 | -1 }) {
  const known = wheel.camber !== undefined;
  // Positive camber leans the top outwards: away from the middle of the picture.
  const turn = known ? drawn(wheel.camber ?? 0, camberTimes) * out : 0;
  return (
    <g transform={`translate(${x} 76) rotate(${turn} 0 24)`}>
      <rect
        x="-8"
        y="-24"
        width="16"
        height="48"
        rx="3"
        className="fill-paper stroke-ink"
        strokeWidth="1.6"
        {...(known ? {} : { strokeDasharray: "3 3" })}
      />
      {known ? <path d="M0 -24v-10" className="stroke-red" strokeWidth="1.6" /> : null}
    </g>
  );
}

function FromFront({
  signs,
  sideWords,
  axle,
}: SignDrawingProps & { readonly axle: "front" | "rear" }): ReactNode {
  const { left, right } = signs[axle];
  const says = `${sideWords.left.toLowerCase()} ${camberWords(left)}, ${sideWords.right.toLowerCase()} ${camberWords(right)}`;
  return (
    <svg
      role="img"
      aria-label={`Camber of the ${axle} axle from the front: ${says}.`}
      viewBox="0 0 180 124"
      className="sign-front"
    >
      <path d="M8 101H172" className="stroke-ink" strokeWidth="1.4" />
      <path d="M90 30V108" className="stroke-line" strokeWidth="1" strokeDasharray="10 3 2 3" />
      <path d="M40 76H140M70 60H110V88H70z" fill="none" className="stroke-line" strokeWidth="1" />
      <FrontWheel wheel={right} x={40} out={-1} />
      <FrontWheel wheel={left} x={140} out={1} />
      <text x="90" y="20" textAnchor="middle">
        {axle} axle, from the front
      </text>
      <text x="8" y="118">
        {sideWords.right}
      </text>
      <text x="172" y="118" textAnchor="end">
        {sideWords.left}
      </text>
    </svg>
  );
}
