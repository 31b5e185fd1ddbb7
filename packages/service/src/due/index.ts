export { type DueScope, dueListSql } from "./policy";
export {
  type DueCount,
  type DueDay,
  type DueInput,
  type DueMonth,
  type DueMonthInput,
  type DuePage,
  type DueRow,
  dueInput,
  dueItem,
  dueMonth,
  dueMonthInput,
  duePage,
  dueSums,
  type FleetDueItem,
} from "./read";
