import type { EntryPage } from "@trunnion/api";
import { type Finding, findingResults, findingResultWords } from "@trunnion/register";
import { ChoiceField, TextArea, TextField } from "../../components/form/form-field";
import { SectionHead } from "../../components/page-head";

type Check = EntryPage["stations"][number]["checks"][number];
type EntryReading = Check["reads"][number];

const findingsOf = ({ standing }: Check): readonly Finding[] =>
  standing.state === "open" ? [] : standing.findings;

export interface CheckFieldsProps {
  readonly check: Check;
  readonly index: number;
  readonly keys: readonly string[];
}

/** One check with its result, figures and note. */
export function CheckFields({ check, index, keys }: CheckFieldsProps) {
  const name = (field: string) => `checks.${index}.${field}`;
  const found = findingsOf(check);
  const was = check.standing.state === "found" ? check.standing.result : "";
  const [first] = found;
  const wasNote = was === "" ? "" : (first?.note ?? "");
  const fixed = {
    code: check.id,
    key: keys[index] ?? "",
    was,
    wasNote,
    replaces: found.map(({ key }) => key).join(" "),
  };
  return (
    <li className="grid gap-x-6 gap-y-2 border-hair border-b py-3 sm:grid-cols-[1fr_13rem] wide:grid-cols-[1fr_32rem]">
      <div>
        <p className={check.special ? "font-semibold" : ""}>{check.text}</p>
        {check.special ? <p className="text-small">Why: {check.why}</p> : null}
        {"text" in check.criterion ? <p className="text-small">{check.criterion.text}.</p> : null}
        {check.method === undefined ? null : <p className="text-small text-soft">{check.method}</p>}
        {check.standing.state === "conflict" ? <Differ findings={found} /> : null}
        {check.standing.state === "found" ? (
          <p className="text-small text-soft">
            {findingResultWords[check.standing.result]} by{" "}
            {found.map(({ by }) => (by === "" ? "somebody" : by)).join(", ")}
          </p>
        ) : null}
      </div>
      <div className="grid content-start gap-x-4 gap-y-2 wide:grid-cols-[11rem_1fr]">
        {Object.entries(fixed).map(([field, value]) => (
          <input key={field} type="hidden" name={name(field)} value={value} />
        ))}
        <ChoiceField
          name={name("result")}
          label="Result"
          value={was}
          options={[
            { value: "", label: check.standing.state === "conflict" ? "in conflict" : "open" },
            ...findingResults.map((value) => ({ value, label: findingResultWords[value] })),
          ]}
        />
        <TextArea name={name("note")} label="Note" value={wasNote} maxLength={2000} rows={1} />
        {check.reads.length === 0 ? null : (
          <div className="grid grid-cols-2 gap-x-4 gap-y-2 wide:col-span-2">
            {check.reads.map((read, at) => (
              <ReadFields key={read.key} read={read} name={(field) => name(`readings.${at}.${field}`)} />
            ))}
          </div>
        )}
      </div>
    </li>
  );
}

/** One reading, with what it says of where and of what it was when the page was made. */
function ReadFields({
  read,
  name,
}: {
  readonly read: EntryReading;
  readonly name: (field: string) => string;
}) {
  const { key, characteristic, side, label, dimension, limits, entered, instrument, verdict } = read;
  const fixed = { place: key, characteristic, side, dimension, was: entered, instrument };
  const told = [limits === "" ? "" : `limits ${limits}`, verdict].filter((part) => part !== "").join("; ");
  return (
    <div>
      {Object.entries(fixed).map(([field, value]) => (
        <input key={field} type="hidden" name={name(field)} value={value} />
      ))}
      <TextField
        name={name("entered")}
        label={label}
        value={entered}
        maxLength={120}
        autoComplete="off"
        {...(told === "" ? {} : { hint: told })}
      />
    </div>
  );
}

/** What figures are measured with: one instrument for each kind of figure, as long as it is used. */
export function Instruments({ instruments }: { readonly instruments: EntryPage["instruments"] }) {
  const dimensions = [...new Set(instruments.map(({ dimension }) => dimension))];
  if (dimensions.length === 0) return null;
  return (
    <section aria-labelledby="with">
      <SectionHead id="with" title="Measured with" />
      <div className="grid gap-x-6 gap-y-3 sm:grid-cols-2">
        {dimensions.map((dimension) => (
          <ChoiceField
            key={dimension}
            name={`with.${dimension}`}
            label={`For ${dimensionWords[dimension] ?? dimension}`}
            options={[
              { value: "", label: "Not said" },
              ...instruments
                .filter((one) => one.dimension === dimension)
                .map(({ id, label }) => ({ value: id, label })),
            ]}
            hint="Goes with every figure entered now; its uncertainty decides how near a limit can be told."
          />
        ))}
      </div>
    </section>
  );
}

const dimensionWords: Readonly<Record<string, string>> = {
  angle: "angles",
  length: "lengths",
  pressure: "pressures",
  mass: "weights",
  volume: "volumes",
  force: "forces",
  torque: "torques",
};

function Differ({ findings }: { readonly findings: readonly Finding[] }) {
  return (
    <div className="border-red border-l-4 pl-2 text-small">
      <p className="font-semibold">Scrutineers differ; choose a result to settle it.</p>
      <ul>
        {findings.map(({ key, by, result, note }) => (
          <li key={key}>
            {by === "" ? "Somebody" : by}: {findingResultWords[result]}
            {note === "" ? null : `, ${note}`}
          </li>
        ))}
      </ul>
    </div>
  );
}
