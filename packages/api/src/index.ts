export {
  type AssemblyCounts,
  type CarPage,
  createSignIn,
  Database,
  type EventView,
  type Home,
  isHealthy,
  PASSWORD_MINIMUM,
  type SignIn,
} from "@trunnion/service";
export { logFault, refusalOf, type ToldRefusal } from "./failure";
export { type Request, requestOf } from "./request";
export { type AppRouter, appRouter, createCaller } from "./router";
export { type SheetsInput, sheetsPdf } from "./sheets";
