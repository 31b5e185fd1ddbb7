/** Where the worker that answers without a connection is served; its reach is the whole address space. */
const WORKER = "/paddock-worker.js";

const thisPage = () => location.href.split("#")[0] ?? location.href;

/** Lets go of this page as it was kept, where there is a worker that keeps it. */
export function dropPageOffline(): void {
  if ("serviceWorker" in navigator) navigator.serviceWorker.controller?.postMessage({ drop: thisPage() });
}

/** Whether this page will open without a connection. */
export type OfflineState = "no" | "preparing" | "ready";

/**
 * Makes this page open without a connection: the worker keeps the page and every file it has loaded.
 *
 * @returns "no" where the browser keeps nothing, e.g. on plain HTTP from another machine
 */
export async function keepPageOffline(): Promise<OfflineState> {
  if (!("serviceWorker" in navigator)) return "no";
  try {
    await navigator.serviceWorker.register(WORKER, { scope: "/" });
    const { active } = await navigator.serviceWorker.ready;
    if (!active) return "no";
    const loaded = performance
      .getEntriesByType("resource")
      .map(({ name }) => name)
      .filter((name) => new URL(name).pathname.startsWith("/_next/static/"));
    const scripts = [...document.scripts].map(({ src }) => src).filter((src) => src !== "");
    const styles = [...document.querySelectorAll<HTMLLinkElement>("link[rel=stylesheet]")].map(
      ({ href }) => href,
    );
    const files = [...new Set([...loaded, ...scripts, ...styles])];
    return await new Promise<OfflineState>((resolve) => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = ({ data }: MessageEvent<boolean>) => resolve(data ? "ready" : "no");
      active.postMessage({ keep: { page: thisPage(), files } }, [port2]);
    });
  } catch {
    return "no";
  }
}
