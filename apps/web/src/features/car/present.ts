import type { CarPage } from "@trunnion/api";
import { assemblies, assemblyLabels, type DeviationLine } from "@trunnion/register";
import type { ValueRow } from "../../components/value-table";
import { type leadersOf, sideWords } from "../../lib/assembly";
import type { AssemblyState } from "./assembly-section";
import type { HistoryLine } from "./history-section";
import type { CarFace } from "./identity";
import type { CarSetting, CornerReading, SettingGroup } from "./setting-section";

type SideWords = CarPage["club"]["sideWords"];

const keyOf = ({ characteristic, side }: DeviationLine) => `${characteristic} ${side ?? "whole"}`;

/** A line of the service as a row of a table; `leader` where the table goes across assemblies. */
export function rowOf(line: DeviationLine, words: SideWords, leader?: number): ValueRow {
  const { label, side, specified, actual, difference, verdict, verdictText, bracket, known } = line;
  return {
    key: keyOf(line),
    label,
    specified,
    actual,
    difference,
    verdict,
    verdictText,
    ...(side === undefined ? {} : { side: sideWords[words][side].toLowerCase() }),
    ...(leader === undefined ? {} : { leader }),
    ...(bracket === undefined ? {} : { bracket }),
    ...(known === undefined ? {} : { known }),
  };
}

const leaderOf = ({ assembly }: DeviationLine) => assemblies.indexOf(assembly) + 1;

/** Lines across assemblies, each with its leader. */
export function acrossAssemblies(lines: readonly DeviationLine[], words: SideWords): readonly ValueRow[] {
  return lines.map((line) => rowOf(line, words, leaderOf(line)));
}

/** How many of the lines belong to each assembly. */
export function countsOf(lines: readonly DeviationLine[]): Parameters<typeof leadersOf>[0] {
  const counts: Partial<Record<DeviationLine["assembly"], number>> = {};
  for (const { assembly } of lines) counts[assembly] = (counts[assembly] ?? 0) + 1;
  return counts;
}

/** State against specification, assembly by assembly; settings have a section of their own. */
export function assemblyStates({
  factory,
  deviating,
  unspoken,
  settings,
  club,
}: CarPage): readonly AssemblyState[] {
  const counts = countsOf(deviating);
  const set = new Set(settings);
  return assemblies.map((assembly, index) => ({
    assembly,
    label: assemblyLabels[assembly],
    leader: index + 1,
    deviations: counts[assembly] ?? 0,
    rows: factory
      .filter(
        (line) => line.assembly === assembly && !(assembly === "settings" && set.has(line.characteristic)),
      )
      .map((line) => rowOf(line, club.sideWords)),
    notRecorded: unspoken[assembly] ?? [],
  }));
}

function cornerOf({ actual, verdict, verdictText, bracket, known }: DeviationLine): CornerReading {
  return {
    text: actual,
    verdict,
    verdictText,
    ...(bracket === undefined ? {} : { bracket }),
    ...(known === undefined ? {} : { known }),
  };
}

function settingOf(key: string, lines: readonly DeviationLine[]): CarSetting | undefined {
  const [first] = lines;
  if (!first) return undefined;
  const corners = Object.fromEntries(lines.map((line) => [line.side ?? "whole", cornerOf(line)]));
  return { key, label: first.label, limits: first.specified, ...corners };
}

/** Settings grouped as the car is seen from above, nose up. */
export function settingGroups({ factory, settings }: CarPage): readonly SettingGroup[] {
  const groups = [
    { key: "front", label: "Front", has: (key: string) => /^(tyres\.)?front\./.test(key) },
    { key: "rear", label: "Rear", has: (key: string) => /^(tyres\.)?rear\./.test(key) },
    { key: "car", label: "Whole car", has: (key: string) => !/^(tyres\.)?(front|rear)\./.test(key) },
  ];
  return groups.flatMap(({ key, label, has }) => {
    const here = settings.filter(has).flatMap((characteristic) => {
      const setting = settingOf(
        characteristic,
        factory.filter((line) => line.characteristic === characteristic),
      );
      return setting === undefined ? [] : [setting];
    });
    return here.length === 0 ? [] : [{ key, label, settings: here }];
  });
}

const titles = { built: "Built", modification: "Modified", reading: "Looked at", note: "Noted" } as const;

export function historyLines({ history }: CarPage): readonly HistoryLine[] {
  return history.map(({ id, on, kind, text, changes }) => ({
    key: id,
    on,
    title: titles[kind],
    changes,
    ...(text === "" ? {} : { text }),
  }));
}

/** Who the car is, with its keepers where the reader may see them. */
export function faceOf({ car, claims, colour, body, keepers }: CarPage): CarFace {
  const keeperLines = (keepers ?? []).map(({ name, from, to }) => {
    const span = [from === "" ? "" : `from ${from}`, to === undefined ? "" : `to ${to}`].filter(
      (part) => part !== "",
    );
    return { label: to === undefined ? "Keeper" : "Earlier keeper", value: [name, ...span].join(", ") };
  });
  return {
    reference: car.reference,
    chassis: car.chassis,
    claim: car.claim,
    claims,
    marque: car.series?.marque.name ?? "",
    series: car.series?.name ?? "series not settled",
    built: car.built ?? "",
    firstRegistered: car.firstRegistered ?? "",
    status: car.status,
    ...(car.statusSince === null ? {} : { statusSince: car.statusSince }),
    options: car.options,
    numbers: car.identities.map(({ kind, number, standing, fromText, toText }) => ({
      kind,
      number,
      standing,
      ...(fromText === null ? {} : { from: fromText }),
      ...(toText === null ? {} : { to: toText }),
    })),
    more: [{ label: "Body", value: body }, { label: "Colour", value: colour }, ...keeperLines],
    ...(car.remarks === null ? {} : { remarks: car.remarks }),
    version: car.version,
  };
}

/** What is decided about its numbers, and whether the reader may change the record. */
export function standingOf({ decisions, mergedInto, mayEdit }: CarPage) {
  return { decisions, mayEdit, ...(mergedInto === undefined ? {} : { mergedInto }) };
}
