// Types into the register's search in a real browser, and into a bare field in the same one; prints what it saw as JSON.
// usage: node typing.mjs <club>, with TRUNNION_ORIGIN, TRUNNION_EMAIL and TRUNNION_PASSWORD. Bounded: some fifty keys, twice.
import { chromium } from "@playwright/test";
import { browserEnvironment } from "./browser.mjs";

/** One key after another, as fast as somebody types: 80 words a minute. */
const KEY_MS = 120;
/** What is looked for: a number in pieces, a colour, two words, one mistyped. */
const TYPED = ["G-00000", "cloudberry", "rear polyurethane", "clowdberry"];
const ANSWER_MS = 60_000;

const club = process.argv[2] ?? "";
const { TRUNNION_ORIGIN: origin = "", TRUNNION_EMAIL = "", TRUNNION_PASSWORD = "" } = process.env;

/** Notes every long task and how long each key took until it was painted; shorter ones than a frame are not told. */
function watch() {
  const seen = { tasks: [], keys: [] };
  globalThis.seenWhileTyping = seen;
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) seen.tasks.push(duration);
  }).observe({ type: "longtask" });
  new PerformanceObserver((list) => {
    for (const { name, duration, interactionId } of list.getEntries())
      if (/^key|input/.test(name)) seen.keys.push({ name, duration, interactionId });
  }).observe({ type: "event", durationThreshold: 16 });
}

async function type(page, field, settled) {
  await field.focus();
  let keys = 0;
  let kept = true;
  for (const words of TYPED) {
    await field.selectText();
    await page.keyboard.type(words, { delay: KEY_MS });
    keys += words.length;
    kept &&= (await field.inputValue()) === words;
    await settled(words);
  }
  return { keys, kept };
}

function told({ keys, kept }, { tasks, keys: events }) {
  const perKey = new Map();
  for (const { interactionId, duration } of events)
    if (interactionId > 0) perKey.set(interactionId, Math.max(duration, perKey.get(interactionId) ?? 0));
  // Those of which nothing was told were painted within a frame.
  const times = [...perKey.values(), ...Array(Math.max(0, keys - perKey.size)).fill(16)].sort(
    (a, b) => a - b,
  );
  return {
    keys,
    kept,
    longTasks: tasks.length,
    longestTask: Math.max(0, ...tasks),
    p95: times[Math.ceil(times.length * 0.95) - 1] ?? 0,
    worst: times.at(-1) ?? 0,
  };
}

async function typeInto(context, open) {
  const page = await context.newPage();
  const { field, settled } = await open(page);
  await page.evaluate(watch);
  const typed = await type(page, field, settled);
  const seen = await page.evaluate(() => globalThis.seenWhileTyping);
  const answers = await page.evaluate(() =>
    performance
      .getEntriesByType("resource")
      .filter(({ initiatorType, responseStatus }) => initiatorType === "fetch" && responseStatus === 200)
      .map(({ duration, decodedBodySize, encodedBodySize }) => ({
        duration,
        decodedBodySize,
        encodedBodySize,
      })),
  );
  await page.close();
  return { ...told(typed, seen), answers };
}

async function register(page) {
  await page.goto(`${origin}/club/${club}/car`);
  await page.waitForLoadState("networkidle");
  const field = page.getByRole("searchbox");
  // The list that is shown is that of the words typed last.
  const settled = (words) =>
    page.waitForFunction(
      (wanted) =>
        new URL(location.href).searchParams.get("q") === wanted &&
        document.querySelector(".found")?.getAttribute("aria-busy") === "false",
      words,
      { timeout: ANSWER_MS },
    );
  return { field, settled };
}

async function bare(page) {
  await page.setContent('<!doctype html><input type="search" aria-label="bare">');
  return { field: page.getByRole("searchbox"), settled: async () => undefined };
}

const { TRUNNION_CHROMIUM, ...rest } = await browserEnvironment();
Object.assign(process.env, rest);
const browser = await chromium.launch({
  executablePath: TRUNNION_CHROMIUM,
  args: ["--no-sandbox", "--disable-background-networking", "--disable-component-update", "--no-first-run"],
});
try {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  await page.goto(`${origin}/sign-in`);
  await page.getByLabel("E-mail address").fill(TRUNNION_EMAIL);
  await page.getByLabel("Password").fill(TRUNNION_PASSWORD);
  await page.getByLabel("Password").press("Enter");
  await page.waitForURL((url) => !url.pathname.includes("sign-in"));
  const peer = await typeInto(context, bare);
  const ours = await typeInto(context, register);
  console.log(JSON.stringify({ ours, peer, typed: TYPED }));
} finally {
  await browser.close();
}
