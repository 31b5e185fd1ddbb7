import type { inferRouterInputs } from "@trpc/server";
import { carRouter } from "./routers/car";
import { clubRouter } from "./routers/club";
import { eventRouter } from "./routers/event";
import { invitationRouter } from "./routers/invitation";
import { publicExtractRouter } from "./routers/public-extract";
import { createCallerFactory, router } from "./trpc";

export const appRouter = router({
  car: carRouter,
  club: clubRouter,
  event: eventRouter,
  invitation: invitationRouter,
  publicExtract: publicExtractRouter,
});
export type AppRouter = typeof appRouter;
/** What each procedure takes. */
export type RouterInputs = inferRouterInputs<AppRouter>;

/** Calls procedures on the server, without HTTP. */
export const createCaller = createCallerFactory(appRouter);
