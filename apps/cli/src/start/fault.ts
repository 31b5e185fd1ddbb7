/** Trunnion cannot start, for a reason the user can mend; the message says how. */
export class StartFault extends Error {
  override name = "StartFault";
}
