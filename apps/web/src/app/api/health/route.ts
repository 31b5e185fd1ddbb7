import { isHealthy, outdatedClubs } from "@trunnion/api";
import { service } from "../../../lib/service";

export const dynamic = "force-dynamic";

/**
 * 200 when the service can answer from its database, else 503. Of clubs whose current values another version of the
 * program worked out it tells how many, not which: anybody may ask.
 */
export async function GET(): Promise<Response> {
  const ok = await isHealthy(service().database);
  const outdated = ok ? (await outdatedClubs(service().database)).length : undefined;
  return Response.json(
    { ok, outdatedClubs: outdated },
    { status: ok ? 200 : 503, headers: { "cache-control": "no-store" } },
  );
}
