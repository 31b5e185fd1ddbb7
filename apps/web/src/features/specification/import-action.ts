"use server";
import { logFault, problemsOf, refusalOf } from "@trunnion/api";
import { redirect } from "next/navigation";
import { specificationImportPath, specificationPath } from "../../lib/path";
import { api } from "../../lib/service";
import type { DraftReference } from "./action";
import type { ImportState } from "./import-state";

interface Sent {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** The file chosen now; else the one that was looked at before. */
async function fileOf(data: FormData): Promise<Sent | undefined> {
  const chosen = data.get("table");
  if (chosen instanceof File && chosen.size > 0) {
    return { name: chosen.name, bytes: new Uint8Array(await chosen.arrayBuffer()) };
  }
  const content = String(data.get("content") ?? "");
  if (content === "") return undefined;
  return { name: String(data.get("name") ?? "table"), bytes: new Uint8Array(Buffer.from(content, "base64")) };
}

const noFile = { what: "No file was chosen.", remedy: "Choose a table: CSV, XLSX or ODS." };

/** Looks at a table, or reads it into a draft, as the button says. */
export async function importSpecification(
  club: string,
  draft: DraftReference,
  _before: ImportState,
  data: FormData,
): Promise<ImportState> {
  const mode = data.get("mode") === "replace" ? "replace" : "merge";
  const dryRun = data.get("step") !== "read";
  const file = await fileOf(data);
  if (!file) return { mode, refusal: noFile };
  const kept = { name: file.name, content: Buffer.from(file.bytes).toString("base64") };
  try {
    const report = await (await api()).specification.import({
      club,
      ...draft,
      revision: Number(data.get("revision")),
      file: file.name.slice(0, 200),
      bytes: file.bytes,
      mode,
      dryRun,
    });
    if (!report.written) return { mode, report, file: kept };
  } catch (error) {
    const refusal = refusalOf(error);
    if (refusal) return { mode, refusal: refusal.text };
    if (problemsOf(error))
      return { mode, refusal: { what: "The form cannot be read.", remedy: "Open the page again." } };
    logFault(error, specificationImportPath(club, draft.series, draft.version));
    throw error;
  }
  redirect(specificationPath(club, draft.series, draft.version));
}
