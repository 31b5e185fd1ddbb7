import { execFile } from "node:child_process";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import type { APIRequestContext } from "@playwright/test";
import { environment } from "./env";

const repository = join(dirname(fileURLToPath(import.meta.url)), "..");

export interface Invited {
  readonly email: string;
  readonly club: string;
  readonly roles: readonly string[];
}

/** Makes an invitation as whoever holds the machine does, with the command, and tells the path of its link. */
export async function inviteByCommand({ email, club, roles }: Invited): Promise<string> {
  const command = [
    "apps/cli/bin/trunnion.mjs",
    "invite",
    email,
    "--club",
    club,
    "--roles",
    roles.join(","),
    "--json",
  ];
  const { stdout } = await promisify(execFile)(process.execPath, command, {
    cwd: repository,
    env: { ...environment.all, TRUNNION_DATA: environment.data },
  });
  const { path } = JSON.parse(stdout) as { readonly path: string };
  return path;
}

/** Makes an invitation as a registrar or fleet manager, signed in, and tells the path of its link. */
export async function invite(request: APIRequestContext, invited: Invited): Promise<string> {
  const answer = await request.post("/api/trpc/invitation.invite", { data: invited });
  const { result } = (await answer.json()) as { readonly result: { readonly data: string } };
  return `/invitation/${result.data}`;
}
