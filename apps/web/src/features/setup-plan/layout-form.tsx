import type { PlanLayout } from "@trunnion/register";
import { Button } from "../../components/button";
import { fieldId } from "../../components/form/field-id";

export interface LayoutFormProps {
  readonly axle: "front" | "rear";
  readonly side: "left" | "right";
  readonly choices: Extract<PlanLayout, { readonly known: "unknown" }>["choices"];
  /** Address of the page, without what was typed. */
  readonly here: string;
}

/** Asks how the wheels are guided, where the record does not say. */
export function LayoutForm({ axle, side, choices, here }: LayoutFormProps) {
  const id = fieldId("layout");
  return (
    <form action={here} className="grid max-w-prose gap-4">
      <p>
        The record does not say how this car's {axle} wheels are guided, and a plan follows from nothing else.
        Recorded once, it need not be said here.
      </p>
      <input type="hidden" name="axle" value={axle} />
      <input type="hidden" name="side" value={side} />
      <div className="grid gap-1">
        <label htmlFor={id} className="font-semibold">
          The {axle} wheels are guided by
        </label>
        <select id={id} name="layout" className="field" defaultValue={choices[0]?.code}>
          {choices.map(({ code, label }) => (
            <option key={code} value={code}>
              {label}
            </option>
          ))}
        </select>
        <p className="text-fine text-soft">
          What is not in this list has no camber or toe to plan, or no pivots in the dictionary yet.
        </p>
      </div>
      <div>
        <Button>Show what it needs</Button>
      </div>
    </form>
  );
}
