import { type Characteristic, judgeReading, type Limits, type Side } from "@trunnion/register";
import { useId } from "react";
import { Bracket } from "../../components/bracket";

export interface ReadingFieldProps {
  /** Missing where the check names none: the figure is kept as written, in the note. */
  readonly characteristic: Characteristic | undefined;
  readonly side: Side;
  /** Where on the car, in words: "front left". */
  readonly place: string;
  /** Expanded uncertainty of what it is measured with, SI. */
  readonly uncertainty: number | undefined;
  readonly limits: Limits | undefined;
  readonly entered: string;
  readonly onType: (entered: string) => void;
  readonly onLeave: () => void;
}

/** One reading, as typed, with what it comes to as it is typed. */
export function ReadingField(props: ReadingFieldProps) {
  const { characteristic, side, place, uncertainty, limits, entered, onType, onLeave } = props;
  const id = useId();
  const told =
    characteristic && entered.trim() !== ""
      ? judgeReading(characteristic, entered, limits, uncertainty)
      : undefined;
  const where = characteristic ? (side === "whole" ? "" : side) : place;
  const what = characteristic?.label ?? "Measured";
  const label = where === "" ? what : `${what}, ${where}`;
  return (
    <div className="grid gap-1">
      <label htmlFor={id} className="text-small">
        {label}
      </label>
      <div className="flex flex-wrap items-center gap-3">
        <input
          id={id}
          value={entered}
          onChange={({ target }) => onType(target.value)}
          onBlur={onLeave}
          aria-describedby={`${id}-told`}
          autoComplete="off"
          maxLength={120}
          className="min-h-14 w-36 max-w-full border border-ink bg-paper px-3 text-lead"
        />
        {told?.state === "read" && told.bracket ? <Bracket model={told.bracket} /> : null}
        <output
          id={`${id}-told`}
          className={`text-small ${told?.state === "read" && told.outside ? "font-semibold text-red" : ""}`}
        >
          {told?.text ?? ""}
        </output>
      </div>
    </div>
  );
}
