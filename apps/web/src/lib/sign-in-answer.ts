/** Why signing in came to nothing, as the form's address says it. */
export type SignInProblem = "wrong" | "often" | "elsewhere" | "fault";

/**
 * What the sign-in library's answer means for the person at the form. Only what the library says of address and password
 * is their mistake; a form that another site sent, and a library that could not answer, are told as that.
 *
 * @param status HTTP status of an answer that is not a success
 */
export function signInProblem(status: number): SignInProblem {
  if (status === 400 || status === 401) return "wrong";
  if (status === 429) return "often";
  return status === 403 ? "elsewhere" : "fault";
}
