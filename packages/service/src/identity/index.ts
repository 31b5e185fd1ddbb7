export {
  type AddIdentityInput,
  addIdentity,
  addIdentityInput,
  type CorrectIdentityInput,
  correctIdentity,
  correctIdentityInput,
  type RemoveIdentityInput,
  removeIdentity,
  removeIdentityInput,
} from "./write";
