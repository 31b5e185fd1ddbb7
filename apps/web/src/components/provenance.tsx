import { type Known, knownText } from "@trunnion/register";

/** The line under a figure that says how it is known. */
export function Provenance({ known }: { readonly known: Known }) {
  return <p className="text-fine text-soft">{knownText(known)}</p>;
}
