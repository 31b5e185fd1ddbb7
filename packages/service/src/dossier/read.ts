import { createHash } from "node:crypto";
import {
  assemblies,
  assemblyLabels,
  carStatusWords,
  type DeviationLine,
  DOSSIER_LAYOUT,
  type DossierEvent,
  type DossierEvidence,
  type DossierModel,
  type DossierRow,
  knownText,
  refused,
  type TimelineEvent,
} from "@trunnion/register";
import { type CarPage, carPage } from "../car-page";
import type { Context } from "../context";
import { carEvidence, evidenceFile } from "../evidence";
import { maySeeKeepers } from "../keeper";
import { carTimeline } from "../timeline";
import type { DossierFile } from "./picture";

export interface DossierInput {
  /** The car's reference. */
  readonly car: string;
  /** Keepers' names and the spans they kept it; refused to whoever may not see them. */
  readonly keepers: boolean;
}

/** Most pictures in one dossier; further pieces are named without one. */
const PICTURES = 200;

const sideWords = {
  leftRight: { left: "left", right: "right" },
  nearOff: { left: "nearside", right: "offside" },
};

function rowOf(line: DeviationLine, { club }: CarPage): DossierRow {
  const { label, side, actual, specified, difference, verdict, verdictText, known } = line;
  return {
    label: side === undefined ? label : `${label}, ${sideWords[club.sideWords][side]}`,
    actual,
    specified,
    difference,
    verdict,
    verdictText,
    known: known === undefined || known.origin === "specification" ? "" : knownText(known),
  };
}

function spanOf(from: string, to: string | undefined): string {
  return [from === "" ? "" : `from ${from}`, to === undefined ? "" : `to ${to}`].filter(Boolean).join(" ");
}

const numberLabels = {
  chassis: "Chassis number",
  commission: "Commission number",
  engine: "Engine number",
  body: "Body number",
  registration: "Registration mark",
} as const;

function factsOf({ car, colour, body }: CarPage): DossierModel["facts"] {
  const status = carStatusWords[car.status];
  return [
    { label: "Built", value: car.built ?? "" },
    { label: "First registered", value: car.firstRegistered ?? "" },
    { label: "Status", value: car.statusSince === null ? status : `${status}, since ${car.statusSince}` },
    { label: "Options", value: car.options.join(", ") },
    { label: "Body", value: body },
    { label: "Colour", value: colour },
    ...car.identities.map(({ kind, number, standing, fromText, toText }) => ({
      label: numberLabels[kind],
      value: [number, standing === "accepted" ? "" : standing, spanOf(fromText ?? "", toText ?? undefined)]
        .filter(Boolean)
        .join(", "),
    })),
    ...(car.remarks === null ? [] : [{ label: "Remarks", value: car.remarks }]),
  ];
}

function eventOf({ when, until, title, text = "", details = [], source }: TimelineEvent): DossierEvent {
  const end = until === undefined || until === "open" ? "" : ` to ${until.text}`;
  return {
    on: when === undefined ? "" : `${when.text}${end}`,
    title,
    text,
    changes: details.map(({ label, before, after }) =>
      before === undefined || before === "" ? `${label}: ${after}` : `${label}: ${before} → ${after}`,
    ),
    known: source === undefined ? "" : knownText({ source }),
  };
}

/** A finished dossier, and the files its pictures are made of. */
export interface Dossier {
  readonly model: DossierModel;
  readonly files: readonly DossierFile[];
}

/** Each piece once, with all it supports, and its file where it is a picture. */
async function evidenceIn(ctx: Context, car: string) {
  const { groups } = await carEvidence(ctx, car);
  const pieces = new Map<string, DossierEvidence>();
  const files: DossierFile[] = [];
  for (const { target, pieces: shown } of groups) {
    for (const { id, caption, taken, picture, quarterTurns, locus } of shown) {
      const support = locus === "" ? target.label : `${target.label} (${locus})`;
      const known = pieces.get(id);
      if (known) {
        pieces.set(id, { ...known, supports: [...known.supports, support] });
        continue;
      }
      const pictured = picture && files.length < PICTURES;
      pieces.set(id, { id, caption, taken, supports: [support], pictured });
      if (pictured) files.push({ id, sha256: (await evidenceFile(ctx, id)).sha256, turns: quarterTurns });
    }
  }
  return { evidence: [...pieces.values()], files };
}

/**
 * Everything the register holds of one car as a finished dossier: identity, what differs, its whole life, its state with
 * how each value is known, what is not recorded, the evidence.
 *
 * @throws Refusal CAR_NOT_FOUND; ROLE_NEEDED where keepers are asked for by somebody who may not see them
 */
export async function dossierOf(ctx: Context, { car, keepers }: DossierInput): Promise<Dossier> {
  if (keepers && !maySeeKeepers(ctx))
    throw refused("ROLE_NEEDED", { needed: ["registrar", "fleetManager"], has: ctx.actor.roles });
  const page = await carPage(ctx, car);
  const { events } = await carTimeline(ctx, { car });
  const { evidence, files } = await evidenceIn(ctx, car);
  const told = {
    recordVersion: page.car.version,
    club: ctx.club.name,
    car: {
      chassis: page.car.chassis,
      marque: page.car.series?.marque.name ?? "",
      series: page.car.series?.name ?? "series not settled",
      claim: page.claims > 1 ? `claim ${page.car.claim} of ${page.claims} to this number` : "",
    },
    facts: factsOf(page),
    ...(keepers
      ? { keepers: (page.keepers ?? []).map(({ name, from, to }) => ({ name, span: spanOf(from, to) })) }
      : {}),
    deviations: page.deviating.map((line) => rowOf(line, page)),
    history: events.filter(({ lane }) => keepers || lane !== "keeper").map(eventOf),
    assemblies: assemblies.map((assembly) => ({
      label: assemblyLabels[assembly],
      rows: page.factory.filter((line) => line.assembly === assembly).map((line) => rowOf(line, page)),
      notRecorded: page.unspoken[assembly] ?? [],
    })),
    evidence,
    cautions: [
      "This record is an aid. It certifies no roadworthiness: a competent mechanic, the organiser's regulations and the law where the car is driven decide.",
      "What is not recorded is not known to be right.",
    ],
  };
  const model = {
    ...told,
    layoutVersion: DOSSIER_LAYOUT,
    recordHash: createHash("sha256").update(JSON.stringify(told)).digest("hex"),
    preparedAt: ctx.now.toISOString(),
    on: longDay.format(ctx.now),
  };
  return { model, files };
}

const longDay = new Intl.DateTimeFormat("en-GB", { dateStyle: "long", timeZone: "UTC" });
