"use client";

import { Broken } from "../components/shell/broken";

/** Stands in for a page whose drawing failed. What failed is in the server's log under the reference, not here. */
export default function PageError({ error, retry }: { readonly error: unknown; readonly retry: () => void }) {
  return <Broken error={error} retry={retry} />;
}
