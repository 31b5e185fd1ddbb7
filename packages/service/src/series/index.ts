export {
  type AddMarqueInput,
  type AddSeriesForm,
  addMarqueInput,
  addSeriesForm,
  fallsOutside,
  seriesFacts,
} from "./policy";
export {
  changesOf,
  findSeries,
  listMarques,
  listSeries,
  listSeriesDetails,
  type SeriesDetail,
  type SeriesLine,
  type SeriesPage,
  seriesPage,
} from "./read";
export {
  type AddSeriesInput,
  addMarque,
  addSeries,
  type ChangeSeriesInput,
  changeSeries,
  changeSeriesInput,
  foundSeries,
  seriesTexts,
} from "./write";
