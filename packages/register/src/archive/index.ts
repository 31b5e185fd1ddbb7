import type { Kind } from "./kind";
import * as car from "./kind/car";
import * as club from "./kind/club";
import * as event from "./kind/event";
import * as evidence from "./kind/evidence";
import * as journal from "./kind/journal";
import * as keeper from "./kind/keeper";
import * as modification from "./kind/modification";
import * as part from "./kind/part";
import * as extract from "./kind/public-extract";
import * as series from "./kind/series";
import * as setting from "./kind/setting";
import * as specification from "./kind/specification";

export * from "./backup";
export { canonicalJson } from "./canonical";
export type { Field, PersonalPart } from "./field";
export { type Kind, kindFile } from "./kind";
export * from "./manifest";
export { archiveReadme } from "./readme";
export { manifestJsonSchema, rowJsonSchema } from "./schema";

/** Every kind of row of a club's archive. A kind stands after those it refers to, so that they can be read back in order. */
export const archiveKinds: readonly Kind[] = [
  club.clubKind,
  club.memberKind,
  series.marqueKind,
  series.seriesKind,
  series.seriesOptionKind,
  series.characteristicKind,
  series.sourceKind,
  specification.specificationKind,
  specification.specificationEntryKind,
  specification.specificationAlternativeKind,
  car.carKind,
  car.carIdentityKind,
  car.carStatusSpanKind,
  car.carOptionKind,
  keeper.keeperKind,
  keeper.keepershipKind,
  car.asBuiltValueKind,
  car.historyNoteKind,
  car.numberDecisionKind,
  car.numberSetAsideKind,
  part.partKind,
  part.partFitKind,
  part.partFeatureKind,
  part.partNoteKind,
  modification.submissionKind,
  modification.submissionMessageKind,
  modification.noticeKind,
  modification.modificationKind,
  modification.modificationChangeKind,
  modification.modificationFastenerKind,
  setting.instrumentKind,
  event.ruleSetKind,
  event.ruleCheckKind,
  event.eventClassKind,
  event.ruleLimitKind,
  event.eventKind,
  event.entryKind,
  setting.settingSheetKind,
  setting.readingKind,
  event.printedSheetKind,
  event.findingKind,
  event.findingReadingKind,
  event.entryDecisionKind,
  event.inspectionDeviceKind,
  event.datedItemKind,
  evidence.evidenceKind,
  evidence.evidenceLinkKind,
  journal.importRunKind,
  journal.importMappingKind,
  journal.savedFilterKind,
  extract.publicExtractKind,
  journal.journalEntryKind,
];

/** Columns of archived tables that are in no archive, each with the reason. */
export const notArchivedColumns: Readonly<Record<string, string>> = {
  "club.worked_out_by": "says by which program this database's current values were worked out",
};

/** Tables that are in no club's archive, each with the reason. */
export const notArchived: Readonly<Record<string, string>> = {
  current_value: "worked out from the other rows, and worked out again when an archive is read back",
  car_text: "worked out from the other rows, for finding",
  car_summary: "worked out from the other rows, for counting",
  tally: "worked out from the other rows, for counting",
  tally_block: "which cars the tallies count",
  car_tally: "which tallies a car is counted in",
  stale_car: "which cars those are still to be worked out of",
  club_word: "worked out from the other rows, for finding",
  import_step: "serves to take a reading-in back, which only the database that made it can",
  calendar_feed:
    "a private link into this installation, of which only a hash is kept; a new one is made where the archive is read back",
  invitation: "a link by which somebody may join this installation; it runs out within days",
  person: "belongs to the installation, not to a club; of its members the archive has name and address",
  credential: "sign-in: no password leaves with an archive",
  session: "sign-in",
  verification: "sign-in",
  _prisma_migrations: "the program's own",
};
