export { type Designation, type DesignationOf, parseDesignation } from "./designation";
export { type Grade, type GradeStrength, gradeStrength, parseGrade, printGrade } from "./grade";
export { type DesignationKind, designationKinds } from "./kind";
export { parseThread, printThread, type Thread } from "./thread";
export { type InchSeries, metricPitches, threadsPerInch } from "./thread-table";
export { parseTyre, printTyre, type Tyre } from "./tyre";
export { type OverallDiameter, overallDiameter, type TyreAspect, tyreAspect } from "./tyre-size";
export { parseWheel, printWheel, type Wheel } from "./wheel";
