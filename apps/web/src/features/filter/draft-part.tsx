"use client";
import {
  assemblies,
  assemblyLabels,
  type Characteristic,
  type CharacteristicBook,
  carStatusWords,
  characteristicNamed,
  comparedVerdicts,
  type DraftPart,
  type DraftPath,
  type DraftQuestion,
  dateWords,
  draftField,
  knowables,
  knowableWords,
  likelyCharacteristics,
  numberWords,
  questionsFor,
  questionWords,
  timesWords,
  verdicts,
  verdictWords,
} from "@trunnion/register";
import { Button } from "../../components/button";
import { ChoiceField, type Option, TextField } from "../../components/form/form-field";

import { buttonValue, refresh } from "./button";
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

const subjects: readonly Option[] = [
  { value: "characteristic", label: "A characteristic" },
  { value: "series", label: "Series" },
  { value: "status", label: "Status" },
  { value: "built", label: "When it was built" },
  { value: "anyVerdict", label: "Anything recorded" },
  { value: "modified", label: "What was modified" },
  { value: "known", label: "Whether it is known" },
  { value: "everyCar", label: "Every car" },
];

const optionsOf = (words: Readonly<Record<string, string>>): readonly Option[] =>
  Object.entries(words).map(([value, label]) => ({ value, label }));

/** An unknown status cannot be asked for: it is what unknown means. */
const statusOptions = optionsOf(carStatusWords).filter(({ value }) => value !== "unknown");

/** One thing asked of a car. */
export function PartFields({ part, path, setting }: PartProps) {
  const name = (field: string) => draftField(path, field);
  return (
    <div className="grid gap-x-6 gap-y-3 sm:grid-cols-2">
      <input type="hidden" name={name("kind")} value="part" />
      <ChoiceField name={name("about")} label="Ask about" value={part.about} options={subjects} />
      <SubjectFields part={part} path={path} setting={setting} />
    </div>
  );
}

function SubjectFields({ part, path, setting }: PartProps) {
  const name = (field: string) => draftField(path, field);
  switch (part.about) {
    case "everyCar":
      return null;
    case "series":
      return (
        <TickGroup
          legend="One of these series"
          name={name("series[]")}
          ticked={part.series}
          options={setting.series.map(({ slug, name: label }) => ({ value: slug, label }))}
        />
      );
    case "status":
      return (
        <TickGroup
          legend="One of these"
          name={name("statuses[]")}
          ticked={part.statuses}
          options={statusOptions}
        />
      );
    case "built":
      return (
        <>
          <TextField
            name={name("figure")}
            label="From"
            value={part.figure}
            hint="1971, 3/72, 12.3.1972 (day first). Empty: from the beginning."
            maxLength={60}
          />
          <TextField
            name={name("until")}
            label="To"
            value={part.until}
            hint="Empty: to the end. Only what was certainly built within fits."
            maxLength={60}
          />
        </>
      );
    case "anyVerdict":
      return (
        <TickGroup
          legend="Something recorded has one of these verdicts"
          name={name("values[]")}
          ticked={part.values}
          options={comparedVerdicts.map((value) => ({ value, label: verdictWords[value] }))}
        />
      );
    case "modified":
      return (
        <TickGroup
          legend="A modification of one of these is recorded"
          name={name("values[]")}
          ticked={part.values}
          options={assemblies.map((value) => ({ value, label: assemblyLabels[value] }))}
        />
      );
    case "known":
      return (
        <ChoiceField
          name={name("figure")}
          label="It is known"
          value={knowables.find((one) => one === part.figure) ?? "status"}
          options={optionsOf(knowableWords)}
        />
      );
    case "characteristic":
      return <CharacteristicFields part={part} path={path} setting={setting} />;
  }
}

function CharacteristicFields({ part, path, setting }: PartProps) {
  const name = (field: string) => draftField(path, field);
  const found = characteristicNamed(setting.book, part.characteristic);
  return (
    <>
      <TextField
        name={name("characteristic")}
        label="Characteristic"
        value={part.characteristic}
        hint={found?.help ?? "Type a word of its name and choose from the list."}
        maxLength={120}
        autoComplete="off"
        list={setting.listId}
      />
      {found === undefined ? (
        <Likely part={part} path={path} setting={setting} />
      ) : (
        <QuestionFields part={part} path={path} one={found} setting={setting} />
      )}
    </>
  );
}

/** What was perhaps meant, to choose by a button; works without a list that the browser offers. */
function Likely({ part, path, setting }: PartProps) {
  const likely = likelyCharacteristics(setting.book, part.characteristic, 8);
  return (
    <div className="grid content-start gap-2 sm:col-span-2">
      {likely.length === 0 ? null : (
        <>
          <p className="text-small">Which of these is meant?</p>
          <div className="flex flex-wrap gap-2">
            {likely.map(({ key, label }) => (
              <Button
                key={key}
                name="do"
                value={buttonValue({ do: "pick", at: path, characteristic: label })}
              >
                {label}
              </Button>
            ))}
          </div>
        </>
      )}
      <div>
        <Button name="do" value={refresh}>
          Look it up
        </Button>
      </div>
    </div>
  );
}

const sideOptions: readonly Option[] = [
  { value: "", label: "Either side" },
  { value: "left", label: "Left" },
  { value: "right", label: "Right" },
];

const wholeCar: Option = { value: "whole", label: "The whole car" };
const askable = (one: DraftQuestion) => one !== "sidesDiffer" && one !== "readingOlderThan";

function QuestionFields({ part, path, one, setting }: PartProps & { readonly one: Characteristic }) {
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
