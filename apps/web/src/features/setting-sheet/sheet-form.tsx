"use client";
import type { CornerSigns, SettingSheetForm } from "@trunnion/api";
import {
  isUsualSetting,
  type QuantityCharacteristic,
  readEntered,
  repeatsIn,
  type Side,
  sheetField,
} from "@trunnion/register";
import { type FormEvent, useState } from "react";
import { Button } from "../../components/button";
import { EditForm, useForm } from "../../components/form/edit-form";
import { ChoiceField, TextArea, TextField } from "../../components/form/form-field";
import { KeptForm } from "../../components/form/kept-form";
import type { FormAction } from "../../lib/form-state";
import { Instruments } from "./instrument-fields";
import { SignDrawing } from "./sign-drawing";
import { loadWords, sheetFormName } from "./words";

export interface SheetFormProps {
  readonly form: SettingSheetForm;
  readonly words: { readonly left: string; readonly right: string };
  /** Each reading twice: as found, and as left. */
  readonly found: boolean;
  readonly action: FormAction;
  /** Made with the page, so that a form sent twice is one sheet. */
  readonly keys: { readonly client: string; readonly step: string };
  readonly back: string;
}

type Row = QuantityCharacteristic;

const sidesOf = (row: Row): readonly Side[] => (row.sided ? ["left", "right"] : ["whole"]);
const loads = (["unknown", "kerb", "driver", "driverAndPassenger"] as const).map((value) => ({
  value,
  label: loadWords[value],
}));
/** Settings read off the form as it is typed; what cannot be read yet is not drawn. */
function signsIn(data: FormData, { groups, club }: SettingSheetForm): CornerSigns {
  const rows = new Map(groups.flatMap((group) => group.rows.map((row) => [row.key, row] as const)));
  const at = (key: string, side: Side) => {
    const row = rows.get(key);
    const typed = data.get(sheetField(key, side, "asLeft"));
    const last = typeof typed === "string" ? repeatsIn(typed).at(-1) : undefined;
    if (row === undefined || last === undefined) return undefined;
    const read = readEntered(row, last, { units: club.unitSystem, rims: new Map() });
    return read.ok && read.value.kind === "quantity" ? read.value.si : undefined;
  };
  const wheel = (axle: "front" | "rear", side: "left" | "right") => {
    const [camber, toeIn] = [at(`${axle}.camber`, side), at(`${axle}.toe`, side)];
    return { ...(camber === undefined ? {} : { camber }), ...(toeIn === undefined ? {} : { toeIn }) };
  };
  const axle = (name: "front" | "rear") => ({ left: wheel(name, "left"), right: wheel(name, "right") });
  return { front: axle("front"), rear: axle("rear") };
}

const nothing: CornerSigns = { front: { left: {}, right: {} }, rear: { left: {}, right: {} } };

/** A setting sheet as the trade lays it out: left beside right, front above rear, and the wheels drawn as they are typed. */
export function SheetForm({ form, words, found, action, keys, back }: SheetFormProps) {
  const [signs, setSigns] = useState(nothing);
  const look = (event: FormEvent<HTMLDivElement>) => {
    const around = event.currentTarget.closest("form");
    if (around) setSigns(signsIn(new FormData(around), form));
  };
  const dimensions = [...new Set(form.groups.flatMap(({ rows }) => rows.map(({ dimension }) => dimension)))];
  return (
    <EditForm
      action={action}
      submit="Hand in this sheet"
      wide
      cancel={{ href: back, label: "Back, without handing in" }}
    >
      {/* Enter in a field presses the first button of a form: that must be the one the form is for. */}
      <button type="submit" tabIndex={-1} aria-hidden="true" className="sr-only">
        Hand in this sheet
      </button>
      <KeptForm name={sheetFormName(form.car.reference)} />
      <input type="hidden" name="clientKey" value={keys.client} />
      <input type="hidden" name="stepKey" value={keys.step} />
      <div className="grid gap-6" onInput={look}>
        <div className="grid max-w-3xl gap-4 sm:grid-cols-2">
          <TextField name="on" label="Measured on" type="date" value={form.today} />
          <ChoiceField name="loadState" label="The car was loaded" options={loads} value="unknown" />
        </div>
        <Instruments form={form} dimensions={dimensions} />
        <p className="max-w-prose text-small">
          Write each reading as the gauge shows it: -0°32', 1/16" toe-in per side on 13 in, 22 psi, 4 cwt.
          Several readings of one thing stand with a semicolon between them. What was not measured stays
          empty.
        </p>
        <SignDrawing signs={signs} sideWords={words} />
        <div className="grid items-start gap-x-12 gap-y-6 wide:grid-cols-2">
          {form.groups.map(({ key, label, rows }) => (
            <fieldset key={key} className="sheet-axle">
              <legend className="w-full border-ink border-t-2 pt-2 text-head">{label}</legend>
              {rows.filter(isUsualSetting).map((row) => (
                <SheetRow key={row.key} row={row} {...{ form, words, found }} />
              ))}
              <Seldom rows={rows.filter((row) => !isUsualSetting(row))} {...{ form, words, found }} />
            </fieldset>
          ))}
        </div>
        <div className="grid max-w-3xl gap-6">
          <TextArea name="note" label="Note" rows={3} maxLength={4000} />
          <PasteTable />
        </div>
      </div>
    </EditForm>
  );
}

type SheetRowProps = Pick<SheetFormProps, "form" | "words" | "found"> & { readonly row: Row };

function SheetRow({ row, form, words, found }: SheetRowProps) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot take part in the grid of its fieldset
    <div className="sheet-row" role="group" aria-label={row.label}>
      {row.sided ? (
        <p aria-hidden className="sheet-name">
          <span className="font-semibold">{row.label}</span>
        </p>
      ) : null}
      {sidesOf(row).map((side) => {
        const name = side === "whole" ? row.label : words[side];
        const now = form.now[`${row.key} ${side}`];
        const hint = now === undefined ? "not on the record" : `on the record: ${now}`;
        return (
          <div
            key={side}
            className={side === "whole" ? "sheet-whole grid gap-2" : "grid content-start gap-2"}
          >
            <input type="hidden" name="cell" value={`${row.key} ${side} ${row.dimension}`} />
            {found ? (
              <TextField
                name={sheetField(row.key, side, "asFound")}
                label={`${name}, as found`}
                maxLength={200}
                autoComplete="off"
              />
            ) : null}
            <TextField
              name={sheetField(row.key, side, "asLeft")}
              label={found ? `${name}, as left` : name}
              hint={hint}
              maxLength={200}
              autoComplete="off"
            />
          </div>
        );
      })}
    </div>
  );
}

type SeldomProps = Omit<SheetRowProps, "row"> & { readonly rows: readonly Row[] };

/** What is measured now and then, folded until something of it was typed, so that a phone shows what is set today. */
function Seldom({ rows, ...props }: SeldomProps) {
  const { typed, errors } = useForm();
  const ours = new Set(
    rows.flatMap(({ key, ...row }) =>
      sidesOf({ key, ...row }).flatMap((side) => [
        sheetField(key, side, "asLeft"),
        sheetField(key, side, "asFound"),
      ]),
    ),
  );
  const said = Object.entries(typed).some(
    ([name, values]) => ours.has(name) && values.some((one) => one.trim() !== ""),
  );
  if (rows.length === 0) return null;
  return (
    <details open={said || Object.keys(errors).some((name) => ours.has(name))} className="sheet-whole">
      <summary className="min-h-11 cursor-pointer py-2">
        {rows.length === 1 ? "1 more" : `${rows.length} more`}:{" "}
        {rows.map(({ label }) => label.toLowerCase()).join(", ")}
      </summary>
      <div className="sheet-axle">
        {rows.map((row) => (
          <SheetRow key={row.key} row={row} {...props} />
        ))}
      </div>
    </details>
  );
}

function PasteTable() {
  return (
    <details>
      <summary className="min-h-11 cursor-pointer py-2 font-semibold">Take readings from a table</summary>
      <div className="grid gap-3 pt-2">
        <TextArea
          name="table"
          label="The table, pasted or as CSV"
          rows={6}
          hint={
            'A setting a row, with the sides in the head ("Setting; Left; Right"), or settings in the head and readings below. It fills only places that are still empty; nothing is handed in by it.'
          }
        />
        <label className="grid gap-1">
          <span className="font-semibold">or a file of it</span>
          <input type="file" name="file" accept=".csv,.tsv,.txt,text/csv,text/plain" className="field" />
        </label>
        <div>
          <Button name="step" value="table">
            Put the table into the form
          </Button>
        </div>
      </div>
    </details>
  );
}
