import { type Assembly, type Characteristic, type CharacteristicBook, foldName } from "@trunnion/register";
import { useEffect, useRef } from "react";
import { Button } from "../../components/button";
import { useForm } from "../../components/form/edit-form";
import { fieldId } from "../../components/form/field-id";
import type { Leader } from "../../components/plan";
import { Plan, PlanLegend } from "../../components/plan";
import type { Ticked } from "./use-ticked";

export interface PartChooserProps {
  readonly book: CharacteristicBook;
  readonly leaders: readonly Leader[];
  /** The assembly shown, and what is looked for; both empty at first. */
  readonly assembly: string;
  readonly find: string;
  readonly ticked: Ticked;
  /** Address of the page with another assembly. */
  readonly linkTo: (assembly: string) => string;
  /** Takes a choice in the page itself, where there is a script. */
  readonly choose?: (shown: { readonly assembly: string; readonly find: string }) => void;
}

/** Most parts that a search lists. */
const FOUND = 40;

/** Characteristics of an assembly, or those whose name has every word looked for. */
export function partsShown(
  book: CharacteristicBook,
  assembly: string,
  find: string,
): readonly Characteristic[] {
  const words = find
    .trim()
    .split(/\s+/)
    .map(foldName)
    .filter((word) => word !== "");
  if (words.length > 0) {
    return book.all
      .filter(({ label, also = [] }) => {
        const names = [label, ...also].map(foldName);
        return words.every((word) => names.some((name) => name.includes(word)));
      })
      .slice(0, FOUND);
  }
  return book.all.filter((one) => one.assembly === (assembly as Assembly));
}

/** The plan, a search, and the parts they lead to, to tick. Stands inside a form. */
export function PartChooser({ book, leaders, assembly, find, ticked, linkTo, choose }: PartChooserProps) {
  const shown = partsShown(book, assembly, find);
  const parts = useRef<HTMLDivElement>(null);
  const { tick } = ticked;
  // What was ticked before this script came.
  useEffect(() => {
    const boxes = parts.current?.querySelectorAll<HTMLInputElement>("input[type=checkbox]:checked") ?? [];
    if (boxes.length > 0)
      tick(
        [...boxes].map(({ value }) => value),
        true,
      );
  }, [tick]);
  const link = (leader: Leader) => linkTo(leader.assembly);
  // Here at once, where there is a script: a form that is sent is emptied when the answer comes, and ticks with it.
  const look = (event: React.MouseEvent<HTMLButtonElement>) => {
    const field = event.currentTarget.form?.elements.namedItem("find");
    if (!choose || !(field instanceof HTMLInputElement)) return;
    event.preventDefault();
    choose({ assembly, find: field.value });
  };
  const take = (event: React.MouseEvent<HTMLDivElement>) => {
    const anchor = (event.target as Element).closest("a");
    const leader = leaders.find((one) => anchor?.getAttribute("href") === link(one));
    if (!choose || !leader) return;
    event.preventDefault();
    choose({ assembly: leader.assembly, find: "" });
  };
  return (
    <div className="grid grid-cols-1 items-start gap-x-12 gap-y-5 wide:grid-cols-2">
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: the links inside are pressed, by key as by pointer */}
      {/* biome-ignore lint/a11y/noStaticElementInteractions: it listens to the links inside */}
      <div onClick={take} className="grid gap-3">
        <Plan plain leaders={leaders} linkTo={link} />
        <details className="text-small">
          <summary className="min-h-11 cursor-pointer py-2">Assemblies as a list</summary>
          <PlanLegend plain leaders={leaders} linkTo={link} />
        </details>
      </div>
      <div className="grid gap-5">
        <div className="flex flex-wrap items-end gap-3">
          <div className="grid grow gap-1">
            <label htmlFor={fieldId("find")} className="font-semibold">
              Or look for it by name
            </label>
            <input
              key={assembly}
              id={fieldId("find")}
              name="find"
              type="search"
              maxLength={80}
              defaultValue={find}
              className="field"
              onChange={
                choose
                  ? (event) =>
                      event.target.value.length !== 1 && choose({ assembly, find: event.target.value })
                  : undefined
              }
            />
          </div>
          <input type="hidden" name="assembly" value={assembly} />
          <Button name="do" value="show" onClick={look}>
            Look
          </Button>
        </div>
        <div ref={parts} className="grid gap-5">
          <Parts shown={shown} asked={assembly !== "" || find.trim() !== ""} ticked={ticked} />
          <AlsoTicked shown={shown} book={book} ticked={ticked} />
        </div>
      </div>
    </div>
  );
}

/** What was ticked of another assembly or search: it stays chosen, and can be taken out here. */
function AlsoTicked({
  shown,
  book,
  ticked,
}: Pick<PartChooserProps, "book" | "ticked"> & { readonly shown: readonly Characteristic[] }) {
  const visible = new Set(shown.map(({ key }) => key));
  const others = ticked.keys.filter((key) => !visible.has(key)).flatMap((key) => book.find(key) ?? []);
  if (others.length === 0) return null;
  return (
    <fieldset className="border-0 p-0">
      <legend className="pb-1 font-semibold">Ticked as well</legend>
      <Ticks shown={others} ticked={ticked} />
    </fieldset>
  );
}

interface PartsProps {
  readonly shown: readonly Characteristic[];
  readonly asked: boolean;
  readonly ticked: Ticked;
}

function Parts({ shown, asked, ticked }: PartsProps) {
  if (shown.length === 0) {
    const told = asked
      ? "Nothing is called that. Try another word, or a number on the plan."
      : "Press a number on the plan to see what is there.";
    return (
      <p role="status" className="text-soft">
        {told}
      </p>
    );
  }
  const [points, plain] = [shown.filter(isPoint), shown.filter((one) => !isPoint(one))];
  return (
    <fieldset className="border-0 p-0">
      <legend className="pb-1 font-semibold">What was changed: tick every part</legend>
      <Ticks shown={plain} ticked={ticked} />
      {points.length === 0 ? null : (
        <details open={plain.length === 0}>
          <summary className="min-h-11 cursor-pointer py-2">
            Where the linkage is pivoted, point by point
          </summary>
          <Ticks shown={points} ticked={ticked} />
        </details>
      )}
    </fieldset>
  );
}

/** Coordinates of pivots: who moves one knows it, and everybody else need not read thirty of them. */
const isPoint = ({ key }: Characteristic) => key.includes(".hardpoint.");

function Ticks({ shown, ticked }: Pick<PartsProps, "shown" | "ticked">) {
  const { tries } = useForm();
  return (
    // Drawn anew after each try of the form, which empties its boxes.
    <div key={`${ticked.cleared} ${tries}`} className="grid gap-x-8 sm:grid-cols-2">
      {shown.map(({ key, label }) => (
        <label key={key} className="flex min-h-11 cursor-pointer items-center gap-3 border-hair border-b">
          <input
            type="checkbox"
            name="part[]"
            value={key}
            defaultChecked={ticked.keys.includes(key)}
            onChange={({ target }) => ticked.tick([key], target.checked)}
            className="size-5 shrink-0 accent-ink"
          />
          {label}
        </label>
      ))}
    </div>
  );
}
