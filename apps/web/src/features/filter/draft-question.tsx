"use client";
import {
  type Characteristic,
  type CharacteristicBook,
  type DraftPart,
  type DraftPath,
  type DraftQuestion,
  dateWords,
  draftField,
  numberWords,
  questionsFor,
  questionWords,
  timesWords,
  verdicts,
  verdictWords,
} from "@trunnion/register";
import { ChoiceField, type Option, TextField } from "../../components/form/form-field";
import { TickGroup } from "./tick-group";

/** What the fields of a part are made with. */
export interface PartSetting {
  readonly book: CharacteristicBook;
  readonly series: readonly { readonly slug: string; readonly name: string }[];
  readonly system: "metric" | "imperial";
  /** Id of the list of every characteristic's name. */
  readonly listId: string;
}

export interface PartProps {
  readonly part: DraftPart;
  readonly path: DraftPath;
  readonly setting: PartSetting;
}

/** Choices in the order of their words. */
export const optionsOf = (words: Readonly<Record<string, string>>): readonly Option[] =>
  Object.entries(words).map(([value, label]) => ({ value, label }));

const sideOptions: readonly Option[] = [
  { value: "", label: "Either side" },
  { value: "left", label: "Left" },
  { value: "right", label: "Right" },
];

const wholeCar: Option = { value: "whole", label: "The whole car" };
const askable = (one: DraftQuestion) => one !== "sidesDiffer" && one !== "readingOlderThan";

/** What is asked of a characteristic, and the answer wanted. */
export function QuestionFields({ part, path, one, setting }: PartProps & { readonly one: Characteristic }) {
  const name = (field: string) => draftField(path, field);
  const questions = questionsFor(one);
  const ask = questions.find((question) => question === part.ask) ?? questions[0] ?? "recorded";
  const sides = part.side === "whole" ? [...sideOptions, wholeCar] : sideOptions;
  return (
    <>
      <ChoiceField
        name={name("ask")}
        label="What of it"
        value={ask}
        options={questions.map((value) => ({ value, label: questionWords[value] }))}
      />
      {one.sided && askable(ask) ? (
        <ChoiceField name={name("side")} label="Side" value={part.side} options={sides} />
      ) : null}
      <AnswerFields part={part} path={path} one={one} setting={setting} ask={ask} />
    </>
  );
}

interface AnswerProps extends PartProps {
  readonly one: Characteristic;
  readonly ask: DraftQuestion;
}

function unitHint(one: Characteristic, system: "metric" | "imperial"): string {
  if (one.kind !== "quantity") return "";
  const unit = one.units[system];
  if (one.notation === "toe") return `With its unit and sense: 0°10' toe-in per side.`;
  return unit === ""
    ? "A plain number."
    : `In ${unit}, or with another unit: as it would be written on the record.`;
}

function AnswerFields({ part, path, one, setting, ask }: AnswerProps) {
  const name = (field: string) => draftField(path, field);
  const is = (words: Readonly<Record<string, string>>) => (
    <ChoiceField name={name("is")} label="Compared" value={part.is} options={optionsOf(words)} />
  );
  const figure = (label: string, hint: string) => (
    <TextField
      name={name("figure")}
      label={label}
      value={part.figure}
      hint={hint}
      maxLength={200}
      autoComplete="off"
    />
  );
  switch (ask) {
    case "recorded":
    case "absent":
      return null;
    case "number":
    case "difference":
      return (
        <>
          {is(numberWords)}
          {figure("Figure", unitHint(one, setting.system))}
        </>
      );
    case "ratio":
      return (
        <>
          {is(timesWords)}
          {figure("Times as specified", "A multiple, such as 1.25.")}
        </>
      );
    case "date":
      return (
        <>
          {is(dateWords)}
          {figure("Day", 'A day, month or year: 30.6.2027, 6/2027; or "today".')}
        </>
      );
    case "textHas":
      return figure("Words", "Capitals and accents do not matter.");
    case "code":
      return one.kind === "choice" ? (
        <TickGroup
          legend="One of these"
          name={name("values[]")}
          ticked={part.values}
          options={one.choices.map(({ code, label }) => ({ value: code, label }))}
        />
      ) : (
        figure("Designation", "As it is written; several with a semicolon between.")
      );
    case "verdict":
      return (
        <TickGroup
          legend="One of these verdicts"
          name={name("values[]")}
          ticked={part.values}
          options={verdicts.map((value) => ({ value, label: verdictWords[value] }))}
        />
      );
    case "sidesDiffer":
      return one.kind === "quantity"
        ? figure("By more than", `${unitHint(one, setting.system)} Empty: at all.`)
        : null;
    case "readingOlderThan":
      return figure("Days", "Counted to today, such as 365.");
  }
}
