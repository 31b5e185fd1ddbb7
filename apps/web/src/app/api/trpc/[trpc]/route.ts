import { fetchRequestHandler } from "@trpc/server/adapters/fetch";
import { appRouter, logFault, requestOf } from "@trunnion/api";
import { service } from "../../../../lib/service";

/** Largest batch of calls in one request. */
const BATCH = 20;

const handle = (request: Request): Promise<Response> =>
  fetchRequestHandler({
    endpoint: "/api/trpc",
    req: request,
    router: appRouter,
    maxBatchSize: BATCH,
    createContext: () => requestOf(service(), request.headers),
    onError: ({ error, path }) => logFault(error, path ?? "trpc"),
  });

export { handle as GET, handle as POST };
