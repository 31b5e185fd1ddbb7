import type { ReactElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";

/** What the server sends for an element. */
export const markup = (element: ReactElement): string => renderToStaticMarkup(element);

/** What a reader gets: the text without tags and without what is hidden from screen readers. */
export function readText(element: ReactElement): string {
  return markup(element)
    .replace(/<svg[^>]*aria-hidden[^>]*>.*?<\/svg>/gs, "")
    .replace(/<span aria-hidden="true"[^>]*>[^<]*<\/span>/g, "")
    .replace(/<[^>]+>/g, " ")
    .replaceAll("&#x27;", "'")
    .replaceAll("&amp;", "&")
    .replace(/\s+/g, " ")
    .trim();
}

/** Opening tags of one kind. */
export const tags = (html: string, name: string): readonly string[] =>
  html.match(new RegExp(`<${name}[\\s>][^>]*>?`, "g")) ?? [];

/** Value of an attribute of an opening tag. */
export const attribute = (tag: string | undefined, name: string): string | undefined =>
  new RegExp(`\\s${name}="([^"]*)"`, "i").exec(tag ?? "")?.[1];
