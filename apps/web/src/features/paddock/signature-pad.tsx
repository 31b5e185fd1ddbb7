import { inspectionLimits } from "@trunnion/register";
import { type PointerEvent, useRef } from "react";

const WIDTH = 600;
const HEIGHT = 200;

export interface SignaturePadProps {
  /** Strokes as an SVG path; empty for none. */
  readonly path: string;
  readonly onSign: (path: string) => void;
}

/** A place to sign with a finger; the name typed beside it says the same where nobody can. */
export function SignaturePad({ path, onSign }: SignaturePadProps) {
  const drawing = useRef(false);
  const strokes = useRef(path);

  function point(event: PointerEvent<SVGSVGElement>): string {
    const box = event.currentTarget.getBoundingClientRect();
    const x = Math.round(((event.clientX - box.left) / box.width) * WIDTH);
    const y = Math.round(((event.clientY - box.top) / box.height) * HEIGHT);
    return `${Math.min(Math.max(x, 0), WIDTH)} ${Math.min(Math.max(y, 0), HEIGHT)}`;
  }

  function add(step: string) {
    if (strokes.current.length + step.length > inspectionLimits.signature) return;
    strokes.current = strokes.current === "" ? step : `${strokes.current} ${step}`;
    onSign(strokes.current);
  }

  return (
    <div className="grid gap-1">
      <div className="flex items-baseline justify-between">
        <span className="text-small">Signature</span>
        <button
          type="button"
          className="min-h-11 px-2 text-small underline"
          onClick={() => {
            strokes.current = "";
            onSign("");
          }}
        >
          Clear the signature
        </button>
      </div>
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={path === "" ? "Place for a signature, empty" : "Signature"}
        className="w-full touch-none border border-ink bg-paper"
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          drawing.current = true;
          add(`M${point(event)}`);
        }}
        onPointerMove={(event) => {
          if (drawing.current) add(`L${point(event)}`);
        }}
        onPointerUp={() => {
          drawing.current = false;
        }}
        onPointerCancel={() => {
          drawing.current = false;
        }}
      >
        <path d="M20 160H580" className="stroke-line" strokeWidth="1" strokeDasharray="4 4" />
        <path d={path} fill="none" className="stroke-ink" strokeWidth="4" strokeLinecap="round" />
      </svg>
    </div>
  );
}
