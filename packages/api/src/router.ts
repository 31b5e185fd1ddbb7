import type { inferRouterInputs } from "@trpc/server";
import { carRouter } from "./routers/car";
import { characteristicRouter } from "./routers/characteristic";
import { clubRouter } from "./routers/club";
import { consequenceRouter } from "./routers/consequence";
import { eventRouter } from "./routers/event";
import { evidenceRouter } from "./routers/evidence";
import { exportRouter } from "./routers/export";
import { filterRouter } from "./routers/filter";
import { fleetRouter } from "./routers/fleet";
import { importRouter } from "./routers/import";
import { inspectionRouter } from "./routers/inspection";
import { instrumentRouter } from "./routers/instrument";
import { invitationRouter } from "./routers/invitation";
import { journalRouter } from "./routers/journal";
import { keeperRouter } from "./routers/keeper";
import { numberRouter } from "./routers/number";
import { partRouter } from "./routers/part";
import { publicExtractRouter } from "./routers/public-extract";
import { recordRouter } from "./routers/record";
import { ruleSetRouter } from "./routers/rule-set";
import { seriesRouter } from "./routers/series";
import { settingSheetRouter } from "./routers/setting-sheet";
import { specificationRouter } from "./routers/specification";
import { submissionRouter } from "./routers/submission";
import { timelineRouter } from "./routers/timeline";
import { createCallerFactory, router } from "./trpc";

export const appRouter = router({
  car: carRouter,
  characteristic: characteristicRouter,
  club: clubRouter,
  consequence: consequenceRouter,
  event: eventRouter,
  evidence: evidenceRouter,
  export: exportRouter,
  filter: filterRouter,
  fleet: fleetRouter,
  import: importRouter,
  inspection: inspectionRouter,
  invitation: invitationRouter,
  journal: journalRouter,
  instrument: instrumentRouter,
  part: partRouter,
  publicExtract: publicExtractRouter,
  timeline: timelineRouter,
  ruleSet: ruleSetRouter,
  series: seriesRouter,
  settingSheet: settingSheetRouter,
  specification: specificationRouter,
  submission: submissionRouter,
  keeper: keeperRouter,
  number: numberRouter,
  record: recordRouter,
});
export type AppRouter = typeof appRouter;
/** What each procedure takes. */
export type RouterInputs = inferRouterInputs<AppRouter>;

/** Calls procedures on the server, without HTTP. */
export const createCaller = createCallerFactory(appRouter);
