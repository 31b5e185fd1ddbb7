// table: every use case that writes, and who may
import { readdirSync, readFileSync } from "node:fs";
import type { Role } from "@trunnion/db";
import { openWorld, type World } from "@trunnion/fixtures";
import { Refusal } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { prepareArchive } from "./archive";
import { setAsBuilt } from "./as-built";
import { addCar, correctCar, fileCar, setOptions } from "./car";
import {
  addCharacteristic,
  addCharacteristicInput,
  bookOf,
  changeCharacteristic,
  changeCharacteristicInput,
} from "./characteristic";
import type { Context } from "./context";
import { changeEntry, enterCar } from "./entry";
import { takeEntryList } from "./entry-list";
import { addEntries, addEvent, changeEvent, planEvent } from "./event";
import { openOperator } from "./gate";
import { addNote, correctNote, removeNote } from "./history-note";
import { addIdentity, correctIdentity, removeIdentity } from "./identity";
import {
  beginImport,
  discardImport,
  lookAgain,
  planImport,
  reopenColumns,
  settleColumns,
  takeSheet,
} from "./import-plan";
import { importRegister } from "./import-run";
import { undoImport } from "./import-undo";
import { takeInspection } from "./inspection";
import { changeInstrument, changeInstrumentInput, restoreInstrument, retireInstrument } from "./instrument";
import { createMember, invite } from "./invitation";
import { addKeepership, correctKeeper, correctKeepership, eraseKeeper, removeKeepership } from "./keeper";
import { mergeCars } from "./merge";
import { decideNumber, setAside, takeUp } from "./number";
import { addPart, addPartInput, changePart, changePartInput, withdrawPart } from "./part";
import { blankSheet, printSheets } from "./printed-sheet";
import { choosePublicExtract } from "./public-extract";
import { addRuleSet } from "./rule-set";
import {
  copyRuleSet,
  discardRuleSet,
  makeRuleSetCurrent,
  putCheck,
  putCheckInput,
  putClass,
  putLimit,
  putLimitInput,
  removeRow,
} from "./rule-set-draft";
import { addMarque, addSeries, addSeriesForm, changeSeries, changeSeriesInput, foundSeries } from "./series";
import { takeForm } from "./sheet-form";
import { createSignIn } from "./sign-in";
import { addSpecification, makeCurrent } from "./specification";
import { discardDraft, putEntry, putEntryInput, removeEntry, startDraft } from "./specification-draft";
import { importSpecification } from "./specification-table";
import { addStatus, correctStatus, removeStatus } from "./status";
import { decideInput, decideSubmission } from "./submission-decision";

let world: World;

beforeAll(async () => {
  world = await openWorld();
}, 120_000);
afterAll(() => world?.close());

const roles: readonly Role[] = ["registrar", "owner", "scrutineer", "fleetManager"];
const listed = { assembly: "body", place: "Windscreen", name: "Windscreen", kind: "works" };
const keepers: readonly Role[] = ["registrar", "fleetManager"];
const desk: readonly Role[] = ["registrar", "scrutineer", "fleetManager"];

interface UseCase {
  readonly may: readonly Role[];
  readonly call: (ctx: Context) => Promise<unknown>;
}

const series = {
  slug: "mark-2",
  name: "Mark 2",
  ordinal: 2,
  numberPrefix: "M2-",
  numberDigits: 3,
  firstSerial: 1,
  lastSerial: 9,
  numberSuffixes: [],
  builtFrom: "1974-01-01",
  builtTo: "1975-01-01",
  options: [],
};

const noFiles = {
  has: async () => false,
  open: async () => Promise.reject(new Error("there is no file")),
  keep: async () => undefined,
};
const nothing = "019ab000-0000-7000-8000-000000000000";
const plannedEvent = { name: "D", on: "2031-05-01", venue: "V", ruleSet: nothing };
const entered = {
  event: "none",
  number: "1",
  car: "",
  describedAs: "x",
  driver: "",
  group: "",
  eventClass: "",
} as const;
const rules = { ruleSet: "none", version: 1, revision: 1 };
const edit = { car: "M1-001", version: 1, opened: {}, openedAt: 0, reason: "" };
const known = { source: "", newSource: "", newSourceKind: "other", locus: "", trust: "unknown" } as const;
const span = { from: "", to: "", ...known };
const mark = { ...edit, ...span, kind: "engine", number: "1", standing: "accepted" } as const;
const status = { ...edit, ...span, status: "inUse" } as const;
const note = { ...edit, ...known, on: "", text: "seen" };
const person = { name: "X", address: "", email: "", phone: "", membership: "" };

/** Changes of a car's record, on a car that is not there. */
const recordUseCases: Readonly<Record<string, UseCase["call"]>> = {
  addCar: (ctx) => {
    const filed = { chassis: "M1-119", series: "", another: "no", status: "unknown" } as const;
    const texts = {
      built: "",
      firstRegistered: "",
      engine: "",
      registration: "",
      since: "",
      remarks: "",
      reason: "",
    };
    return addCar(ctx, { ...filed, ...known, ...texts });
  },
  correctCar: (ctx) => correctCar(ctx, { ...edit, built: "", firstRegistered: "", remarks: "" }),
  fileCar: (ctx) => fileCar(ctx, { ...edit, chassis: "M1-1", series: "", another: "no" }),
  setOptions: (ctx) => setOptions(ctx, { ...edit, options: [], others: "" }),
  addIdentity: (ctx) => addIdentity(ctx, mark),
  correctIdentity: (ctx) => correctIdentity(ctx, { ...mark, id: nothing }),
  removeIdentity: (ctx) => removeIdentity(ctx, { ...edit, id: nothing }),
  addStatus: (ctx) => addStatus(ctx, status),
  correctStatus: (ctx) => correctStatus(ctx, { ...status, id: nothing }),
  removeStatus: (ctx) => removeStatus(ctx, { ...edit, id: nothing }),
  setAsBuilt: (ctx) =>
    setAsBuilt(ctx, { ...edit, ...known, characteristic: "x", whole: "", left: "", right: "" }),
  addNote: (ctx) => addNote(ctx, note),
  correctNote: (ctx) => correctNote(ctx, { ...note, id: nothing }),
  removeNote: (ctx) => removeNote(ctx, { ...edit, id: nothing }),
  addKeepership: (ctx) => addKeepership(ctx, { ...edit, ...span, ...person, keeper: "", together: "no" }),
  correctKeepership: (ctx) => correctKeepership(ctx, { ...edit, ...span, id: nothing }),
  removeKeepership: (ctx) => removeKeepership(ctx, { ...edit, id: nothing }),
  correctKeeper: (ctx) => correctKeeper(ctx, { ...edit, ...person, keeper: nothing }),
  setAside: (ctx) => setAside(ctx, { finding: "none", reason: "known" }),
  takeUp: (ctx) => takeUp(ctx, { id: nothing }),
  decideNumber: (ctx) => {
    const about = { kind: "chassis", number: "M1-001", outcome: "undecided" } as const;
    return decideNumber(ctx, { ...about, holder: "", reason: "so", standing: "" });
  },
  mergeCars: (ctx) =>
    mergeCars(ctx, { into: "M1-001", from: "M1-002", intoVersion: 1, fromVersion: 1, reason: "" }),
  eraseKeeper: (ctx) => eraseKeeper(ctx, { keeper: nothing, reason: "" }),
};

/** A draft there is none of: what is asked first is the role. */
const draft = { series: "mark-1", version: 9, revision: 1 } as const;
const entry = "01900000-0000-7000-8000-000000000001";
const lamps = { label: "Lamps", assembly: "body", kind: "date", help: "Lamps." } as const;
const seriesTexts = {
  name: "Mark 3",
  numberPrefix: "M3-",
  numberDigits: 3,
  firstSerial: 1,
  lastSerial: 9,
  builtFrom: "1974",
  builtTo: "1975",
} as const;

/** What each use case that writes may be called by, and a call of it. */
const useCases: Readonly<Record<string, UseCase>> = {
  ...Object.fromEntries(Object.entries(recordUseCases).map(([name, call]) => [name, { may: keepers, call }])),
  importRegister: {
    may: keepers,
    call: async (ctx) =>
      importRegister(ctx, {
        file: "a.csv",
        bytes: new TextEncoder().encode("Chassis\nM1-001"),
        book: await bookOf(ctx),
        asOf: ctx.today,
        dryRun: false,
      }),
  },
  addMarque: { may: keepers, call: (ctx) => addMarque(ctx, { slug: "other", name: "Other" }) },
  addSeries: { may: keepers, call: (ctx) => addSeries(ctx, { ...series, marqueId: ctx.club.id }) },
  addSpecification: {
    may: keepers,
    call: async (ctx) =>
      addSpecification(ctx, {
        seriesId: world.ours.seriesId,
        source: { title: "Manual", kind: "publication" },
        lines: [],
        book: await bookOf(ctx),
      }),
  },
  foundSeries: {
    may: keepers,
    call: (ctx) => foundSeries(ctx, addSeriesForm.parse({ ...seriesTexts, marque: "none" })),
  },
  changeSeries: {
    may: keepers,
    call: (ctx) => changeSeries(ctx, changeSeriesInput.parse({ ...seriesTexts, series: "none", version: 0 })),
  },
  makeCurrent: {
    may: keepers,
    call: (ctx) => makeCurrent(ctx, { ...draft, current: 1, reason: "tried" }),
  },
  startDraft: { may: keepers, call: (ctx) => startDraft(ctx, { series: "none", from: "empty" }) },
  putEntry: {
    may: keepers,
    call: (ctx) => putEntry(ctx, putEntryInput.parse({ ...draft, characteristic: "front.camber" })),
  },
  removeEntry: { may: keepers, call: (ctx) => removeEntry(ctx, { ...draft, entry, opened: {} }) },
  discardDraft: { may: keepers, call: (ctx) => discardDraft(ctx, { ...draft, reason: "" }) },
  importSpecification: {
    may: keepers,
    call: (ctx) => {
      const bytes = new TextEncoder().encode("Characteristic\nfront.camber");
      return importSpecification(ctx, { ...draft, mode: "merge", dryRun: true, file: "a.csv", bytes });
    },
  },
  addCharacteristic: {
    may: keepers,
    call: (ctx) => addCharacteristic(ctx, addCharacteristicInput.parse(lamps)),
  },
  changeCharacteristic: {
    may: keepers,
    call: (ctx) =>
      changeCharacteristic(ctx, changeCharacteristicInput.parse({ ...lamps, key: "club.none", version: 0 })),
  },
  planImport: {
    may: keepers,
    call: (ctx) =>
      planImport(ctx, {
        file: "a.csv",
        sha256: "0".repeat(64),
        bytes: 1,
        table: { headings: ["Chassis"], head: 1, above: [], rows: [], kind: "csv" },
      }),
  },
  takeSheet: {
    may: keepers,
    call: (ctx) =>
      takeSheet(ctx, nothing, { headings: ["Chassis"], head: 1, above: [], rows: [], kind: "csv" }),
  },
  settleColumns: {
    may: keepers,
    call: (ctx) => settleColumns(ctx, { run: nothing, asOf: ctx.today, columns: [] }),
  },
  lookAgain: { may: keepers, call: (ctx) => lookAgain(ctx, nothing) },
  reopenColumns: { may: keepers, call: (ctx) => reopenColumns(ctx, nothing) },
  discardImport: { may: keepers, call: (ctx) => discardImport(ctx, nothing) },
  beginImport: { may: keepers, call: (ctx) => beginImport(ctx, nothing) },
  undoImport: { may: keepers, call: (ctx) => undoImport(ctx, nothing) },
  prepareArchive: {
    may: keepers,
    call: (ctx) => prepareArchive(ctx, { database: world.database, personalData: false, evidence: noFiles }),
  },
  choosePublicExtract: {
    may: keepers,
    call: (ctx) =>
      choosePublicExtract(ctx, {
        version: 0,
        open: "no",
        parts: [],
        characteristics: [],
        series: [],
        lead: "",
      }),
  },
  addPart: { may: keepers, call: (ctx) => addPart(ctx, addPartInput.parse(listed)) },
  changePart: {
    may: keepers,
    call: (ctx) => changePart(ctx, changePartInput.parse({ ...listed, part: "none", version: 1 })),
  },
  withdrawPart: { may: keepers, call: (ctx) => withdrawPart(ctx, { part: "none", reason: "gone" }) },
  changeInstrument: {
    may: desk,
    call: (ctx) =>
      changeInstrument(
        ctx,
        changeInstrumentInput.parse({
          ...{ instrument: "none", version: 1, label: "Gauge", dimension: "angle", resolution: "5'" },
        }),
      ),
  },
  retireInstrument: {
    may: desk,
    call: (ctx) => retireInstrument(ctx, { instrument: "none", version: 1, reason: "lost" }),
  },
  restoreInstrument: {
    may: desk,
    call: (ctx) => restoreInstrument(ctx, { instrument: "none", version: 1, reason: "found" }),
  },
  addRuleSet: {
    may: desk,
    call: (ctx) => addRuleSet(ctx, { slug: "house", name: "House", edition: "1", checks: [], classes: [] }),
  },
  addEvent: {
    may: desk,
    call: (ctx) => {
      const ruleSetId = ctx.club.id;
      return addEvent(ctx, { slug: "d", name: "D", on: ctx.today, venue: "V", ruleSetId });
    },
  },
  addEntries: { may: desk, call: (ctx) => addEntries(ctx, ctx.club.id, []) },
  takeEntryList: { may: desk, call: (ctx) => takeEntryList(ctx, { event: "none", text: "", choices: {} }) },
  planEvent: { may: desk, call: (ctx) => planEvent(ctx, { ...plannedEvent, slug: "" }) },
  changeEvent: {
    may: desk,
    call: (ctx) => changeEvent(ctx, { ...plannedEvent, event: "none", version: 1, opened: {} }),
  },
  enterCar: { may: desk, call: (ctx) => enterCar(ctx, entered) },
  changeEntry: {
    may: desk,
    call: (ctx) => changeEntry(ctx, { ...entered, entry: nothing, withdrawn: "no", version: 1, opened: {} }),
  },
  copyRuleSet: {
    may: desk,
    call: (ctx) => copyRuleSet(ctx, { ruleSet: "none", version: 1, edition: "2027" }),
  },
  putCheck: {
    may: desk,
    call: (ctx) =>
      putCheck(
        ctx,
        putCheckInput.parse({
          ...rules,
          code: "x",
          station: "front",
          assembly: "body",
          text: "Look.",
          criterion: "seen",
          condition: { op: "always" },
          sourceTitle: "House",
        }),
      ),
  },
  putClass: {
    may: desk,
    call: (ctx) => putClass(ctx, { ...rules, was: "", code: "X", name: "X", condition: { op: "always" } }),
  },
  putLimit: {
    may: desk,
    call: (ctx) =>
      putLimit(ctx, putLimitInput.parse({ ...rules, characteristic: "front.camber", sourceTitle: "House" })),
  },
  removeRow: { may: desk, call: (ctx) => removeRow(ctx, { ...rules, kind: "check", row: "x" }) },
  makeRuleSetCurrent: { may: desk, call: (ctx) => makeRuleSetCurrent(ctx, rules) },
  discardRuleSet: { may: desk, call: (ctx) => discardRuleSet(ctx, rules) },
  printSheets: {
    may: desk,
    call: async (ctx) => printSheets(ctx, { event: "none", book: await bookOf(ctx) }),
  },
  blankSheet: {
    may: desk,
    call: async (ctx) => blankSheet(ctx, { event: "none", book: await bookOf(ctx) }),
  },
  takeForm: { may: desk, call: (ctx) => takeForm(ctx, { event: "none", file: "x.pdf", sheets: [] }) },
  takeInspection: {
    may: desk,
    call: (ctx) =>
      takeInspection(ctx, { event: "none", deviceNow: ctx.now.toISOString(), findings: [], decisions: [] }),
  },
  invite: {
    may: keepers,
    call: (ctx) => invite(ctx, { email: "x@example.test", roles: ["owner"] }),
  },
  decideSubmission: {
    may: keepers,
    call: (ctx) =>
      decideSubmission(ctx, decideInput.parse({ id: nothing, version: 1, key: nothing, decision: "accept" })),
  },
  createMember: {
    may: ["registrar"],
    call: (ctx) => {
      const signIn = createSignIn(world.database, { secret: "s".repeat(32), baseUrl: "http://localhost" });
      const person = { name: "X", email: "made@example.test", password: "a long password" };
      return createMember(ctx, signIn, { ...person, roles: ["owner"] });
    },
  },
};

/** Calls a use case as a member with some roles; its work is not kept. */
async function callAs(name: string, given: readonly Role[]): Promise<unknown> {
  const undone = new Error("not kept");
  try {
    await openOperator(world.database, "ours", async (ctx) => {
      await useCases[name]?.call({ ...ctx, actor: { ...ctx.actor, roles: given } });
      throw undone;
    });
  } catch (error) {
    return error;
  }
  return undefined;
}

const pairs = Object.entries(useCases).flatMap(([name, { may }]) =>
  roles.map((role) => [name, role, may] as const),
);

describe("a use case that writes", () => {
  test.each(pairs.filter(([, role, may]) => !may.includes(role)))(
    "%s is refused to a member who is only %s",
    async (name, role, may) => {
      const error = await callAs(name, [role]);
      expect(error).toBeInstanceOf(Refusal);
      expect(error).toMatchObject({ code: "ROLE_NEEDED", details: { has: [role] } });
      const { needed } = (error as Refusal<"ROLE_NEEDED">).details;
      expect([...needed].sort()).toEqual([...may].sort());
    },
  );

  test.each(pairs.filter(([, role, may]) => may.includes(role)))(
    "%s is not refused to a %s for want of a role",
    async (name, role) => {
      const error = await callAs(name, [role]);
      expect(error instanceof Refusal ? error.code : "").not.toBe("ROLE_NEEDED");
    },
  );

  test("refuses a member without any role", async () => {
    for (const name of Object.keys(useCases)) {
      expect(await callAs(name, [])).toMatchObject({ code: "ROLE_NEEDED" });
    }
  });

  test("is in the table above, if it takes a context at all", () => {
    // Called inside another use case (making sheets keeps nothing), or open to whoever holds a link; never from an edge.
    const exempt = ["writeJournal", "rebuildCurrentValues", "rebuildAllCurrentValues", "acceptInvitation"];
    exempt.push(
      "editCar",
      "provenanceOf",
      "addCurrentValues",
      "writeCars",
      "keepMapping",
      "unneeded",
      "rowsPart",
      "makeSheets",
      "hearOf",
      "putInOrder",
      "recordReadings",
      "currentValuesOf",
      "refreshSearchIndex",
    );
    // Without a context of a member: run for whoever began it, or by the command line, on files alone.
    exempt.push(
      "lookThrough",
      "carryOn",
      "importInChunks",
      "keepFile",
      "dropFile",
      "packFiles",
      "prepareBackup",
      "rebuildClub",
      "rebuildOutdatedClubs",
      "refreshWholeSearchIndex",
      "refreshTallies",
      "forgetTallies",
    );
    // By the car and the piece, not by role alone: evidence/evidence.db.test.ts, policy.
    exempt.push("correctEvidence", "turnEvidence", "withdrawEvidence", "restoreEvidence");
    exempt.push("linkEvidence", "unlinkEvidence");
    // For every member, over his own: filter/*.db.test.ts. A list is written by whoever may read it.
    exempt.push("saveFilter", "changeFilter", "removeFilter", "listFile");
    // By the car and who made it, not by role alone: submission/*.db.test.ts. The last is called inside others.
    exempt.push("createDraft", "saveDraft", "stepSubmission", "supersedeSubmission", "moveOn");
    // Made through a draft, which asks who may; reading a pasted table keeps nothing: setting-sheet-form/*.db.test.ts.
    exempt.push("handInSheet", "readPastedSheet");
    // Called inside a step, and by the worker that sends: notice/*.db.test.ts.
    exempt.push("tellOfStep", "takeNotices", "sendNotices", "sendAllNotices");
    // For every member; taken back by whoever made it or keeps the list: part/part.db.test.ts.
    exempt.push("addPartNote", "withdrawPartNote");
    // By whose draft it is: submission-photo/submission-photo.db.test.ts.
    exempt.push("aboutPhoto", "removePhoto");
    // For every member, since whoever measures knows what with: instrument/instrument.db.test.ts.
    exempt.push("addInstrument");
    // For every member, over his own links: calendar-feed/calendar-feed.db.test.ts.
    exempt.push("addFeed", "removeFeed");
    // For anybody, over nothing but himself: keeper/edit.db.test.ts.
    exempt.push("correctOwnContact");
    const files = readdirSync(import.meta.dirname, { recursive: true, encoding: "utf8" }).filter((path) =>
      path.endsWith("write.ts"),
    );
    const written = files.flatMap((path) => {
      const text = readFileSync(`${import.meta.dirname}/${path}`, "utf8");
      return [...text.matchAll(/^export async function (\w+)/gm)].map(([, name = ""]) => name);
    });
    expect(written.filter((name) => !exempt.includes(name)).sort()).toEqual(Object.keys(useCases).sort());
  });
});
