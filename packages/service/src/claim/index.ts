export { type Claimant, type ClaimPage, claimPage, type Statement } from "./read";
