export {
  conditionAsked,
  type FilterForm,
  filterForm,
  filterNamed,
  listFilters,
  type SavedFilter,
} from "./read";
export {
  type ChangeFilterInput,
  changeFilter,
  changeFilterInput,
  removeFilter,
  removeFilterInput,
  type SaveFilterInput,
  saveFilter,
  saveFilterInput,
} from "./write";
