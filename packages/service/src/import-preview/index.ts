export { type PreviewCar, type PreviewLine, previewOf } from "./policy";
