import type { InstrumentPage as Page } from "@trunnion/api";
import { DefinitionTable } from "../../components/definition-table";
import { EditForm } from "../../components/form/edit-form";
import { TextField } from "../../components/form/form-field";
import { Notice } from "../../components/notice";
import { PageHead, SectionHead } from "../../components/page-head";
import { SmallPlate } from "../../components/plate";
import { TitleBlock } from "../../components/shell/title-block";
import { sayLongDay } from "../../lib/day";
import { instrumentsPath, settingSheetsPath } from "../../lib/path";
import { changeInstrument, setRetired } from "./action";
import { dimensionWords, InstrumentFields } from "./instrument-fields";

const labels = {
  label: "What it is",
  dimension: "It reads",
  number: "Its number",
  resolution: "Smallest step",
  uncertainty: "Uncertainty",
  calibratedOn: "Last calibrated",
  calibratedUntil: "Calibration good until",
  reason: "Why",
};

/** One instrument: what is known of it, what was read with it, and the way to correct it or take it out of use. */
export function InstrumentPage({ page, saved }: { readonly page: Page; readonly saved: boolean }) {
  const { club, line, texts, mayChange } = page;
  return (
    <>
      <PageHead
        title={line.label}
        back={{ href: instrumentsPath(club.slug), label: "Instruments" }}
        lead={`${dimensionWords[line.dimension] ?? line.dimension}: ${line.known}`}
      />
      <div className="grid gap-10">
        {saved ? (
          <Notice tone="note" text={{ what: "Saved.", remedy: "The journal says what was changed." }} />
        ) : null}
        {line.retired === undefined ? null : (
          <Notice
            tone="note"
            text={{
              what: `Out of use: ${line.retired}`,
              remedy: "No form offers it; what was read with it keeps its name and its uncertainty.",
            }}
          />
        )}
        {mayChange ? null : (
          <section aria-labelledby="facts">
            <SectionHead id="facts" title="What it is" />
            <DefinitionTable
              rows={[
                { label: labels.number, value: texts.number },
                { label: labels.resolution, value: texts.resolution },
                { label: labels.uncertainty, value: texts.uncertainty },
                {
                  label: labels.calibratedOn,
                  value: texts.calibratedOn === "" ? "" : sayLongDay(texts.calibratedOn),
                },
                {
                  label: labels.calibratedUntil,
                  value: texts.calibratedUntil === "" ? "" : sayLongDay(texts.calibratedUntil),
                },
              ]}
            />
          </section>
        )}
        {mayChange && line.retired === undefined ? <Correct page={page} /> : null}
        <Sheets page={page} />
        {mayChange ? <Retire page={page} /> : null}
      </div>
      <TitleBlock club={club.name} kind="Instrument" title={line.label} />
    </>
  );
}

const dimensions = ["angle", "length", "pressure", "mass"];

function Correct({ page: { club, line, texts, version, sheetCount, findings } }: { readonly page: Page }) {
  const used = sheetCount + findings > 0;
  return (
    <section aria-labelledby="correct" className="print:hidden">
      <SectionHead id="correct" title="Correct it" />
      <p className="max-w-prose pb-4 text-small">
        Readings that stand on the record keep the uncertainty they were accepted with; a new calibration
        counts from the next sheet on.
        {used ? " What it reads stays, since readings were taken with it." : ""}
      </p>
      <EditForm
        action={changeInstrument.bind(null, club.slug, line.id)}
        submit="Save"
        weight="plain"
        labels={labels}
        version={version}
      >
        {Object.entries(texts).map(([field, value]) => (
          <input key={field} type="hidden" name={`opened.${field}`} value={value} />
        ))}
        <div className="grid gap-4 sm:grid-cols-2">
          <InstrumentFields
            at={(part) => part}
            dimensions={used ? dimensions.filter((one) => one === line.dimension) : dimensions}
            texts={{ ...texts }}
          />
        </div>
      </EditForm>
    </section>
  );
}

function Sheets({ page: { club, sheets, sheetCount, findings } }: { readonly page: Page }) {
  return (
    <section aria-labelledby="sheets">
      <SectionHead id="sheets" title="Read with it" />
      {sheetCount === 0 ? <p className="text-soft">No setting sheet on the record names it.</p> : null}
      <ul>
        {sheets.map(({ id, car, on, readings }) => (
          <li key={id} className="flex flex-wrap items-center gap-x-6 border-hair border-b py-1">
            <SmallPlate
              chassis={car.chassis}
              href={settingSheetsPath(club.slug, car.reference, { sheet: id })}
            />
            <span className="text-small">
              {sayLongDay(on)}
              <span className="text-soft">, {readings === 1 ? "1 reading" : `${readings} readings`}</span>
            </span>
          </li>
        ))}
      </ul>
      {sheetCount > sheets.length ? (
        <p className="pt-2 text-small text-soft">
          The latest {sheets.length} of {sheetCount} setting sheets.
        </p>
      ) : null}
      {findings === 0 ? null : (
        <p className="pt-2 text-small text-soft">
          {findings === 1 ? "1 reading" : `${findings} readings`} of a scrutineer's findings.
        </p>
      )}
    </section>
  );
}

function Retire({ page: { club, line, version } }: { readonly page: Page }) {
  const retire = line.retired === undefined;
  const title = retire ? "Take it out of use" : "Put it back in use";
  return (
    <details className="print:hidden">
      <summary className="min-h-11 cursor-pointer py-2 font-semibold">{title}</summary>
      <EditForm
        action={setRetired.bind(null, { club: club.slug, instrument: line.id, retire })}
        submit={title}
        weight="plain"
        labels={labels}
        version={version}
      >
        <TextField
          name="reason"
          label="Why"
          required
          maxLength={300}
          hint={retire ? "E.g. lost, dropped, reads 20' out." : "E.g. repaired and calibrated."}
        />
      </EditForm>
    </details>
  );
}
