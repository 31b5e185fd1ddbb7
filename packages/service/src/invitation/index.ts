export {
  acceptInput,
  acceptInvitation,
  createMember,
  findInvitation,
  invite,
  inviteInput,
  type NewMember,
} from "./write";
