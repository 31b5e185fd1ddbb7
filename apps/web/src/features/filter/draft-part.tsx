"use client";
import {
  assemblies,
  assemblyLabels,
  carStatusWords,
  characteristicNamed,
  comparedVerdicts,
  draftField,
  knowables,
  knowableWords,
  likelyCharacteristics,
  verdictWords,
} from "@trunnion/register";
import { Button } from "../../components/button";
import { ChoiceField, type Option, TextField } from "../../components/form/form-field";
import { buttonValue, refresh } from "./button";
import { optionsOf, type PartProps, QuestionFields } from "./draft-question";
import { TickGroup } from "./tick-group";

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
