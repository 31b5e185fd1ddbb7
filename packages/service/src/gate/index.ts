export { type Clock, openMember, openOperator, type SignedIn } from "./open";
