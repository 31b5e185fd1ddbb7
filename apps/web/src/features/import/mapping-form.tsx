import type { ImportView } from "@trunnion/api";
import { columnLetter } from "@trunnion/register";
import { EditForm } from "../../components/form/edit-form";
import { ChoiceField, TextField } from "../../components/form/form-field";
import { chooseSheet, settleColumns } from "./action";
import { DeedForm } from "./deed-form";

type Proposal = ImportView["proposals"][number];

const certainties: Readonly<Record<Proposal["certainty"], string>> = {
  sure: "Sure",
  likely: "Likely",
  possible: "Possible",
  none: "To be settled",
};

const AS_WRITTEN = "as written";

function unitOptions({ units, unit, bare }: Proposal) {
  const none = { value: "", label: bare === undefined ? "each cell says" : "choose…" };
  const known = unit === undefined || units.includes(unit) ? units : [unit, ...units];
  return [
    none,
    ...known.filter((one) => one !== "").map((one) => ({ value: one, label: one })),
    { value: AS_WRITTEN, label: "none: leave out rows with bare numbers" },
  ];
}

function ColumnRow({ proposal }: { readonly proposal: Proposal }) {
  const { index, heading, as, certainty, reason, examples, bare, units, unit } = proposal;
  const letter = columnLetter(index);
  return (
    <li className="grid gap-x-8 gap-y-3 border-hair border-b py-4 wide:grid-cols-[12rem_1fr]">
      <div className="min-w-0">
        <p className="break-words font-semibold">
          <span className="pr-2 font-normal text-soft">{letter}</span>
          {heading === "" ? "no heading" : heading}
        </p>
        <p className="break-words text-small text-soft">
          {examples.length === 0
            ? "empty"
            : examples.map((example) => `“${example.slice(0, 40)}”`).join(", ")}
        </p>
      </div>
      <fieldset className="grid min-w-0 content-start gap-3 sm:grid-cols-[2fr_1fr]">
        <legend className="sr-only">
          Column {letter}, {heading}
        </legend>
        <TextField
          name={`columns.${index}.as`}
          label="Taken for"
          value={as}
          list="import-headings"
          autoComplete="off"
          hint={`${certainties[certainty]}: ${reason}.`}
        />
        {units.length === 0 ? (
          <input type="hidden" name={`columns.${index}.unit`} value="" />
        ) : (
          <ChoiceField
            name={`columns.${index}.unit`}
            label="Unit of bare numbers"
            value={unit ?? ""}
            options={unitOptions(proposal)}
            {...(bare === undefined ? {} : { hint: `Numbers such as ${bare} stand here without a unit.` })}
          />
        )}
      </fieldset>
    </li>
  );
}

/** Which part of the file is the table: the sheet, and the line its headings stand on. */
function TableForm({ club, view }: { readonly club: string; readonly view: ImportView }) {
  const { sheets, sheet, head, above } = view;
  const many = sheets.length > 1;
  return (
    <details className="max-w-3xl" open={many || above.length > 0}>
      <summary className="min-h-11 py-2">
        The headings stand on line {head}
        {above.length === 0 ? "" : "; what stands above is passed over"}
      </summary>
      {above.length === 0 ? null : (
        <ul aria-label="Passed over" className="border-hair border-l pb-3 pl-4 text-small text-soft">
          {above.map((text) => (
            <li key={text} className="break-words">
              {text}
            </li>
          ))}
        </ul>
      )}
      <DeedForm
        action={chooseSheet.bind(null, club, view.id)}
        submit={many ? "Take this sheet and line" : "Take this line"}
        main={false}
      >
        {many ? (
          <>
            <input type="hidden" name="sheetBefore" value={sheet ?? ""} />
            <ChoiceField
              name="sheet"
              label="Sheet"
              value={sheet ?? ""}
              options={sheets.map(({ name, hidden }) => ({
                value: name,
                label: hidden ? `${name} (hidden)` : name,
              }))}
            />
          </>
        ) : (
          <input type="hidden" name="sheet" value={sheet ?? ""} />
        )}
        <TextField
          name="head"
          label="Line of the headings"
          value={String(head)}
          inputMode="numeric"
          maxLength={9}
          hint="Counted from the top of the file. Where one heading stands over several columns, the words below it belong to it."
        />
      </DeedForm>
    </details>
  );
}

/** Settles what the columns of a file hold, as proposed or otherwise. */
export function MappingForm({ club, view }: { readonly club: string; readonly view: ImportView }) {
  return (
    <div className="grid gap-8">
      <TableForm club={club} view={view} />
      <datalist id="import-headings">
        {view.headings.map((heading) => (
          <option key={heading} value={heading} />
        ))}
      </datalist>
      <EditForm action={settleColumns.bind(null, club, view.id)} submit="Look through the file">
        <TextField
          name="asOf"
          label="Day the file tells of"
          type="date"
          value={view.asOf}
          hint="What a row says is on the car is recorded on this day, unless the row has a day of its own."
        />
        <ul aria-label="Columns" className="border-ink border-t">
          {view.proposals.map((proposal) => (
            <ColumnRow key={proposal.index} proposal={proposal} />
          ))}
        </ul>
        <p className="max-w-prose text-small text-soft">
          “keep as remarks” puts a column’s cells under the car’s remarks; “leave out” does not read it. What
          you settle is remembered for files with the same headings.
        </p>
      </EditForm>
    </div>
  );
}
