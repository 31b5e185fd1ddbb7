import { id, instant, maybe, person, text, yesNo } from "../field";
import { defineKind } from "../kind";

// Of a backup of the whole installation; in no club's archive.

export const personKind = defineKind({
  name: "person",
  meaning: "Somebody who can sign in. Personal data.",
  fields: {
    id: id("UUID, unique within the installation."),
    name: text("Name as shown to other members."),
    email: text("Address to sign in with, lower case."),
    emailVerified: yesNo("True once the address was proved by following a link."),
    image: maybe(text("Address of a portrait; not used by the screens.")),
    createdAt: instant("When the account was made."),
    updatedAt: instant("When the account last changed."),
  },
});

export const credentialKind = defineKind({
  name: "credential",
  meaning: "A way to prove who one is: here a hashed password. Keep it secret.",
  fields: {
    id: id("UUID, unique within the installation."),
    accountId: text("The person's id at the provider."),
    providerId: text("Kind of credential; `credential` for a password."),
    personId: person("Whose it is."),
    accessToken: maybe(text("Token of an outside provider; unused with passwords.")),
    refreshToken: maybe(text("Token of an outside provider; unused with passwords.")),
    idToken: maybe(text("Token of an outside provider; unused with passwords.")),
    accessTokenExpiresAt: maybe(instant("End of the outside token; unused with passwords.")),
    refreshTokenExpiresAt: maybe(instant("End of the outside token; unused with passwords.")),
    scope: maybe(text("Rights at an outside provider; unused with passwords.")),
    password: maybe(text("Salted hash of the password.")),
    createdAt: instant("When it was made."),
    updatedAt: instant("When it last changed."),
  },
});
