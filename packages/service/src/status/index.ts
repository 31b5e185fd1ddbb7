export {
  type AddStatusInput,
  addStatus,
  addStatusInput,
  type CorrectStatusInput,
  correctStatus,
  correctStatusInput,
  type RemoveStatusInput,
  removeStatus,
  removeStatusInput,
} from "./write";
