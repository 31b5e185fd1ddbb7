export { type CarTimeline, carTimeline, type EngineData, type TimelineInput } from "./read";
