"use client";

import { Broken } from "../components/shell/broken";
import "./globals.css";

/** As `error`, for when the outermost layout itself failed: it brings its own document. */
export default function GlobalError({
  error,
  retry,
}: {
  readonly error: unknown;
  readonly retry: () => void;
}) {
  return (
    <html lang="en-GB">
      <body>
        <title>This page could not be drawn · Trunnion</title>
        <Broken error={error} retry={retry} />
      </body>
    </html>
  );
}
