export { photosOf, type SubmissionPhoto } from "./read";
export {
  aboutPhoto,
  aboutPhotoInput,
  removePhoto,
  removePhotoInput,
} from "./write";
