export { listSeries, type SeriesLine } from "./read";
export { type AddSeriesInput, addMarque, addSeries } from "./write";
