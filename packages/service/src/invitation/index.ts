export {
  acceptInput,
  acceptInvitation,
  createMember,
  findInvitation,
  type InvitationFace,
  invite,
  inviteInput,
  type NewMember,
  readInvitation,
} from "./write";
