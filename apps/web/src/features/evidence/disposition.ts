/**
 * The header that says what a file is called, and whether it is shown or saved (RFC 6266): once in letters every program
 * knows, once in all (RFC 8187).
 */
export function contentDisposition(kind: "inline" | "attachment", fileName: string): string {
  const plain = fileName
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .replace(/[^\w.() -]/g, "_");
  // What encodeURIComponent leaves and the standard does not: ' ( ) *
  const full = encodeURIComponent(fileName).replace(
    /['()*]/g,
    (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`,
  );
  return `${kind}; filename="${plain}"; filename*=UTF-8''${full}`;
}
