export { openMember, openOperator, type SignedIn } from "./open";
