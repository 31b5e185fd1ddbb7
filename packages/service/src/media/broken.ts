/** A file that is not what its first bytes promise; the message says what is wrong, to be put after "cannot be read:". */
export class Broken extends Error {
  override readonly name = "Broken";
}
