export { type Clock, openMember, openOperator, openVisitor, type SignedIn } from "./open";
