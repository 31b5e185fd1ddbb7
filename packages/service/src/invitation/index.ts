export { findInvitation, type InvitationFace, readInvitation } from "./read";
export {
  acceptInput,
  acceptInvitation,
  createMember,
  invite,
  inviteInput,
  type NewMember,
} from "./write";
