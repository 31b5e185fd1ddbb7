/// <reference lib="webworker" />
import { CacheFirst, NetworkFirst, Serwist } from "serwist";

declare const self: ServiceWorkerGlobalScope;

const PAGES = "paddock-pages";
const FILES = "paddock-files";
/** Drafts of whoever is signed in, each as the club has it; none of them outlasts signing out. */
const DRAFTS = "draft-pages";

/** Longest wait for the network before the kept page is shown, seconds: a weak signal is worse than none. */
const PATIENCE = 4;

/** Files kept beside those of this page: of other pages, and of builds gone by that a kept page may still ask for. */
const SPARE = 300;

const isPaddock = (url: URL) => /^\/club\/[^/]+\/event\/[^/]+\/paddock$/.test(url.pathname);

const isDraft = (url: URL) => /^\/club\/[^/]+\/submission\/[^/]+$/.test(url.pathname);
const isSignInOrOut = (url: URL) => /^\/(?:api\/)?sign-(?:in|out)$/.test(url.pathname);

const dropDraft = async (page: string) => (await caches.open(DRAFTS)).delete(page, { ignoreVary: true });

/**
 * A draft is kept by its own form and never by being looked at. One that has come over the network makes the kept one
 * old: until its form has kept it anew there is none, rather than one that lacks what was saved since.
 */
const keptByItsForm = {
  cacheWillUpdate: async () => null,
  fetchDidSucceed: async ({ request, response }: { request: Request; response: Response }) => {
    await dropDraft(request.url);
    return response;
  },
};

/** Only the page itself is kept: not the sign-in it may have been sent to. */
const onlyItself = {
  cacheWillUpdate: async ({ response }: { response: Response }) =>
    response.status === 200 && !response.redirected ? response : null,
};

const serwist = new Serwist({
  skipWaiting: true,
  clientsClaim: true,
  runtimeCaching: [
    {
      matcher: ({ request, url, sameOrigin }) => sameOrigin && request.mode === "navigate" && isPaddock(url),
      handler: new NetworkFirst({
        cacheName: PAGES,
        networkTimeoutSeconds: PATIENCE,
        plugins: [onlyItself],
        matchOptions: { ignoreVary: true },
      }),
    },
    {
      matcher: ({ request, url, sameOrigin }) => sameOrigin && request.mode === "navigate" && isDraft(url),
      handler: new NetworkFirst({
        cacheName: DRAFTS,
        networkTimeoutSeconds: 2 * PATIENCE,
        plugins: [keptByItsForm],
        matchOptions: { ignoreVary: true },
      }),
    },
    {
      // Named by their content, so what is kept is what would be sent.
      matcher: ({ url, sameOrigin }) => sameOrigin && url.pathname.startsWith("/_next/static/"),
      handler: new CacheFirst({ cacheName: FILES, matchOptions: { ignoreVary: true } }),
    },
  ],
});
serwist.addEventListeners();

// Whoever signs in or out: what was kept of another's drafts is gone before anything else is shown.
self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (url.origin === self.location.origin && isSignInOrOut(url)) event.waitUntil(caches.delete(DRAFTS));
});

interface Keep {
  readonly page: string;
  readonly files: readonly string[];
}

async function keep({ page, files }: Keep): Promise<boolean> {
  const name = isDraft(new URL(page)) ? DRAFTS : PAGES;
  const [pages, kept] = await Promise.all([caches.open(name), caches.open(FILES)]);
  for (const file of files) if (!(await kept.match(file, { ignoreVary: true }))) await kept.add(file);
  const answer = await fetch(page, { credentials: "same-origin" });
  if (answer.ok && !answer.redirected) await pages.put(page, answer);
  const wanted = new Set(files.map((file) => new URL(file).href));
  const old = (await kept.keys()).filter(({ url }) => !wanted.has(url));
  for (const request of old.slice(0, Math.max(0, old.length - SPARE))) await kept.delete(request);
  return (await pages.match(page, { ignoreVary: true })) !== undefined;
}

self.addEventListener("message", (event) => {
  const { keep: asked, drop } = event.data as { readonly keep?: Keep; readonly drop?: string };
  if (drop !== undefined) event.waitUntil(dropDraft(drop));
  if (!asked) return;
  event.waitUntil(
    keep(asked)
      .catch(() => false)
      .then((done) => event.ports[0]?.postMessage(done)),
  );
});
