/** Headers every answer carries, pages and files alike. */
export const headersForEverything: readonly { readonly key: string; readonly value: string }[] = [
  { key: "X-Content-Type-Options", value: "nosniff" },
  { key: "X-Frame-Options", value: "DENY" },
  { key: "Referrer-Policy", value: "same-origin" },
  { key: "Cross-Origin-Opener-Policy", value: "same-origin" },
  { key: "Cross-Origin-Resource-Policy", value: "same-origin" },
  {
    key: "Permissions-Policy",
    value: "camera=(self), geolocation=(), microphone=(), payment=(), usb=(), clipboard-write=(self)",
  },
];

/**
 * The content policy of one page: everything from this server, scripts only with this page's nonce.
 * No `upgrade-insecure-requests`: a club's server in the paddock answers plain HTTP.
 */
export function contentPolicy(nonce: string, { development }: { readonly development: boolean }): string {
  const scripts = [
    "'self'",
    `'nonce-${nonce}'`,
    "'strict-dynamic'",
    ...(development ? ["'unsafe-eval'"] : []),
  ];
  const styles = ["'self'", development ? "'unsafe-inline'" : `'nonce-${nonce}'`];
  return [
    "default-src 'self'",
    `script-src ${scripts.join(" ")}`,
    `style-src ${styles.join(" ")}`,
    "img-src 'self' data: blob:",
    "font-src 'self'",
    `connect-src 'self'${development ? " ws:" : ""}`,
    "worker-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join("; ");
}
