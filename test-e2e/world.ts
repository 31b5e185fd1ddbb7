import { type APIRequestContext, test as base, expect, type PlaywrightWorkerArgs } from "@playwright/test";
import { Complaints } from "./complaint";
import { environment } from "./env";

/** One of the demo's people; each is in the club named here. */
export interface Person {
  readonly email: string;
  readonly name: string;
  /** As the pages say it. */
  readonly role: string;
  readonly club: string;
  readonly event: string;
  /** Entries of that event: prisma/demo/event.ts. */
  readonly entries: number;
}

/** Everybody's password in the demo: prisma/demo/club.ts. */
export const password = "walk round the car";

const sandvaer = { club: "sandvaer", event: "kvitnes-track-day", entries: 42 } as const;
export const grusvik = { club: "grusvik", event: "season-check", entries: 14 } as const;

export const people = {
  registrar: { email: "registrar@demo.test", name: "Ragnhild Tveitås", role: "registrar", ...sandvaer },
  owner: { email: "owner@demo.test", name: "Óttar Løvfall", role: "owner", ...sandvaer },
  scrutineer: { email: "scrutineer@demo.test", name: "Łucja Skårnes", role: "scrutineer", ...sandvaer },
  fleetManager: { email: "fleet@demo.test", name: "Mårten Ørnhøi", role: "fleet manager", ...grusvik },
} as const satisfies Readonly<Record<string, Person>>;

export type Who = keyof typeof people;

type Playwright = PlaywrightWorkerArgs["playwright"];
type Session = Awaited<ReturnType<APIRequestContext["storageState"]>>;

interface TestFixtures {
  /** Who is signed in when the test begins; nobody when left out. */
  readonly as: Who | undefined;
  /** What browser and server complain of in the course of the test; the test fails on what it did not allow. */
  readonly complaints: Complaints;
  /** Asks the service as somebody, beside whoever sits at the browser. */
  readonly requestAs: (who: Who) => Promise<APIRequestContext>;
}

interface WorkerFixtures {
  /** An address of its own for each who comes: tries to sign in are counted by address. */
  readonly newAddress: () => string;
  readonly sessionOf: (who: Who) => Promise<Session>;
}

async function signIn(playwright: Playwright, who: Who, address: string): Promise<Session> {
  const request = await playwright.request.newContext({
    baseURL: environment.origin,
    extraHTTPHeaders: { "x-forwarded-for": address },
    // Nobody yet: left out, it would be whoever the running test is signed in as.
    storageState: { cookies: [], origins: [] },
  });
  const form = { email: people[who].email, password, next: "/" };
  const answer = await request.post("/api/sign-in", { form, maxRedirects: 0 });
  expect(answer.headers().location, `${who} signs in`).toBe("/");
  const session = await request.storageState();
  await request.dispose();
  return session;
}

export const test = base.extend<TestFixtures, WorkerFixtures>({
  as: [undefined, { option: true }],

  newAddress: [
    async ({ playwright: _ }, use, { workerIndex }) => {
      let last = 0;
      // 198.18.0.0/15 is for tests between networks (RFC 2544, RFC 6890): nobody is really there.
      await use(() => `198.18.${workerIndex % 256}.${++last % 256}`);
    },
    { scope: "worker" },
  ],

  sessionOf: [
    async ({ playwright, newAddress }, use) => {
      const sessions = new Map<Who, Promise<Session>>();
      await use((who) => {
        const session = sessions.get(who) ?? signIn(playwright, who, newAddress());
        sessions.set(who, session);
        return session;
      });
    },
    { scope: "worker" },
  ],

  extraHTTPHeaders: async ({ newAddress }, use) => use({ "x-forwarded-for": newAddress() }),

  storageState: async ({ as, sessionOf }, use) => use(as === undefined ? undefined : await sessionOf(as)),

  requestAs: async ({ playwright, sessionOf }, use) => {
    const contexts: APIRequestContext[] = [];
    await use(async (who) => {
      const { origin } = environment;
      const storageState = await sessionOf(who);
      const request = await playwright.request.newContext({ baseURL: origin, storageState });
      contexts.push(request);
      return request;
    });
    for (const request of contexts) await request.dispose();
  },

  complaints: async ({ playwright: _ }, use) => {
    const complaints = new Complaints();
    await use(complaints);
    expect(complaints.notAllowed(), "complaints of the browser or the server").toEqual([]);
  },

  context: async ({ context, complaints }, use) => {
    complaints.listenTo(context, environment.origin);
    await use(context);
  },
});

export { expect };
