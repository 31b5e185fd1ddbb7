import type { EventReportModel } from "@trunnion/register";
import type { Drawing } from "../layout/sheet-context";

/** What every part of an event's report draws from. */
export interface ReportContext extends Drawing {
  readonly model: EventReportModel;
}
