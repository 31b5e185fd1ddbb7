import { isHealthy } from "@trunnion/api";
import { service } from "../../../lib/service";

export const dynamic = "force-dynamic";

/** 200 when the service can answer from its database, else 503. */
export async function GET(): Promise<Response> {
  const ok = await isHealthy(service().database);
  return Response.json({ ok }, { status: ok ? 200 : 503, headers: { "cache-control": "no-store" } });
}
