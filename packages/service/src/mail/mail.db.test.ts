import { mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { createServer, type Server } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { openWorld, type World, type WorldCar, type WorldPerson } from "@trunnion/fixtures";
import { emptyModification } from "@trunnion/register";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { openMember } from "../gate";
import { listNotices } from "../notice";
import { createDraft, makerStepInput, stepSubmission } from "../submission";
import { decideInput, decideSubmission } from "../submission-decision";
import { MailSettingError, mailSettings } from "./policy";
import { createMailer, sendAllNotices } from "./write";

let world: World;
let registrar: WorldPerson;
let owner: WorldPerson;
let car: WorldCar;
let folder: string;

beforeAll(async () => {
  world = await openWorld();
  registrar = await world.person({ roles: ["registrar"], name: "Ragnhild Tveitås" });
  owner = await world.person({ roles: ["owner"], name: "Óttar Løvfall" });
  folder = await mkdtemp(join(tmpdir(), "trunnion-mail-"));
}, 180_000);
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
  await world?.close();
});

const linkOf = (club: string, id: string) => `http://localhost/club/${club}/submission/${id}`;
const notices = () => world.inClub((db) => db.notice.findMany({ orderBy: { id: "asc" } }));

/** A submission handed in and accepted, which leaves two messages: one to the registrar, one to the owner. */
beforeEach(async () => {
  await world.inClub((db) => db.notice.deleteMany({}));
  car = await world.car({ keeper: { name: "Óttar", membershipId: owner.membershipId } });
  const changes = [
    { characteristic: "front.antiRollBar.diameter", side: "whole", before: "", after: "22 mm" } as const,
  ];
  const content = {
    units: "metric",
    modifications: [{ ...emptyModification, fitted: "2020", changes }],
    sheets: [],
  } as const;
  const mark = await openMember(world.database, owner, "ours", async (ctx) => {
    const draft = await createDraft(ctx, { clientKey: crypto.randomUUID(), car: car.reference, content });
    return stepSubmission(ctx, makerStepInput.parse({ ...draft, key: crypto.randomUUID(), step: "submit" }));
  });
  await openMember(world.database, registrar, "ours", (ctx) =>
    decideSubmission(
      ctx,
      decideInput.parse({ ...mark, key: crypto.randomUUID(), decision: "accept", text: "Schön" }),
    ),
  );
});

describe("without a mail server", () => {
  test("each message is a file that a mail program opens, once, with the address of what it is about", async () => {
    const mailer = createMailer(mailSettings({ url: undefined, from: undefined, folder }));
    expect(await sendAllNotices(world.database, { mailer, linkOf })).toEqual({ sent: 2, failed: 0 });
    expect(await sendAllNotices(world.database, { mailer, linkOf })).toEqual({ sent: 0, failed: 0 });
    const files = await readdir(join(folder, "ours"));
    expect(files).toHaveLength(2);
    const [, accepted] = await notices();
    const text = await readFile(join(folder, "ours", `${accepted?.id}.eml`), "utf8");
    expect(text).toMatch(new RegExp(`^Subject: ${car.chassis}: your change is on the record$`, "m"));
    expect(text).toContain(owner.email);
    expect(text.replace(/=\n/g, "")).toContain(`/club/ours/submission/${accepted?.submissionId}`);
    const shown = await openMember(world.database, owner, "ours", (ctx) => listNotices(ctx));
    expect(shown.map(({ standing }) => standing)).toMatchObject([{ kind: "sent", by: "outbox folder" }]);
  });
});

describe("with a mail server", () => {
  /** Speaks as much of RFC 5321 as a message needs, and keeps what it was given. */
  function listening(): Promise<{ readonly server: Server; readonly url: string; readonly got: string[] }> {
    const got: string[] = [];
    const server = createServer((socket) => {
      let data: string | undefined;
      socket.write("220 here\r\n");
      socket.on("data", (chunk) => {
        const text = chunk.toString();
        if (data !== undefined) {
          data += text;
          if (!data.endsWith("\r\n.\r\n")) return;
          got.push(data);
          data = undefined;
          socket.write("250 kept\r\n");
        } else if (/^DATA/i.test(text)) {
          data = "";
          socket.write("354 go on\r\n");
        } else if (/^QUIT/i.test(text)) socket.end("221 bye\r\n");
        else socket.write("250 well\r\n");
      });
      socket.on("error", () => undefined);
    });
    return new Promise((resolve) => {
      server.listen(0, "127.0.0.1", () => {
        const address = server.address();
        const port = typeof address === "object" && address !== null ? address.port : 0;
        resolve({ server, url: `smtp://127.0.0.1:${port}`, got });
      });
    });
  }

  test("each message is handed over to it", async () => {
    const { server, url, got } = await listening();
    const mailer = createMailer(mailSettings({ url, from: "register@example.test", folder }));
    expect(await sendAllNotices(world.database, { mailer, linkOf })).toEqual({ sent: 2, failed: 0 });
    expect(got).toHaveLength(2);
    expect(got.join("\n")).toContain(`To: =?UTF-8?Q?=C3=93ttar_L=C3=B8vfall?= <${owner.email}>`);
    expect((await notices()).map(({ sentBy }) => sentBy)).toEqual(["e-mail", "e-mail"]);
    server.close();
  });

  test("that does not answer, a message waits, is tried again later, and is given up after six tries", async () => {
    const { server, url } = await listening();
    await new Promise((done) => server.close(done));
    const mailer = createMailer(mailSettings({ url, from: "register@example.test", folder }));
    const soon = () => world.inClub((db) => db.notice.updateMany({ data: { notBefore: new Date(0) } }));
    expect(await sendAllNotices(world.database, { mailer, linkOf })).toEqual({ sent: 0, failed: 2 });
    // Not at once again: the next look passes it over.
    expect(await sendAllNotices(world.database, { mailer, linkOf })).toEqual({ sent: 0, failed: 0 });
    for (let round = 0; round < 5; round++) {
      await soon();
      await sendAllNotices(world.database, { mailer, linkOf });
    }
    const rows = await notices();
    expect(rows.map(({ tries, givenUpAt }) => [tries, givenUpAt === null])).toEqual([
      [6, false],
      [6, false],
    ]);
    expect(rows[0]?.problem).toMatch(/ECONNREFUSED/);
    await soon();
    expect(await sendAllNotices(world.database, { mailer, linkOf })).toEqual({ sent: 0, failed: 0 });
  });

  test.each([
    ["mail.example.test", "a@example.test"],
    ["http://mail.example.test", "a@example.test"],
    ["smtp://mail.example.test", undefined],
    ["smtp://mail.example.test", "nobody"],
  ])("a setting that cannot be meant is refused by name: %s from %s", (url, from) => {
    expect(() => mailSettings({ url, from, folder })).toThrow(MailSettingError);
    expect(() => mailSettings({ url, from, folder })).toThrow(/TRUNNION_SMTP_/);
  });
});
