import { evidenceLimits, quotedFileName, type RefusalText, refused, sayRefusal } from "@trunnion/register";

/** How far one file is. */
export type UploadState =
  | { readonly at: "waiting" }
  | { readonly at: "going"; readonly part: number }
  | { readonly at: "kept"; readonly evidence: string; readonly isNew: boolean }
  | { readonly at: "refused"; readonly text: RefusalText };

const lost: RefusalText = {
  what: "The connection broke off.",
  remedy: "This file was not kept. Send it again when there is a signal.",
};

/** What the sender's own machine can see: sparing a paddock's network a file that will be refused. */
export function refusedBeforehand(file: File): RefusalText | undefined {
  const limit = evidenceLimits.fileBytes;
  if (file.size <= limit) return undefined;
  const details = { file: quotedFileName(file.name), bytes: file.size, limit };
  return sayRefusal(refused("EVIDENCE_TOO_LARGE", details));
}

interface Answer {
  readonly added?: readonly { readonly evidence: string; readonly isNew: boolean }[];
  readonly refusal?: RefusalText;
}

function outcomeOf(text: string): UploadState {
  try {
    const { added, refusal } = JSON.parse(text) as Answer;
    const [piece] = added ?? [];
    if (piece) return { at: "kept", ...piece };
    return { at: "refused", text: refusal ?? lost };
  } catch {
    return { at: "refused", text: lost };
  }
}

/** Sends one file with what the form says of all; tells on the way how far it is. */
export function sendFile(
  action: string,
  { form, file }: { readonly form: FormData; readonly file: File },
  tell: (state: UploadState) => void,
): Promise<UploadState> {
  return new Promise((resolve) => {
    const body = new FormData();
    for (const [name, value] of form) if (typeof value === "string") body.append(name, value);
    body.append("file", file, file.name);
    const request = new XMLHttpRequest();
    request.open("POST", action);
    request.setRequestHeader("accept", "application/json");
    request.upload.onprogress = ({ loaded, total }) =>
      tell({ at: "going", part: total > 0 ? loaded / total : 0 });
    request.onload = () => resolve(outcomeOf(request.responseText));
    request.onerror = () => resolve({ at: "refused", text: lost });
    request.send(body);
  });
}
