import { hatches } from "../components/plot/hatch";
import { attribute, tags } from "./markup";

type Hatch = (typeof hatches)[number];

const plain = (html: string) =>
  html
    .replace(/<svg.*?<\/svg>/gs, "")
    .replace(/<[^>]+>/g, " ")
    .replaceAll("&#x27;", "'")
    .replace(/\s+/g, " ")
    .trim();

/** A table of a page by a part of its caption: headings and rows, as text. */
export function tableOf(html: string, caption: string) {
  const table = (html.match(/<table.*?<\/table>/gs) ?? []).find((one) =>
    plain(/<caption.*?<\/caption>/s.exec(one)?.[0] ?? "").includes(caption),
  );
  if (table === undefined) throw new Error(`no table "${caption}"`);
  const cells = (row: string) => (row.match(/<t[hd][\s>].*?<\/t[hd]>/gs) ?? []).map(plain);
  const [head = [], ...rows] = (table.match(/<tr[\s>].*?<\/tr>/gs) ?? []).map(cells);
  return { head, rows };
}

/** What fills a drawn area: told by its pattern, else by its class. */
function hatchOf(tag: string): Hatch {
  const pattern = /-([a-z]+)\)$/.exec(attribute(tag, "fill") ?? "")?.[1];
  const named = hatches.find((hatch) => hatch === pattern);
  if (named !== undefined) return named;
  const classes = attribute(tag, "class") ?? "";
  return classes.includes("fill-red") ? "mark" : classes.includes("fill-soft") ? "ink" : "open";
}

/** What each filling stands for, as the legend says. */
export function legendOf(html: string): ReadonlyMap<Hatch, string> {
  const lines = html.match(/<li class="inline-flex[^>]*><svg.*?<\/li>/gs) ?? [];
  return new Map(
    lines.map((line) => {
      const rect = tags(line, "rect").find((tag) => attribute(tag, "width") === "25");
      return [hatchOf(rect ?? ""), plain(line).replace(/ ?, [\d,]+$/, "")] as const;
    }),
  );
}

/** One drawn area: what it stands for, how much it counts, and how large it is. */
export interface DrawnPart {
  readonly label: string | undefined;
  readonly count: number;
  readonly year: number;
  readonly width: number;
  readonly height: number;
}

/** Every counted area of a drawing in order, named by the legend of the page. */
export function drawnParts(html: string, legend: ReadonlyMap<Hatch, string>): readonly DrawnPart[] {
  return tags(html, "rect")
    .filter((tag) => attribute(tag, "data-count") !== undefined)
    .map((tag) => ({
      label: legend.get(hatchOf(tag)),
      count: Number(attribute(tag, "data-count")),
      year: Number(attribute(tag, "data-year")),
      width: Number(attribute(tag, "width")),
      height: Number(attribute(tag, "height")),
    }));
}
