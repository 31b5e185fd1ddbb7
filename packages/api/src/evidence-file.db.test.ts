import { mkdtemp, readdir, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { buffer } from "node:stream/consumers";
import { openWorld, type World, type WorldCar, type WorldPerson } from "@trunnion/fixtures";
import { Invalid, Refusal } from "@trunnion/register";
import { createSignIn, openStore, type Store } from "@trunnion/service";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { originalFile, requireMember, smallPicture, takeEvidence } from "./evidence-file";
import type { Request } from "./request";

let world: World;
let folder: string;
let store: Store;
let registrar: WorldPerson;
let stranger: WorldPerson;
let car: WorldCar;

beforeAll(async () => {
  world = await openWorld();
  folder = await mkdtemp(join(tmpdir(), "trunnion-evidence-"));
  store = await openStore({ kind: "folder", folder: join(folder, "store") });
  registrar = await world.person({ roles: ["registrar"] });
  stranger = await world.person({ roles: ["registrar"], club: world.theirs });
  car = await world.car({ chassis: "M1-001" });
}, 180_000);
afterAll(async () => {
  await world?.close();
  await rm(folder, { recursive: true });
});

function asked(person: WorldPerson | null = registrar, club = "ours") {
  const signIn = createSignIn(world.database, { secret: "s".repeat(32), baseUrl: "http://localhost" });
  const request: Request = { database: world.database, signIn, signedIn: person };
  return { request, store, club };
}

/** The smallest PDF that is taken (ISO 32000-2, 7.5): no picture has to be made here. */
const pdf = (said: string) =>
  Buffer.from(`%PDF-1.7\n% ${said}\nxref\n0 0\ntrailer\n<<>>\nstartxref\n0\n%%EOF\n`);

/** One pixel, with a text chunk that says who took it (PNG third edition, W3C). */
const png = Buffer.from(
  "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==",
  "base64",
);

let count = 0;
async function received(name: string, content: Buffer) {
  const path = join(folder, `upload-${++count}`);
  await writeFile(path, content);
  return { name, path };
}

const fields = (more: object = {}) => ({
  for: `car:${car.id}`,
  caption: "",
  taken: "",
  locus: "",
  keepLocation: false,
  ...more,
});

async function kept(): Promise<number> {
  const all = await readdir(join(folder, "store"), { recursive: true }).catch(() => []);
  return all.filter((name) => /[0-9a-f]{64}$/.test(name)).length;
}

async function refusalOf(work: () => Promise<unknown>) {
  const before = { rows: await world.fingerprint(), files: await kept() };
  const caught = await work().then(
    () => undefined,
    (error: unknown) => error,
  );
  expect({ rows: await world.fingerprint(), files: await kept() }).toEqual(before);
  if (caught instanceof Refusal) return caught.code;
  if (caught instanceof Invalid) return caught.problems;
  throw new Error(`no refusal: ${String(caught)}`);
}

describe("taking files in", () => {
  test("keeps them under their hash and hands the very bytes out again, whole and in part", async () => {
    const content = pdf("letter of the works");
    const [piece] = await takeEvidence(asked(), fields(), [await received("../letter.pdf", content)]);
    const id = piece?.evidence ?? "";
    const file = await originalFile(asked(), id, () => undefined);
    expect(file).toMatchObject({ mediaType: "application/pdf", fileName: "letter.pdf", picture: false });
    expect(await buffer(file.body)).toEqual(content);
    const part = await originalFile(asked(), id, (bytes) => ({ first: bytes - 6, last: bytes - 2 }));
    expect((await buffer(part.body)).toString()).toBe("%%EOF");
  });

  test("makes small pictures by their names, and none of a document", async () => {
    const [piece] = await takeEvidence(asked(), fields(), [await received("dot.png", png)]);
    const id = piece?.evidence ?? "";
    for (const name of ["320-0.webp", "1280-3.webp"]) {
      const { bytes } = await smallPicture(asked(), id, name);
      expect(Buffer.from(bytes).toString("latin1", 8, 12)).toBe("WEBP");
    }
    for (const name of ["321-0.webp", "320-4.webp", "320-0.png", "../x", ""]) {
      expect(await refusalOf(() => smallPicture(asked(), id, name))).toBe("EVIDENCE_NOT_FOUND");
    }
    const [letter] = await takeEvidence(asked(), fields(), [await received("a.pdf", pdf("another"))]);
    const none = () => smallPicture(asked(), letter?.evidence ?? "", "320-0.webp");
    expect(await refusalOf(none)).toBe("EVIDENCE_NOT_FOUND");
  });

  test("keeps none where one of them is refused, in the store or on record", async () => {
    const good = await received("good.pdf", pdf("good"));
    const dressed = await received("photo.jpg", Buffer.from("<!DOCTYPE html><script>alert(1)</script>"));
    expect(await refusalOf(() => takeEvidence(asked(), fields(), [good, dressed]))).toBe(
      "EVIDENCE_NO_PICTURE",
    );
  });

  test("looks at what was written before it looks at any file", async () => {
    const dressed = await received("photo.jpg", Buffer.from("no picture"));
    const wrong = await refusalOf(() => takeEvidence(asked(), fields({ taken: "once" }), [dressed]));
    expect(wrong).toMatchObject([{ field: "taken" }]);
    expect(await refusalOf(() => takeEvidence(asked(), fields({ for: "car:1" }), [dressed]))).toMatchObject([
      { field: "for" },
    ]);
    expect(await refusalOf(() => takeEvidence(asked(), fields(), []))).toBe("EVIDENCE_NO_FILE");
  });
});

describe("a club's files", () => {
  test("are for its members alone", async () => {
    const [piece] = await takeEvidence(asked(), fields(), [await received("b.pdf", pdf("ours alone"))]);
    const id = piece?.evidence ?? "";
    for (const [who, code] of [
      [asked(null), "NOT_SIGNED_IN"],
      [asked(stranger), "NOT_A_MEMBER"],
      [asked(stranger, "theirs"), "EVIDENCE_NOT_FOUND"],
    ] as const) {
      expect(await refusalOf(() => originalFile(who, id, () => undefined))).toBe(code);
      expect(await refusalOf(() => smallPicture(who, id, "320-0.webp"))).toBe(code);
    }
    expect(await refusalOf(() => requireMember(asked(stranger)))).toBe("NOT_A_MEMBER");
    await requireMember(asked());
  });

  test("that are on record and not in the store are told as such", async () => {
    const [piece] = await takeEvidence(asked(), fields(), [await received("c.pdf", pdf("lost"))]);
    const file = await originalFile(asked(), piece?.evidence ?? "", () => undefined);
    file.body.destroy();
    await store.club(world.ours.id).delete({ sha256: file.sha256 });
    const lost = () => originalFile(asked(), piece?.evidence ?? "", () => undefined);
    expect(await refusalOf(lost)).toBe("EVIDENCE_FILE_MISSING");
  });
});
