/// <reference lib="webworker" />
import { CacheFirst, NetworkFirst, Serwist } from "serwist";

declare const self: ServiceWorkerGlobalScope;

const PAGES = "paddock-pages";
const FILES = "paddock-files";

/** Longest wait for the network before the kept page is shown, seconds: a weak signal is worse than none. */
const PATIENCE = 4;

/** Files kept beside those of this page: of other pages, and of builds gone by that a kept page may still ask for. */
const SPARE = 300;

const isPaddock = (url: URL) => /^\/club\/[^/]+\/event\/[^/]+\/paddock$/.test(url.pathname);

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
      // Named by their content, so what is kept is what would be sent.
      matcher: ({ url, sameOrigin }) => sameOrigin && url.pathname.startsWith("/_next/static/"),
      handler: new CacheFirst({ cacheName: FILES, matchOptions: { ignoreVary: true } }),
    },
  ],
});
serwist.addEventListeners();

interface Keep {
  readonly page: string;
  readonly files: readonly string[];
}

async function keep({ page, files }: Keep): Promise<boolean> {
  const [pages, kept] = await Promise.all([caches.open(PAGES), caches.open(FILES)]);
  for (const file of files) if (!(await kept.match(file, { ignoreVary: true }))) await kept.add(file);
  const answer = await fetch(page, { credentials: "same-origin" });
  if (answer.ok && !answer.redirected) await pages.put(page, answer);
  const wanted = new Set(files.map((file) => new URL(file).href));
  const old = (await kept.keys()).filter(({ url }) => !wanted.has(url));
  for (const request of old.slice(0, Math.max(0, old.length - SPARE))) await kept.delete(request);
  return (await pages.match(page, { ignoreVary: true })) !== undefined;
}

self.addEventListener("message", (event) => {
  const { keep: asked } = event.data as { readonly keep?: Keep };
  if (!asked) return;
  event.waitUntil(
    keep(asked)
      .catch(() => false)
      .then((done) => event.ports[0]?.postMessage(done)),
  );
});
