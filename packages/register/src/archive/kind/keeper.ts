// table: the fields of these kinds of row, in the order of the schema
import { trustCodes } from "../code";
import { dateFields, day, id, instant, maybe, personal, refersTo, sourceFields, text } from "../field";
import { defineKind } from "../kind";

export const keeperKind = defineKind({
  name: "keeper",
  meaning: "Somebody who keeps or kept a car. Personal data.",
  fields: {
    id: id(),
    name: personal(text("Name; empty once erased.")),
    address: personal(text("Postal address; empty once erased.")),
    email: personal(text("E-mail; empty once erased.")),
    phone: personal(text("Telephone; empty once erased.")),
    membershipId: maybe(refersTo("member", "Membership, when the keeper signs in here.")),
    erasedAt: maybe(instant("When the personal data were erased.")),
    recordedAt: instant("When the row was recorded."),
  },
});

export const keepershipKind = defineKind({
  name: "keepership",
  meaning: "Who kept which car, and when.",
  fields: {
    id: id(),
    carId: refersTo("car", "The car."),
    keeperId: refersTo("keeper", "The keeper."),
    ...dateFields("from", "Kept from"),
    to: maybe(day("Last day; empty while the keeper has it.")),
    ...sourceFields(trustCodes),
    recordedAt: instant("When the row was recorded."),
  },
});
