import { type Characteristic, judgeReading, type Limits, type Side } from "@trunnion/register";
import { useId } from "react";
import { Bracket } from "../../components/bracket";

export interface ReadingFieldProps {
  readonly characteristic: Characteristic;
  readonly side: Side;
  readonly limits: Limits | undefined;
  readonly entered: string;
  readonly onType: (entered: string) => void;
  readonly onLeave: () => void;
}

/** One reading, as typed, with what it comes to as it is typed. */
export function ReadingField(props: ReadingFieldProps) {
  const { characteristic, side, limits, entered, onType, onLeave } = props;
  const id = useId();
  const told = entered.trim() === "" ? undefined : judgeReading(characteristic, entered, limits);
  const label = side === "whole" ? characteristic.label : `${characteristic.label}, ${side}`;
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
          className="min-h-14 w-36 border border-ink bg-paper px-3 text-lead"
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
