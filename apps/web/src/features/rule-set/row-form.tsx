import type { FilterForm, RuleSetPage } from "@trunnion/api";
import {
  assemblies,
  assemblyLabels,
  type CharacteristicBook,
  type Condition,
  characteristicBook,
  draftOf,
  emptyDraft,
  printLimit,
  sayCondition,
  stationLabels,
  stations,
} from "@trunnion/register";
import { EditForm } from "../../components/form/edit-form";
import { ChoiceField, TextArea, TextField, TickField } from "../../components/form/form-field";
import { PageHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { ruleSetPath } from "../../lib/path";
import { DraftFields } from "../filter/draft-fields";
import { type DraftOf, putLimit, putRuled } from "./action";

export interface RowFormProps {
  readonly club: ClubFace;
  readonly page: RuleSetPage;
  readonly form: FilterForm;
  readonly kind: "check" | "class" | "limit";
  /** Code or id of the row to change; left out for a new one. */
  readonly row?: string;
}

/** The form of one check, class or limit of a draft. */
export function RowForm({ club, page, form, kind, row }: RowFormProps) {
  const { slug, version, revision, name } = page.facts;
  const draft: DraftOf = { ruleSet: slug, version, revision };
  const back = { href: ruleSetPath(club.slug, slug, version), label: `${name}, version ${version}` };
  const rest = {
    club: club.slug,
    page,
    form,
    draft,
    cancel: { ...back, label: "Back without saving" },
    row: row ?? "",
  };
  return (
    <>
      <PageHead title={row === undefined ? `Add a ${kind}` : `Change the ${kind}`} back={back} />
      {kind === "limit" ? <LimitForm {...rest} /> : null}
      {kind === "class" ? <ClassForm {...rest} /> : null}
      {kind === "check" ? <CheckForm {...rest} /> : null}
    </>
  );
}

interface PartProps {
  readonly club: string;
  readonly page: RuleSetPage;
  readonly form: FilterForm;
  readonly draft: DraftOf;
  readonly cancel: { readonly href: string; readonly label: string };
  readonly row: string;
}

function LimitForm({ club, page, form, draft, cancel, row }: PartProps) {
  const limit = page.limits.find(({ id }) => id === row);
  const book = characteristicBook(form.own);
  const characteristic = limit && book.find(limit.characteristic);
  const said = (si: number | undefined) =>
    si === undefined || characteristic?.kind !== "quantity"
      ? ""
      : printLimit(characteristic, si, characteristic.units[form.system]);
  return (
    <EditForm action={putLimit.bind(null, club, draft, row)} submit="Save the limit" cancel={cancel}>
      <datalist id="characteristics">
        {book.all.map(({ key, label, kind }) =>
          kind === "quantity" ? <option key={key} value={label} /> : null,
        )}
      </datalist>
      <TextField
        name="characteristic"
        label="Characteristic"
        value={characteristic?.label ?? ""}
        list="characteristics"
        autoComplete="off"
        required
      />
      <TextField
        name="lower"
        label="At least"
        value={said(limit?.limits.lower)}
        hint="With its unit; empty for no lower limit."
      />
      <TextField
        name="upper"
        label="At most"
        value={said(limit?.limits.upper)}
        hint="With its unit; empty for no upper limit."
      />
      <ChoiceField
        name="classCode"
        label="Class"
        value={limit?.className ?? ""}
        options={[
          { value: "", label: "Every class" },
          ...page.classes.map(({ code, name }) => ({ value: code, label: `${code} ${name}` })),
        ]}
      />
      <TextField
        name="sourceTitle"
        label="Where it comes from"
        value={limit?.source.title ?? ""}
        maxLength={200}
        required
      />
      <TextField name="sourceClause" label="Clause" value={limit?.source.clause ?? ""} maxLength={60} />
    </EditForm>
  );
}

/** The condition by the same form as the register's filter; one that the form cannot show stays as it is. */
function conditionPart(condition: Condition | undefined, form: FilterForm, book: CharacteristicBook) {
  if (condition === undefined) return { initial: emptyDraft };
  const initial = draftOf(condition, { book, system: form.system });
  return initial === undefined ? { kept: condition, said: sayCondition(condition, book) } : { initial };
}

type ConditionPart = ReturnType<typeof conditionPart>;

function ConditionFields({ part, form }: { readonly part: ConditionPart; readonly form: FilterForm }) {
  if (!("initial" in part) || part.initial === undefined)
    return (
      <p className="max-w-prose border-line border-l-4 pl-3">
        Cars of which {"said" in part ? part.said : ""}. This form cannot show that condition part by part: it
        stays.
      </p>
    );
  return (
    <fieldset className="grid gap-2">
      <legend className="pb-2 text-lead">Which cars</legend>
      <DraftFields initial={part.initial} own={form.own} series={form.series} system={form.system} />
    </fieldset>
  );
}

const keptOf = (part: ConditionPart) => ("kept" in part && part.kept ? { kept: part.kept } : {});

function ClassForm({ club, page, form, draft, cancel, row }: PartProps) {
  const one = page.classes.find(({ code }) => code === row);
  const part = conditionPart(one?.condition, form, characteristicBook(form.own));
  const action = putRuled.bind(null, club, draft, { kind: "class", was: row, ...keptOf(part) });
  return (
    <EditForm action={action} submit="Save the class" cancel={cancel}>
      <TextField name="code" label="Code" value={one?.code ?? ""} maxLength={12} required />
      <TextField name="name" label="Name" value={one?.name ?? ""} maxLength={80} required />
      <ConditionFields part={part} form={form} />
    </EditForm>
  );
}

const criteria = [
  { value: "seen", label: "Seen" },
  { value: "measured", label: "Measured against a limit" },
  { value: "datedItem", label: "Dated item valid on the day" },
  { value: "document", label: "Document" },
];

function CheckForm({ club, page, form, draft, cancel, row }: PartProps) {
  const check = page.checks.find(({ id }) => id === row);
  const book = characteristicBook(form.own);
  const part = conditionPart(check?.when, form, book);
  const action = putRuled.bind(null, club, draft, { kind: "check", was: row, ...keptOf(part) });
  const criterion = check?.criterion ?? { kind: "seen" as const };
  const reads = "characteristic" in criterion ? (criterion.characteristic ?? "") : "";
  return (
    <EditForm action={action} submit="Save the check" cancel={cancel}>
      <TextField
        name="code"
        label="Code"
        value={check?.id ?? ""}
        maxLength={80}
        hint="Small letters and dashes: front-tow-eye."
        required
      />
      <ChoiceField
        name="station"
        label="Where on the walk round"
        value={check?.station ?? "front"}
        options={stations.map((value) => ({ value, label: stationLabels[value] }))}
      />
      <ChoiceField
        name="assembly"
        label="Assembly"
        value={check?.assembly ?? "safety"}
        options={assemblies.map((value) => ({ value, label: assemblyLabels[value] }))}
      />
      <TextArea
        name="text"
        label="What to look at"
        value={check?.text ?? ""}
        rows={2}
        maxLength={240}
        required
      />
      <TextField
        name="short"
        label="On the printed sheet"
        value={check?.short ?? ""}
        maxLength={60}
        hint="The same in a line of a column, with its limit; empty prints the text and what makes it pass."
      />
      <TextArea name="method" label="How" value={check?.method ?? ""} rows={2} maxLength={400} />
      <ChoiceField name="criterion" label="How it is judged" value={criterion.kind} options={criteria} />
      <TextField
        name="passIf"
        label="Passes if"
        value={"text" in criterion ? criterion.text : ""}
        maxLength={200}
        hint="For what is measured or dated."
      />
      <ChoiceField
        name="characteristic"
        label="Reads"
        value={reads}
        options={[
          { value: "", label: "Nothing" },
          ...book.all.map(({ key, label }) => ({ value: key, label })),
        ]}
      />
      <TickField
        name="perCorner"
        label="At each corner"
        ticked={"perCorner" in criterion && criterion.perCorner === true}
      />
      <TextArea
        name="why"
        label="Why it is here"
        value={check?.why ?? ""}
        rows={3}
        maxLength={240}
        hint="{front.camber} is replaced by the car's value, {front.camber:nominal} by the specified one, {work:front.tyre.rim/verdict} by a figure worked out for the car. Empty for checks every car gets."
      />
      <TextArea name="caution" label="Caution" value={check?.caution ?? ""} rows={2} maxLength={240} />
      <TextField
        name="sourceTitle"
        label="Where it comes from"
        value={check?.source.title ?? ""}
        maxLength={200}
        required
      />
      <TextField name="sourceEdition" label="Edition" value={check?.source.edition ?? ""} maxLength={60} />
      <TextField name="sourceClause" label="Clause" value={check?.source.clause ?? ""} maxLength={60} />
      <ConditionFields part={part} form={form} />
    </EditForm>
  );
}
