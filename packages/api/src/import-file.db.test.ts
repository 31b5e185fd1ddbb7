import { mkdtemp, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable } from "node:stream";
import { openWorld, type World, type WorldPerson } from "@trunnion/fixtures";
import { Refusal } from "@trunnion/register";
import { createSignIn, importsDone } from "@trunnion/service";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  forgetImport,
  goOnWithImport,
  type ImportRequest,
  importProblemsCsv,
  settleImport,
  takeBackImport,
  takeImportFile,
} from "./import-file";
import { createCaller } from "./router";

let world: World;
let folder: string;
let registrar: WorldPerson;
let owner: WorldPerson;

beforeAll(async () => {
  world = await openWorld();
  folder = await mkdtemp(join(tmpdir(), "trunnion-import-"));
  registrar = await world.person({ roles: ["registrar"] });
  owner = await world.person({ roles: ["owner"] });
}, 180_000);
afterAll(async () => {
  await world?.close();
  await rm(folder, { recursive: true });
});

function asked(person: WorldPerson | null = registrar): ImportRequest {
  const signIn = createSignIn(world.database, { secret: "x".repeat(32), baseUrl: "http://127.0.0.1:1" });
  return { request: { database: world.database, signIn, signedIn: person }, folder, club: "ours" };
}

const view = (run: string) => createCaller(asked().request).import.view({ club: "ours", run });
const send = (text: string, person: WorldPerson | null = registrar) =>
  takeImportFile(asked(person), { file: "cars.csv", stream: Readable.from([Buffer.from(text)]) });
const kept = () => readdir(join(folder, "import", world.ours.id)).catch(() => []);

async function codeOf(work: Promise<unknown>): Promise<string> {
  const error = await work.then(
    () => new Error("nothing was refused"),
    (reason: unknown) => reason,
  );
  if (!(error instanceof Refusal)) throw error;
  return error.code;
}

async function settle(run: string): Promise<void> {
  const { proposals, asOf } = await view(run);
  const columns = proposals.map(({ as, unit = "" }) => ({ as, unit }));
  await settleImport(asked(), { run, asOf, columns });
}

describe("an uploaded list", () => {
  test("is looked through and read in after the answer, and taken back", async () => {
    const run = await send("Chassis;Built\nM1-001;1971\n=1+1;1972\nM1-003;once\n");
    await settle(run);
    await importsDone();
    expect(await view(run)).toMatchObject({ stage: "looked", carsAdded: 1, rowsRefused: 2 });
    await goOnWithImport(asked(), run);
    await importsDone();
    expect(await view(run)).toMatchObject({ status: "done", carsAdded: 1, rowsRefused: 2 });
    expect(await kept()).toEqual([]);
    expect(await takeBackImport(asked(), run)).toMatchObject({ carsRemoved: 1 });
  });

  test("gives its problems as CSV, in which nothing is a formula", async () => {
    const [latest] = await createCaller(asked().request).import.list({ club: "ours" });
    const csv = await importProblemsCsv(asked(), latest?.id ?? "");
    expect(csv.split("\r\n").slice(0, 3)).toEqual([
      '\ufeff"Line","Column","Found","Expected","Taken, but look"',
      `"3","A ""Chassis""","'=1+1","a value, not a formula",""`,
      expect.stringMatching(/^"4","B ""Built""","once","a date such as/),
    ]);
  });

  test("that is forgotten leaves neither run nor file", async () => {
    const run = await send("Chassis\nM1-009\n");
    expect(await kept()).toHaveLength(1);
    await forgetImport(asked(), run);
    expect(await kept()).toEqual([]);
    expect(await codeOf(takeBackImport(asked(), run))).toBe("IMPORT_NOT_FOUND");
  });

  test("that cannot be read leaves nothing in the database and on the disk", async () => {
    const before = await world.fingerprint();
    expect(await codeOf(send("%PDF-1.7"))).toBe("FILE_NOT_A_TABLE");
    expect(await codeOf(send(""))).toBe("FILE_EMPTY");
    expect(await kept()).toEqual([]);
    expect(await world.fingerprint()).toEqual(before);
  });

  test("is taken from nobody who may not, before a byte of it is kept", async () => {
    expect(await codeOf(send("Chassis\nM1-009\n", owner))).toBe("ROLE_NEEDED");
    expect(await codeOf(send("Chassis\nM1-009\n", null))).toBe("NOT_SIGNED_IN");
    expect(await kept()).toEqual([]);
  });
});
