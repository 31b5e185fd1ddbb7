/**
 * Whether a page of ours sent the form: its origin is the very host that was asked. What sends no origin is no browser
 * with a session of ours: those send it with every POST (Fetch standard, "append a request Origin header").
 */
export function isOwnForm({ headers }: Request): boolean {
  const origin = headers.get("origin");
  if (origin === null) return true;
  return URL.canParse(origin) && new URL(origin).host === headers.get("host");
}
