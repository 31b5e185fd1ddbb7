"use client";
import {
  type Characteristic,
  characteristicBook,
  characteristicNamed,
  childPath,
  type Draft,
  type DraftGroup,
  type DraftPath,
  draftField,
  draftFrom,
  draftLimits,
  roomIn,
} from "@trunnion/register";
import { type FocusEvent, type FormEvent, useEffect, useId, useMemo, useRef } from "react";
import { Button } from "../../components/button";
import { useForm } from "../../components/form/edit-form";
import { fieldId } from "../../components/form/field-id";
import { ChoiceField, type Option } from "../../components/form/form-field";
import { enteredOf } from "../../lib/form-entry";
import { buttonValue, refresh } from "./button";
import { PartFields } from "./draft-part";
import type { PartSetting } from "./draft-question";
import { nextFields } from "./next-field";

export interface DraftFieldsProps {
  /** The condition as it stands; what was typed since takes its place. */
  readonly initial: DraftGroup;
  readonly own: readonly Characteristic[];
  readonly series: PartSetting["series"];
  readonly system: PartSetting["system"];
}

const joins: readonly Option[] = [
  { value: "all", label: "all of these hold" },
  { value: "any", label: "any of these holds" },
  { value: "none", label: "none of these holds" },
];

function draftOfTyped(typed: Readonly<Record<string, readonly string[]>>): DraftGroup {
  const data = new FormData();
  for (const [name, values] of Object.entries(typed)) for (const value of values) data.append(name, value);
  return draftFrom(enteredOf(data));
}

/** A choice that decides which fields there are; the button behind it is pressed where scripts run. */
const decides = (name: string) => /(?:^|\.)(?:about|ask)$/.test(name);
/** A name taken from the browser's list, rather than typed letter by letter. */
const wasPicked = ({ nativeEvent }: FormEvent) =>
  !("inputType" in nativeEvent) || (nativeEvent as InputEvent).inputType === "insertReplacementText";

/** The parts of a condition, within groups: added, taken away and filled in. */
export function DraftFields({ initial, own, series, system }: DraftFieldsProps) {
  const { tries, typed } = useForm();
  const draft = tries === 0 ? initial : draftOfTyped(typed);
  const book = useMemo(() => characteristicBook(own), [own]);
  const listId = useId();
  const again = useRef<HTMLButtonElement>(null);
  /** Where to go on in the form as it is drawn next. */
  const goOn = useRef<(drawn: DraftGroup) => readonly string[]>(undefined);
  const drawn = useRef(draft);
  drawn.current = draft;
  // Fields are made anew after each try, so whoever was in one is put back there, or where what was pressed leads.
  useEffect(() => {
    const names = tries > 0 ? (goOn.current?.(drawn.current) ?? []) : [];
    goOn.current = undefined;
    names
      .map((name) => document.getElementById(fieldId(name)))
      .find((field) => field !== null)
      ?.focus();
  }, [tries]);
  const drawAgain = (name: string) => {
    goOn.current = () => [name];
    again.current?.form?.requestSubmit(again.current);
  };
  const changed = (event: FormEvent<HTMLFieldSetElement>) => {
    const { target } = event;
    if (target instanceof HTMLSelectElement && decides(target.name)) drawAgain(target.name);
    if (target instanceof HTMLInputElement && target.name.endsWith("characteristic") && wasPicked(event)) {
      if (characteristicNamed(book, target.value)) drawAgain(target.name);
    }
  };
  const left = ({ target, relatedTarget }: FocusEvent<HTMLFieldSetElement>) => {
    if (!(target instanceof HTMLInputElement) || !target.name.endsWith("characteristic")) return;
    if (relatedTarget instanceof HTMLButtonElement || target.value === target.defaultValue) return;
    if (characteristicNamed(book, target.value)) drawAgain(target.name);
  };
  useEffect(() => {
    const form = again.current?.form;
    const sent = ({ submitter }: SubmitEvent) => {
      if (!(submitter instanceof HTMLButtonElement) || submitter === again.current) return;
      const about = submitter.closest("li")?.querySelector<HTMLSelectElement>("select[name$='.about']");
      const part = about?.name.replace(/\.about$/, "") ?? "";
      goOn.current = (after) => nextFields(submitter.value, part, after);
    };
    form?.addEventListener("submit", sent);
    return () => form?.removeEventListener("submit", sent);
  }, []);
  return (
    <fieldset onChange={changed} onBlur={left}>
      <legend className="sr-only">Condition</legend>
      {/* What the return key presses: the cars, not the first button there is. */}
      <button type="submit" name="do" value="show" className="sr-only" tabIndex={-1} aria-hidden="true">
        Show the cars
      </button>
      <button
        ref={again}
        type="submit"
        name="do"
        value={refresh}
        className="sr-only"
        tabIndex={-1}
        aria-hidden="true"
      >
        Draw the form again
      </button>
      <datalist id={listId}>
        {book.all.map(({ key, label }) => (
          <option key={key} value={label} />
        ))}
      </datalist>
      <GroupFields group={draft} path="" root={draft} setting={{ book, series, system, listId }} />
    </fieldset>
  );
}

interface GroupProps {
  readonly group: DraftGroup;
  readonly path: DraftPath;
  /** The whole draft, which decides whether there is room for more. */
  readonly root: DraftGroup;
  readonly setting: PartSetting;
}

function GroupFields({ group, path, root, setting }: GroupProps) {
  const name = (field: string) => draftField(path, field);
  const room = roomIn(root, path);
  return (
    <div className="grid gap-4">
      <input type="hidden" name={name("kind")} value="group" />
      <ChoiceField
        name={name("join")}
        label={path === "" ? "Cars of which" : "Group of which"}
        value={group.join}
        options={joins}
      />
      <ol className="grid gap-4 border-ink border-l-2 pl-2 sm:pl-4">
        {group.of.map((one, index) => (
          // A part has no name but its place.
          // biome-ignore lint/suspicious/noArrayIndexKey: places are what fields are named by
          <li key={index} className="border-hair border-b pb-4">
            <NodeFields one={one} path={childPath(path, index)} root={root} setting={setting} />
          </li>
        ))}
      </ol>
      <div className="flex flex-wrap gap-3">
        {room.part ? (
          <Button name="do" value={buttonValue({ do: "addPart", at: path })}>
            Add a part
          </Button>
        ) : (
          <p className="text-small text-soft">At most {draftLimits.parts} parts.</p>
        )}
        {room.group ? (
          <Button name="do" value={buttonValue({ do: "addGroup", at: path })}>
            Add a group
          </Button>
        ) : room.part ? (
          <p className="self-center text-small text-soft">Groups go no deeper than this.</p>
        ) : null}
      </div>
    </div>
  );
}

interface NodeProps extends Omit<GroupProps, "group"> {
  readonly one: Draft;
}

function NodeFields({ one, path, root, setting }: NodeProps) {
  return (
    <div className="grid gap-3">
      {one.kind === "group" ? (
        <GroupFields group={one} path={path} root={root} setting={setting} />
      ) : (
        <PartFields part={one} path={path} setting={setting} />
      )}
      <div className="flex flex-wrap gap-3">
        <Button name="do" value={buttonValue({ do: "remove", at: path })}>
          Take this {one.kind} away
        </Button>
        <span className="hidden scriptless:inline">
          <Button name="do" value={refresh}>
            Draw the fields that go with it
          </Button>
        </span>
      </div>
    </div>
  );
}
