export { type MergePreview, previewMerge } from "./read";
export { type MergeCarsInput, mergeCars, mergeCarsInput } from "./write";
