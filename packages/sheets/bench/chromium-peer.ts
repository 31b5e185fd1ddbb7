import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import type { SheetModel } from "@trunnion/register";

/** The machine's own browser, or the packaged one if the end-to-end tests have unpacked it; undefined without. */
function browser(): string | undefined {
  const own = ["/usr/bin/chromium", "/usr/bin/chromium-browser"].find(existsSync);
  if (own !== undefined) return own;
  const modules = dirname(dirname(createRequire(import.meta.url).resolve("pdf-lib/package.json")));
  const cache = join(modules, ".cache", "trunnion");
  const unpacked = existsSync(cache) ? readdirSync(cache).filter((name) => name.startsWith("chromium-")) : [];
  return unpacked.map((name) => join(cache, name, "chromium")).find(existsSync);
}

const escaped = (text: string) => text.replace(/[&<>]/g, (sign) => `&#${sign.charCodeAt(0)};`);

function sheetHtml({ entry, car, event, deviations, settings, stations, cautions }: SheetModel): string {
  const boxes = "<i></i><i></i><i></i><i></i>";
  const checks = stations.map(({ label, checks: all }) => {
    const rows = all.map(
      ({ short, why, special }) =>
        `<tr><td class=b>${boxes}<td>${special ? "<b>" : ""}${escaped(short)}</b> ${special ? escaped(why) : ""}`,
    );
    return `<h3>${escaped(label)}</h3><table>${rows.join("")}</table>`;
  });
  const differ = deviations.map(
    ({ label, actual, specified, verdictText }) =>
      `<tr><td><b>${escaped(label)}</b><td>${escaped(actual)}<td>${escaped(specified)}<td>${escaped(verdictText)}`,
  );
  const set = settings.map(
    ({ label, limits, left, right }) =>
      `<tr><td><b>${escaped(label)}</b><td>${escaped(limits)}<td>${escaped(left?.text ?? "")}<td>${escaped(right?.text ?? "")}`,
  );
  return `<section><h1>${escaped(entry.runningNumber)} ${escaped(event.name)}</h1>
<p>${escaped(car.chassis)} ${escaped(car.series)} ${escaped(entry.driver)} ${escaped(event.on)} ${escaped(event.venue)}</p>
<p><b>${escaped(cautions.join(" "))}</b></p><h2>What is different about this car</h2><table>${differ.join("")}</table>
<h2>Settings against limits</h2><table>${set.join("")}</table><h2>Checks</h2><div class=c>${checks.join("")}</div>
<p>Result: pass, pass with advice, refused. Scrutineer, driver, time</p></section>`;
}

const style = `@page{size:A4;margin:8mm}body{font:8.5pt sans-serif}section{break-after:page}.c{columns:2}table{width:100%;
border-collapse:collapse}td{border-bottom:.3pt solid;padding:1pt}.b{width:44pt;white-space:nowrap}
i{display:inline-block;width:9pt;height:9pt;border:.6pt solid}h1{font-size:20pt;margin:0}h2,h3{margin:2pt 0}`;

function printed(binary: string, html: string): number {
  const folder = mkdtempSync(join(tmpdir(), "trunnion-bench-"));
  try {
    const page = join(folder, "sheets.html");
    writeFileSync(page, `<meta charset=utf-8><style>${style}</style>${html}`);
    const start = performance.now();
    execFileSync(
      binary,
      [
        ...[
          "--headless",
          "--no-sandbox",
          "--disable-gpu",
          "--disable-background-networking",
          "--no-first-run",
        ],
        ...["--disable-component-update", "--disable-sync", `--user-data-dir=${join(folder, "profile")}`],
        ...["--no-pdf-header-footer", `--print-to-pdf=${join(folder, "sheets.pdf")}`, `file://${page}`],
      ],
      { stdio: "ignore", timeout: 300_000 },
    );
    return performance.now() - start;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Milliseconds a browser takes to print the same content, less its start with an empty page; undefined without one. */
export function chromiumPrint(models: readonly SheetModel[]): number | undefined {
  const binary = browser();
  if (binary === undefined) return undefined;
  const empty = printed(binary, "");
  return Math.max(0, printed(binary, models.map(sheetHtml).join("")) - empty);
}
