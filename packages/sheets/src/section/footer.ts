import type { SheetModel } from "@trunnion/register";
import type { ContentWriter } from "../content/content-writer";
import type { Faces } from "../font/face";
import { replacement } from "../font/repertoire";
import type { PageBox } from "../layout/paper";
import { rule, type } from "../layout/style";
import { shorten } from "../text/wrap";

const months = "January February March April May June July August September October November December".split(
  " ",
);

/** An instant in words, in universal time, since the sheet does not know where it is read. */
export function preparedText(instant: Date): string {
  const two = (number: number) => String(number).padStart(2, "0");
  const day = `${instant.getUTCDate()} ${months[instant.getUTCMonth()]} ${instant.getUTCFullYear()}`;
  return `${day}, ${two(instant.getUTCHours())}:${two(instant.getUTCMinutes())} UTC`;
}

export interface FooterFacts {
  readonly model: SheetModel;
  readonly prepared: Date;
  readonly unprintable: number;
  readonly page: number;
  readonly pages: number;
}

/** What ties the page to its record: short hash, layout, time, number, page of pages. */
export function drawFooter(page: ContentWriter, box: PageBox, facts: FooterFacts, faces: Faces): void {
  const { model, prepared, unprintable } = facts;
  const { left, right } = box;
  const line = (y: number, text: string) =>
    page.text({ face: faces.regular, size: type.fine, x: left, y, text });
  page.line([left, 28.5, right, 28.5], { stroke: rule.hair });
  const hash = (model.recordHash.slice(0, 16).match(/.{1,4}/g) ?? []).join(" ");
  const code = model.code === "" ? "" : `Sheet ${model.code} · `;
  const what = `${code}Record ${hash} · layout ${model.layoutVersion} · prepared ${preparedText(prepared)}`;
  line(21.5, shorten(faces.regular, type.fine, `${what} · ${model.club}`, right - left - 130));
  if (unprintable > 0) line(14.2, lostText(unprintable));
  const number = shorten(faces.bold, type.heading, model.entry.runningNumber, 60);
  const text = `No. ${number} · page ${facts.page} of ${facts.pages}`;
  page.text({ face: faces.bold, size: type.heading, x: right, y: 16.5, text, align: "right" });
}

/** Says how many characters could not be printed, and where they stand whole. */
export function lostText(count: number): string {
  const what = count === 1 ? "1 character of this sheet has" : `${count} characters of this sheet have`;
  return `${replacement} ${what} no shape in the sheet's typeface and could not be printed; the record holds the full text.`;
}
