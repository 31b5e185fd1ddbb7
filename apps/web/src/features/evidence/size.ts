/** A size as people read it: "240 kB", "3.1 MB". */
export function saySize(bytes: number): string {
  if (bytes < 1_000) return `${bytes} B`;
  return bytes < 1_000_000 ? `${Math.round(bytes / 1_000)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
}
