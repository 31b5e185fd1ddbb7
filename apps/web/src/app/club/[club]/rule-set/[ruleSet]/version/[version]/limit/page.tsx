import type { Metadata } from "next";
import { type RowSegments, rowPage } from "../../../../../../../../features/rule-set/row-page";

export const metadata: Metadata = { title: "Rule set: limit" };

export default function Page(segments: RowSegments) {
  return rowPage("limit", segments);
}
