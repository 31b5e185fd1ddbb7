import { type FigureChange, ratioOfFigure } from "@trunnion/register";

const WIDTH = 240;
const HEIGHT = 26;
const EDGE = 4;

/** Where both stand on one scale that has nought and both on it; nothing where there is nothing to draw. */
export function gaugePlaces(figure: FigureChange) {
  const { numberBefore, numberAfter, onlyRatio } = figure;
  const ratio = ratioOfFigure(figure);
  const [a, b] = onlyRatio && ratio !== undefined ? [1, ratio] : [numberBefore, numberAfter];
  if (a === undefined || b === undefined || (a === 0 && b === 0)) return undefined;
  const [low, high] = [Math.min(0, a, b), Math.max(0, a, b)];
  const place = (value: number) => EDGE + ((value - low) / (high - low)) * (WIDTH - 2 * EDGE);
  return { zero: place(0), before: place(a), after: place(b) };
}

/** Before and after as two lengths from nought, one over the other: a picture beside the words, which say all. */
export function Gauge({ figure }: { readonly figure: FigureChange }) {
  const places = gaugePlaces(figure);
  if (places === undefined) return null;
  const { zero, before, after } = places;
  const bar = (to: number) => ({ x: Math.min(zero, to), width: Math.max(1, Math.abs(to - zero)) });
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} className="block h-auto w-full max-w-60" aria-hidden="true">
      <rect {...bar(before)} y="3" height="7" fill="none" stroke="var(--ink)" strokeWidth="1" />
      <rect {...bar(after)} y="14" height="8" fill="var(--red)" />
      <line x1={zero} x2={zero} y1="0" y2={HEIGHT} stroke="var(--ink)" strokeWidth="1" />
    </svg>
  );
}
