export { createSignIn, PASSWORD_MINIMUM, type SignIn } from "./auth";
