import { readFileSync, readdirSync } from "node:fs";
const f = process.argv[2];
const p = JSON.parse(readFileSync(f, "utf8"));
const self = new Map(); const byId = new Map(p.nodes.map((n) => [n.id, n]));
const dt = p.timeDeltas; p.samples.forEach((id, i) => self.set(id, (self.get(id) ?? 0) + dt[i]));
const parent = new Map(); for (const n of p.nodes) for (const c of n.children ?? []) parent.set(c, n.id);
const fn = new Map(); const tot = new Map(); let all = 0;
const name = (n) => `${n.callFrame.functionName || "(anon)"} ${n.callFrame.url.split("/").slice(-2).join("/").slice(-50)}:${n.callFrame.lineNumber}`;
for (const n of p.nodes) { const t = self.get(n.id) ?? 0; all += t; const k = name(n); fn.set(k, (fn.get(k) ?? 0) + t);
  const seen = new Set(); for (let m = n; m; m = byId.get(parent.get(m.id))) { const q = name(m); if (!seen.has(q)) { seen.add(q); tot.set(q, (tot.get(q) ?? 0) + t); } } }
const show = (m, n) => [...m].sort((a, b) => b[1] - a[1]).slice(0, n).map(([k, t]) => `${(t / 1000).toFixed(0).padStart(7)} ms ${(t / all * 100).toFixed(1).padStart(5)}% ${k}`).join("\n");
console.log("total", (all / 1000).toFixed(0)); console.log("SELF\n" + show(fn, 25)); console.log("TOTAL\n" + show(tot, 45));
