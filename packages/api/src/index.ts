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
export { logFault, problemsOf, refusalOf, type ToldRefusal } from "./failure";
export type { FieldErrors } from "./field-error";
export { type Request, requestOf } from "./request";
export { type AppRouter, appRouter, createCaller, type RouterInputs } from "./router";
export { type SheetsInput, sheetsPdf } from "./sheets";
