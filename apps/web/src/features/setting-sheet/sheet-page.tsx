import type { SettingPlot, SettingSheetPage, SheetLine } from "@trunnion/api";
import type { ReactNode } from "react";
import { Caution } from "../../components/caution";
import { ForgetForm } from "../../components/form/kept-form";
import { PageHead, SectionHead } from "../../components/page-head";
import { Plate } from "../../components/plate";
import type { ClubFace } from "../../components/shell/shell";
import { TimePlot } from "../../components/time-plot";
import { cautions } from "../../lib/caution";
import { sayLongDay } from "../../lib/day";
import { carPath, newSettingSheetPath, rollPath, settingSheetsPath, setupPlanPath } from "../../lib/path";
import { SheetTable } from "./sheet-table";
import { SideChoice } from "./side-choice";
import type { SideWords } from "./side-words";
import { SignDrawing } from "./sign-drawing";
import { loadWords, pairWords, sheetFormName } from "./words";

export interface SheetPageProps {
  readonly club: ClubFace;
  readonly page: SettingSheetPage;
  readonly words: SideWords;
  /** Address of this page, to come back to after the side words were changed. */
  readonly here: string;
  /** A sheet was just handed in. */
  readonly sent?: boolean;
}

/** What a car is set to: one sheet in full, how each setting went, and every sheet there is. */
export function SheetPage({ club, page, words, here, sent = false }: SheetPageProps) {
  const { car, shown } = page;
  return (
    <>
      <PageHead
        title="What it is set to"
        back={{ href: carPath(club.slug, car.reference), label: "The car" }}
        plate={<Plate chassis={car.chassis} />}
        lead={car.series}
      />
      {sent ? <ForgetForm name={sheetFormName(car.reference)} /> : null}
      {sent ? (
        <p role="status" className="mb-4 max-w-prose border-ink border-l-4 py-1 pl-4 font-semibold">
          The sheet is handed in. It stands here once a registrar has accepted it.
        </p>
      ) : null}
      <nav aria-label="On settings" className="print:hidden flex flex-wrap gap-x-6 pb-4 text-small">
        <a className="inline-flex min-h-11 items-center" href={newSettingSheetPath(club.slug, car.reference)}>
          Write a setting sheet
        </a>
        <a className="inline-flex min-h-11 items-center" href={setupPlanPath(club.slug, car.reference)}>
          Plan the way to a setting
        </a>
        <a className="inline-flex min-h-11 items-center" href={rollPath(club.slug, car.reference)}>
          Springs and bars in roll
        </a>
      </nav>
      <div className="grid grid-cols-1 gap-12">
        {shown === undefined ? <NoSheet sheets={page.sheets} /> : <Shown {...{ page, shown, words, here }} />}
        <Plots plots={page.plots} words={words} />
        <Sheets club={club.slug} car={car.reference} sheets={page.sheets} shown={shown?.id} />
        <Caution cautions={cautions.setting} />
      </div>
    </>
  );
}

function NoSheet({ sheets }: { readonly sheets: readonly SheetLine[] }) {
  return (
    <p className="max-w-prose">
      {sheets.length === 0
        ? "No setting of this car was ever read, as far as the register knows."
        : "There is no such setting sheet of this car; those there are stand below."}
    </p>
  );
}

interface ShownProps {
  readonly page: SettingSheetPage;
  readonly shown: SheetLine;
  readonly words: SideWords;
  readonly here: string;
}

function Shown({ page, shown, words, here }: ShownProps): ReactNode {
  const facts = [
    loadWords[shown.loadState],
    shown.instruments.length === 0 ? "instrument not said" : `read with ${shown.instruments.join(", ")}`,
    shown.event === undefined
      ? shown.source
      : `number ${shown.event.number} at ${shown.event.name}${shown.by === "" ? "" : `, by ${shown.by}`}`,
  ];
  return (
    <section aria-labelledby="sheet" className="grid grid-cols-1 gap-6">
      <div>
        <SectionHead id="sheet" title={`Setting sheet of ${sayLongDay(shown.on)}`}>
          <span className="text-small text-soft">
            {shown.pair === undefined ? "" : `${pairWords[shown.pair]}; `}
            {facts.join("; ")}
          </span>
        </SectionHead>
        {shown.note === "" ? null : <p className="max-w-prose whitespace-pre-line">{shown.note}</p>}
        <SideChoice words={words} here={here} />
      </div>
      <div className="grid grid-cols-1 gap-8 wide:grid-cols-[1fr_minmax(0,15rem)]">
        <SheetTable groups={page.groups} words={words} />
        <SignDrawing signs={page.signs} sideWords={words} />
      </div>
    </section>
  );
}

function Plots({ plots, words }: { readonly plots: readonly SettingPlot[]; readonly words: SideWords }) {
  if (plots.length === 0) return null;
  return (
    <section aria-labelledby="history" className="grid grid-cols-1 gap-6">
      <SectionHead id="history" title="How it went over the years" />
      <p className="max-w-prose text-small">
        Rails are the limits specified now. A whisker is the expanded uncertainty, k = 2, where the instrument
        is known.
      </p>
      <div className="grid grid-cols-1 gap-10 wide:grid-cols-2">
        {plots.map((plot) => (
          <Plot key={plot.characteristic} plot={plot} words={words} />
        ))}
      </div>
    </section>
  );
}

const sideLabel = (side: "left" | "right" | "whole", words: SideWords) =>
  side === "whole" ? "" : words[side];

function Plot({ plot, words }: { readonly plot: SettingPlot; readonly words: SideWords }) {
  const lines = plot.lines.map(({ side, points }) => ({ key: side, label: sideLabel(side, words), points }));
  return (
    <figure className="grid content-start gap-2">
      <figcaption className="font-semibold">{plot.label}</figcaption>
      <TimePlot
        unit={plot.unit}
        lines={lines}
        {...(plot.lower === undefined ? {} : { lower: plot.lower })}
        {...(plot.upper === undefined ? {} : { upper: plot.upper })}
      />
      <details className="print-open text-small">
        <summary className="print:hidden min-h-11 cursor-pointer py-2">As a table</summary>
        <PlotTable plot={plot} words={words} />
      </details>
    </figure>
  );
}

function PlotTable({ plot, words }: { readonly plot: SettingPlot; readonly words: SideWords }) {
  const days = [...new Set(plot.lines.flatMap(({ points }) => points.map(({ on }) => on)))].sort();
  return (
    <table className="plain-table">
      <caption className="sr-only">{plot.label}, reading by reading</caption>
      <thead>
        <tr>
          <th scope="col">On</th>
          {plot.lines.map(({ side }) => (
            <th key={side} scope="col">
              {side === "whole" ? "Reading" : words[side]}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {days.map((day) => (
          <tr key={day}>
            <th scope="row" className="font-normal">
              {sayLongDay(day)}
            </th>
            {plot.lines.map(({ side, points }) => (
              <td key={side}>
                {points
                  .filter(({ on }) => on === day)
                  .map(({ entered }) => entered)
                  .join(", then ")}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface SheetsProps {
  readonly club: string;
  readonly car: string;
  readonly sheets: readonly SheetLine[];
  readonly shown: string | undefined;
}

function Sheets({ club, car, sheets, shown }: SheetsProps) {
  if (sheets.length === 0) return null;
  return (
    <section aria-labelledby="sheets">
      <SectionHead id="sheets" title="Every setting sheet" />
      <ul className="grid">
        {sheets.map((one) => (
          <li key={one.id} className="flex flex-wrap items-center gap-x-4 border-hair border-b">
            <a
              className="inline-flex min-h-11 items-center"
              href={settingSheetsPath(club, car, { sheet: one.id })}
              {...(one.id === shown ? { "aria-current": "page" as const } : {})}
            >
              {sayLongDay(one.on)}
              {one.pair === undefined ? "" : `, ${pairWords[one.pair]}`}
            </a>
            <span className="text-small text-soft">
              {one.settings === 1 ? "1 reading" : `${one.settings} readings`}, {loadWords[one.loadState]}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
