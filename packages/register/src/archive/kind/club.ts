import { clubKindCodes, roleCodes } from "../code";
import { choice, choices, id, instant, maybe, person, personal, text } from "../field";
import { defineKind } from "../kind";

export const clubKind = defineKind({
  name: "club",
  meaning: "The club itself: one line.",
  fields: {
    id: id("UUIDv7. The journal's hashes are worked out over it, so it stays when the archive is read back."),
    slug: text("Short name in addresses and commands."),
    name: text("Full name."),
    kind: choice(clubKindCodes, "Owners' club or fleet."),
    unitSystem: text("Units shown first: metric or imperial."),
    sideWords: text("Words for the sides: leftRight or nearOff."),
    createdAt: instant("When the club was made."),
  },
});

export const memberKind = defineKind({
  name: "member",
  meaning:
    "A person's belonging to the club, with what they may do there. Passwords are no part of an archive: read back, a member has an account without one.",
  fields: {
    id: id(),
    personId: person("Who belongs: the id under which other rows say who did something."),
    name: personal(text("Name as shown to other members. Personal data.")),
    email: personal(text("Address to sign in with, lower case. Personal data.")),
    roles: choices(roleCodes, "What they may do; at least one."),
    joinedAt: instant("When they joined."),
    leftAt: maybe(instant("When they left; empty while a member.")),
  },
});
