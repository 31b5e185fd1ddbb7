import type { EventPack } from "@trunnion/api";
import type {
  Characteristic,
  Finding,
  FindingReading,
  FindingResult,
  SheetCheck,
  Side,
} from "@trunnion/register";
import { findingResultWords, measuredNote, readingPlaces, sayPlace } from "@trunnion/register";
import { useRef, useState } from "react";
import type { Draft } from "./kept";
import { ReadingField } from "./reading-field";
import { ResultButtons } from "./result-buttons";
import type { Paddock } from "./use-paddock";
import type { EntryView } from "./view";

export interface CheckCardProps {
  readonly check: SheetCheck;
  readonly view: EntryView;
  readonly pack: EventPack;
  readonly paddock: Paddock;
}

/** What is read at a check: characteristic and side, with the limits on this car. */
function placesOf({ criterion }: SheetCheck, { entry }: EntryView, pack: EventPack) {
  const find = (key: string) => pack.characteristics.find((one) => one.key === key);
  return readingPlaces(criterion, find).map((place) => {
    const { characteristic: key, side } = place;
    const characteristic = find(key);
    return {
      at: characteristic ? `${key} ${side}` : `${LOOSE} ${place.key}`,
      characteristic,
      side,
      place: sayPlace(place),
      limits: entry.reads.find((one) => one.key === key && one.side === side)?.limits,
    };
  });
}

/** Stands for the characteristic of a figure for which the check names none. */
const LOOSE = "-";

function draftOf(finding: Finding | undefined): Draft {
  const readings = (finding?.readings ?? []).map(
    ({ characteristic, side, entered }) => [`${characteristic} ${side}`, entered] as const,
  );
  return { note: finding?.note ?? "", readings: Object.fromEntries(readings) };
}

const same = (one: Draft, other: Draft) =>
  one.note === other.note &&
  [...new Set([...Object.keys(one.readings), ...Object.keys(other.readings)])].every(
    (at) => (one.readings[at] ?? "") === (other.readings[at] ?? ""),
  );

/** What a draft says: figures with a characteristic, each with what it is read with, and the note with the others. */
function saidIn({ note, readings }: Draft, pack: EventPack, paddock: Paddock) {
  const written = Object.entries(readings).flatMap(([at, entered]) => {
    const [characteristic = "", where = "whole"] = at.split(" ");
    return entered.trim() === "" ? [] : [{ characteristic, where, entered: entered.trim() }];
  });
  const loose = written.filter(({ characteristic }) => characteristic === LOOSE);
  return {
    note: measuredNote(
      note.trim(),
      loose.map(({ where, entered }) => ({ place: sayPlace({ key: where }), entered })),
    ),
    readings: written.flatMap(({ characteristic, where, entered }): readonly FindingReading[] => {
      if (characteristic === LOOSE) return [];
      const of = pack.characteristics.find(({ key }) => key === characteristic);
      const instrument = of?.kind === "quantity" ? paddock.kept.gauges.get(of.dimension) : undefined;
      const reading = { characteristic, side: where as Side, entered };
      return [instrument === undefined ? reading : { ...reading, instrument }];
    }),
  };
}

/** Uncertainty of what figures of this kind are measured with, as chosen on this device. */
function uncertaintyOf(characteristic: Characteristic | undefined, pack: EventPack, { kept }: Paddock) {
  const dimension = characteristic?.kind === "quantity" ? characteristic.dimension : "";
  return pack.instruments?.find(({ id }) => id === kept.gauges.get(dimension))?.expandedUncertainty;
}

/** One check: what to look at, why, what was found; every touch is kept at once. */
export function CheckCard({ check, view, pack, paddock }: CheckCardProps) {
  const { entryId } = view.entry;
  const standing = view.standings.get(check.id) ?? { state: "open" };
  const findings = standing.state === "open" ? [] : standing.findings;
  const result = standing.state === "found" ? standing.result : undefined;
  const at = `${entryId} ${check.id}`;
  const said = draftOf(findings.length === 1 ? findings[0] : undefined);
  const [typed, setTyped] = useState<Draft | undefined>(() => paddock.kept.drafts.get(at));
  const file = useRef<HTMLInputElement>(null);
  const draft = typed ?? said;
  const places = placesOf(check, view, pack);
  const wantsNote = result === "advise" || result === "refuse" || draft.note !== "";
  const photos = paddock.kept.photos.filter(({ finding }) => findings.some(({ key }) => key === finding));

  const type = (next: Draft) => {
    setTyped(next);
    void paddock.saveDraft(at, next);
  };
  const say = (chosen: FindingResult) => {
    const replaces = findings.map(({ key }) => key);
    setTyped(undefined);
    void paddock.sayOfCheck({
      entryId,
      check: check.id,
      result: chosen,
      replaces,
      ...saidIn(draft, pack, paddock),
    });
  };
  const leave = () => {
    if (result !== undefined && typed && !same(typed, said)) say(result);
  };

  return (
    <li className="grid gap-2.5 border-hair border-b py-4" id={`check-${check.id}`}>
      <div className="grid gap-1">
        <h3 className="font-semibold text-lead leading-snug">{check.text}</h3>
        {check.special ? <p className="border-red border-l-4 pl-3 text-small">{check.why}</p> : null}
        {check.method === undefined ? null : <p className="text-small text-soft">{check.method}</p>}
        {"text" in check.criterion ? <p className="text-small">{check.criterion.text}</p> : null}
      </div>
      {standing.state === "conflict" ? <Conflict findings={findings} /> : null}
      <div className={places.length === 4 ? "grid grid-cols-2 gap-3" : "grid gap-2.5 empty:hidden"}>
        {places.map(({ at: place, ...field }) => (
          <ReadingField
            key={place}
            {...field}
            uncertainty={uncertaintyOf(field.characteristic, pack, paddock)}
            entered={draft.readings[place] ?? ""}
            onType={(entered) => type({ ...draft, readings: { ...draft.readings, [place]: entered } })}
            onLeave={leave}
          />
        ))}
      </div>
      <ResultButtons label={`Result: ${check.text}`} result={result} onChoose={say} />
      <div className="flex flex-wrap items-center gap-3">
        <details open={wantsNote} className="grow basis-60">
          <summary className="min-h-11 py-2 text-small underline">Note</summary>
          <textarea
            aria-label={`Note: ${check.text}`}
            value={draft.note}
            onChange={({ target }) => type({ ...draft, note: target.value })}
            onBlur={leave}
            rows={2}
            maxLength={2000}
            placeholder={result === "refuse" ? "What is wrong, so that it can be put right" : ""}
            className="w-full border border-ink bg-paper p-3"
          />
        </details>
        {findings.length === 1 ? (
          <>
            <input
              ref={file}
              type="file"
              accept="image/*"
              capture="environment"
              className="sr-only"
              tabIndex={-1}
              aria-label={`Photo: ${check.text}`}
              onChange={({ target }) => {
                const [chosen] = target.files ?? [];
                const [finding] = findings;
                if (chosen && finding) void paddock.addPhoto(finding.key, chosen);
                target.value = "";
              }}
            />
            <button
              type="button"
              onClick={() => file.current?.click()}
              className="min-h-11 self-start px-2 text-small underline"
            >
              Take a photo
            </button>
          </>
        ) : null}
      </div>
      {photos.map(({ key, name, problem }) => (
        <p key={key} className="text-small">
          {name}: {problem === "" ? "kept here, goes with the next connection" : problem}
        </p>
      ))}
    </li>
  );
}

/** Findings of scrutineers who had not seen each other's, side by side. */
function Conflict({ findings }: { readonly findings: readonly Finding[] }) {
  return (
    <div role="alert" className="grid gap-2 border-red border-l-4 pl-3">
      <p className="font-semibold">Two scrutineers differ. Look again and give the result that holds.</p>
      <ul className="grid gap-2 sm:grid-cols-2">
        {findings.map(({ key, by, at, result, note, readings }) => (
          <li key={key} className="border border-line p-2 text-small">
            <p className="font-semibold">
              {by === "" ? "Somebody" : by}: {findingResultWords[result]}
            </p>
            <p>{readings.map(({ entered }) => entered).join(", ")}</p>
            <p className="whitespace-pre-line">{note}</p>
            <p className="text-soft">{new Date(at).toLocaleTimeString("en-GB", { timeStyle: "short" })}</p>
          </li>
        ))}
      </ul>
    </div>
  );
}
