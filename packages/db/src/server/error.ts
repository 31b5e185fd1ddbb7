/** The embedded server could not be had. The message names the place and what to do. */
export class EmbeddedServerError extends Error {
  override name = "EmbeddedServerError";
}
