import type { Metadata } from "next";
import { type RowSegments, rowPage } from "../../../../../../../../features/rule-set/row-page";

export const metadata: Metadata = { title: "Rule set: class" };

export default function Page(segments: RowSegments) {
  return rowPage("class", segments);
}
