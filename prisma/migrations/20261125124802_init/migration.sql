-- CreateSchema
CREATE SCHEMA IF NOT EXISTS "public";

-- CreateEnum
CREATE TYPE "IdentityKind" AS ENUM ('chassis', 'commission', 'engine', 'body', 'registration');

-- CreateEnum
CREATE TYPE "IdentityStanding" AS ENUM ('accepted', 'disputed', 'restamped');

-- CreateEnum
CREATE TYPE "CarStatus" AS ENUM ('inUse', 'underRestoration', 'laidUp', 'dismantled', 'destroyed', 'lostFromSight', 'identityDisputed', 'unknown');

-- CreateEnum
CREATE TYPE "Origin" AS ENUM ('specification', 'asBuilt', 'modification', 'reading');

-- CreateEnum
CREATE TYPE "ClubKind" AS ENUM ('ownersClub', 'fleet');

-- CreateEnum
CREATE TYPE "Role" AS ENUM ('registrar', 'owner', 'scrutineer', 'fleetManager');

-- CreateEnum
CREATE TYPE "FindingResult" AS ENUM ('pass', 'advise', 'refuse', 'notApplicable');

-- CreateEnum
CREATE TYPE "DecisionOutcome" AS ENUM ('pass', 'passWithAdvice', 'refused');

-- CreateEnum
CREATE TYPE "SubmissionStatus" AS ENUM ('draft', 'submitted', 'queried', 'accepted', 'declined', 'withdrawn');

-- CreateEnum
CREATE TYPE "Trust" AS ENUM ('documented', 'stated', 'inferred', 'unknown');

-- CreateEnum
CREATE TYPE "Side" AS ENUM ('whole', 'left', 'right');

-- CreateEnum
CREATE TYPE "ValueKind" AS ENUM ('quantity', 'choice', 'designation', 'text', 'date', 'absent');

-- CreateEnum
CREATE TYPE "Verdict" AS ENUM ('asSpecified', 'periodOption', 'acceptedSubstitute', 'insideLimits', 'outsideLimits', 'cannotTell', 'differentPart', 'added', 'missing', 'notRecorded');

-- CreateEnum
CREATE TYPE "SourceKind" AS ENUM ('worksRecord', 'publication', 'letter', 'photograph', 'keeperStatement', 'registerFile', 'inspection', 'other');

-- CreateEnum
CREATE TYPE "LoadState" AS ENUM ('kerb', 'driver', 'driverAndPassenger', 'unknown');

-- CreateEnum
CREATE TYPE "SpecificationStatus" AS ENUM ('draft', 'current', 'superseded');

-- CreateEnum
CREATE TYPE "AlternativeRole" AS ENUM ('periodOption', 'acceptedSubstitute', 'serviceReplacement');

-- CreateTable
CREATE TABLE "car" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "series_id" UUID,
    "chassis" TEXT NOT NULL,
    "chassis_key" TEXT NOT NULL,
    "claim" INTEGER NOT NULL DEFAULT 1,
    "serial" INTEGER,
    "built_text" TEXT,
    "built_earliest" DATE,
    "built_latest" DATE,
    "first_registered_text" TEXT,
    "first_registered_earliest" DATE,
    "first_registered_latest" DATE,
    "remarks" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "car_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "car_identity" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "car_id" UUID NOT NULL,
    "kind" "IdentityKind" NOT NULL,
    "number" TEXT NOT NULL,
    "number_key" TEXT NOT NULL,
    "standing" "IdentityStanding" NOT NULL DEFAULT 'accepted',
    "from_text" TEXT,
    "from_earliest" DATE,
    "from_latest" DATE,
    "to_text" TEXT,
    "to_earliest" DATE,
    "to_latest" DATE,
    "source_id" UUID,
    "locus" TEXT,
    "trust" "Trust" NOT NULL DEFAULT 'unknown',
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "car_identity_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "car_status_span" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "car_id" UUID NOT NULL,
    "status" "CarStatus" NOT NULL,
    "from_text" TEXT,
    "from_earliest" DATE,
    "from_latest" DATE,
    "to" DATE,
    "source_id" UUID,
    "locus" TEXT,
    "trust" "Trust" NOT NULL DEFAULT 'unknown',
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "car_status_span_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "car_option" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "car_id" UUID NOT NULL,
    "code" TEXT NOT NULL,

    CONSTRAINT "car_option_pkey" PRIMARY KEY ("club_id","car_id","code")
);

-- CreateTable
CREATE TABLE "as_built_value" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "car_id" UUID NOT NULL,
    "characteristic" TEXT NOT NULL,
    "side" "Side" NOT NULL,
    "value_kind" "ValueKind" NOT NULL,
    "entered" TEXT NOT NULL,
    "number" DOUBLE PRECISION,
    "resolution" DOUBLE PRECISION,
    "text" TEXT,
    "source_id" UUID,
    "locus" TEXT,
    "trust" "Trust" NOT NULL DEFAULT 'unknown',
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "superseded_at" TIMESTAMPTZ(3),

    CONSTRAINT "as_built_value_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "history_note" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "car_id" UUID NOT NULL,
    "on_text" TEXT,
    "on_earliest" DATE,
    "on_latest" DATE,
    "text" TEXT NOT NULL,
    "source_id" UUID,
    "locus" TEXT,
    "trust" "Trust" NOT NULL DEFAULT 'unknown',
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "history_note_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "current_value" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "car_id" UUID NOT NULL,
    "characteristic" TEXT NOT NULL,
    "side" "Side" NOT NULL,
    "value_kind" "ValueKind" NOT NULL,
    "entered" TEXT NOT NULL,
    "number" DOUBLE PRECISION,
    "resolution" DOUBLE PRECISION,
    "text" TEXT,
    "origin" "Origin" NOT NULL,
    "origin_id" UUID NOT NULL,
    "since" DATE,
    "verdict" "Verdict" NOT NULL,

    CONSTRAINT "current_value_pkey" PRIMARY KEY ("club_id","car_id","characteristic","side")
);

-- CreateTable
CREATE TABLE "club" (
    "id" UUID NOT NULL,
    "slug" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "kind" "ClubKind" NOT NULL,
    "unit_system" TEXT NOT NULL DEFAULT 'metric',
    "side_words" TEXT NOT NULL DEFAULT 'leftRight',
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "club_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "membership" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "roles" "Role"[],
    "joined_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "left_at" TIMESTAMPTZ(3),

    CONSTRAINT "membership_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "invitation" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "email" TEXT NOT NULL,
    "roles" "Role"[],
    "token_hash" TEXT NOT NULL,
    "invited_by_id" UUID,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "accepted_at" TIMESTAMPTZ(3),
    "revoked_at" TIMESTAMPTZ(3),
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "invitation_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "rule_set" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "slug" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "edition" TEXT NOT NULL,
    "copied_from_id" UUID,
    "note" TEXT,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "rule_set_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "rule_check" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "rule_set_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "station" TEXT NOT NULL,
    "assembly" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "method" TEXT,
    "criterion" JSONB NOT NULL,
    "condition" JSONB NOT NULL,
    "why" TEXT,
    "caution" TEXT,
    "source_title" TEXT NOT NULL,
    "source_edition" TEXT,
    "source_clause" TEXT,

    CONSTRAINT "rule_check_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "event_class" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "rule_set_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "eligibility" JSONB NOT NULL,

    CONSTRAINT "event_class_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "rule_limit" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "rule_set_id" UUID NOT NULL,
    "event_class_id" UUID,
    "characteristic" TEXT NOT NULL,
    "side" "Side" NOT NULL DEFAULT 'whole',
    "lower" DOUBLE PRECISION,
    "upper" DOUBLE PRECISION,
    "source_title" TEXT NOT NULL,
    "source_clause" TEXT,

    CONSTRAINT "rule_limit_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "event" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "slug" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "on" DATE NOT NULL,
    "venue" TEXT NOT NULL,
    "rule_set_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "event_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "entry" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "event_id" UUID NOT NULL,
    "running_number" TEXT NOT NULL,
    "running_order" INTEGER NOT NULL,
    "car_id" UUID,
    "described_as" TEXT,
    "driver" TEXT,
    "group" TEXT,
    "event_class_id" UUID,
    "withdrawn_at" TIMESTAMPTZ(3),
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "entry_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "printed_sheet" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "entry_id" UUID NOT NULL,
    "layout_version" INTEGER NOT NULL,
    "record_hash" TEXT NOT NULL,
    "model" JSONB NOT NULL,
    "printed_by_id" UUID,
    "printed_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "printed_sheet_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "finding" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "entry_id" UUID NOT NULL,
    "printed_sheet_id" UUID,
    "check_code" TEXT NOT NULL,
    "result" "FindingResult" NOT NULL,
    "reading_value_kind" "ValueKind",
    "reading_entered" TEXT,
    "reading_number" DOUBLE PRECISION,
    "reading_resolution" DOUBLE PRECISION,
    "reading_text" TEXT,
    "note" TEXT,
    "found_by_id" UUID,
    "found_at" TIMESTAMPTZ(3) NOT NULL,
    "client_key" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "finding_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "entry_decision" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "entry_id" UUID NOT NULL,
    "outcome" "DecisionOutcome" NOT NULL,
    "decided_by_id" UUID,
    "decided_at" TIMESTAMPTZ(3) NOT NULL,
    "note" TEXT,
    "client_key" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "entry_decision_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "dated_item" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "car_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "valid_from" DATE,
    "valid_to" DATE,
    "source_id" UUID,
    "locus" TEXT,
    "trust" "Trust" NOT NULL DEFAULT 'unknown',
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "replaced_at" TIMESTAMPTZ(3),

    CONSTRAINT "dated_item_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "evidence" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "sha256" TEXT NOT NULL,
    "media_type" TEXT NOT NULL,
    "bytes" INTEGER NOT NULL,
    "file_name" TEXT NOT NULL,
    "caption" TEXT,
    "quarter_turns" INTEGER NOT NULL DEFAULT 0,
    "taken_text" TEXT,
    "taken_earliest" DATE,
    "taken_latest" DATE,
    "added_by_id" UUID,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "evidence_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "evidence_link" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "evidence_id" UUID NOT NULL,
    "car_id" UUID,
    "as_built_value_id" UUID,
    "modification_id" UUID,
    "setting_sheet_id" UUID,
    "finding_id" UUID,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "evidence_link_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "journal_entry" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "sequence" BIGINT NOT NULL DEFAULT 0,
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "person_id" UUID,
    "action" TEXT NOT NULL,
    "noun" TEXT NOT NULL,
    "noun_id" UUID NOT NULL,
    "car_id" UUID,
    "run_id" UUID,
    "reason" TEXT,
    "before" JSONB,
    "after" JSONB,
    "previous_hash" TEXT NOT NULL DEFAULT '',
    "hash" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "journal_entry_pkey" PRIMARY KEY ("club_id","sequence")
);

-- CreateTable
CREATE TABLE "import_run" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "file_name" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "source_id" UUID NOT NULL,
    "made_by_id" UUID,
    "rows_read" INTEGER NOT NULL,
    "cars_added" INTEGER NOT NULL,
    "cars_changed" INTEGER NOT NULL,
    "rows_refused" INTEGER NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "undone_at" TIMESTAMPTZ(3),

    CONSTRAINT "import_run_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "saved_filter" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "condition" JSONB NOT NULL,
    "person_id" UUID NOT NULL,
    "shared" BOOLEAN NOT NULL DEFAULT false,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "saved_filter_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "keeper" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "name" TEXT,
    "address" TEXT,
    "email" TEXT,
    "phone" TEXT,
    "membership_id" UUID,
    "erased_at" TIMESTAMPTZ(3),
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "keeper_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "keepership" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "car_id" UUID NOT NULL,
    "keeper_id" UUID NOT NULL,
    "from_text" TEXT,
    "from_earliest" DATE,
    "from_latest" DATE,
    "to" DATE,
    "source_id" UUID,
    "locus" TEXT,
    "trust" "Trust" NOT NULL DEFAULT 'unknown',
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "keepership_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "submission" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "car_id" UUID NOT NULL,
    "status" "SubmissionStatus" NOT NULL DEFAULT 'draft',
    "made_by_id" UUID,
    "client_key" UUID NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "submitted_at" TIMESTAMPTZ(3),
    "decided_at" TIMESTAMPTZ(3),
    "decided_by_id" UUID,
    "decision_reason" TEXT,
    "supersedes_id" UUID,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "submission_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "submission_message" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "submission_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "text" TEXT NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "submission_message_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "modification" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "submission_id" UUID NOT NULL,
    "car_id" UUID NOT NULL,
    "fitted_text" TEXT,
    "fitted_earliest" DATE,
    "fitted_latest" DATE,
    "sequence" INTEGER NOT NULL,
    "reason" TEXT,
    "donor" TEXT,
    "odometer" DOUBLE PRECISION,
    "reversible" BOOLEAN,
    "old_part_kept" BOOLEAN,
    "note" TEXT,
    "source_id" UUID,
    "locus" TEXT,
    "trust" "Trust" NOT NULL DEFAULT 'unknown',
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "superseded_at" TIMESTAMPTZ(3),

    CONSTRAINT "modification_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "modification_change" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "modification_id" UUID NOT NULL,
    "characteristic" TEXT NOT NULL,
    "side" "Side" NOT NULL,
    "before_value_kind" "ValueKind",
    "before_entered" TEXT,
    "before_number" DOUBLE PRECISION,
    "before_resolution" DOUBLE PRECISION,
    "before_text" TEXT,
    "after_value_kind" "ValueKind" NOT NULL,
    "after_entered" TEXT NOT NULL,
    "after_number" DOUBLE PRECISION,
    "after_resolution" DOUBLE PRECISION,
    "after_text" TEXT,

    CONSTRAINT "modification_change_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "modification_fastener" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "modification_id" UUID NOT NULL,
    "place" TEXT NOT NULL,
    "thread" TEXT,
    "grade" TEXT,
    "length" DOUBLE PRECISION,
    "spacer_stack" DOUBLE PRECISION,
    "count" INTEGER NOT NULL DEFAULT 1,
    "note" TEXT,

    CONSTRAINT "modification_fastener_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "marque" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "slug" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "marque_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "series" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "marque_id" UUID NOT NULL,
    "slug" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "number_prefix" TEXT NOT NULL,
    "number_digits" INTEGER NOT NULL,
    "first_serial" INTEGER NOT NULL,
    "last_serial" INTEGER NOT NULL,
    "number_suffixes" TEXT[],
    "built_from" DATE NOT NULL,
    "built_to" DATE NOT NULL,
    "built_count" INTEGER,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "series_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "series_option" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "series_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "label" TEXT NOT NULL,

    CONSTRAINT "series_option_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "characteristic" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "assembly" TEXT NOT NULL,
    "sided" BOOLEAN NOT NULL DEFAULT false,
    "kind" TEXT NOT NULL,
    "definition" JSONB NOT NULL,
    "help" TEXT NOT NULL,
    "setting" BOOLEAN NOT NULL DEFAULT false,
    "removable" BOOLEAN NOT NULL DEFAULT false,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "characteristic_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "source" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "kind" "SourceKind" NOT NULL,
    "title" TEXT NOT NULL,
    "edition" TEXT,
    "note" TEXT,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "source_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "instrument" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "label" TEXT NOT NULL,
    "dimension" TEXT NOT NULL,
    "resolution" DOUBLE PRECISION NOT NULL,
    "expanded_uncertainty" DOUBLE PRECISION,
    "calibrated_on" DATE,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "instrument_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "setting_sheet" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "car_id" UUID NOT NULL,
    "submission_id" UUID,
    "on" DATE NOT NULL,
    "sequence" INTEGER NOT NULL,
    "load_state" "LoadState" NOT NULL DEFAULT 'unknown',
    "note" TEXT,
    "source_id" UUID,
    "locus" TEXT,
    "trust" "Trust" NOT NULL DEFAULT 'unknown',
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "superseded_at" TIMESTAMPTZ(3),

    CONSTRAINT "setting_sheet_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "reading" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "setting_sheet_id" UUID NOT NULL,
    "characteristic" TEXT NOT NULL,
    "side" "Side" NOT NULL,
    "repeat" INTEGER NOT NULL DEFAULT 1,
    "value_kind" "ValueKind" NOT NULL,
    "entered" TEXT NOT NULL,
    "number" DOUBLE PRECISION,
    "resolution" DOUBLE PRECISION,
    "text" TEXT,
    "expanded_uncertainty" DOUBLE PRECISION,
    "instrument_id" UUID,

    CONSTRAINT "reading_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "person" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "email_verified" BOOLEAN NOT NULL DEFAULT false,
    "image" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "person_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "session" (
    "id" UUID NOT NULL,
    "token" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "ip_address" TEXT,
    "user_agent" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "session_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "credential" (
    "id" UUID NOT NULL,
    "account_id" TEXT NOT NULL,
    "provider_id" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
    "access_token" TEXT,
    "refresh_token" TEXT,
    "id_token" TEXT,
    "access_token_expires_at" TIMESTAMPTZ(3),
    "refresh_token_expires_at" TIMESTAMPTZ(3),
    "scope" TEXT,
    "password" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "credential_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "verification" (
    "id" UUID NOT NULL,
    "identifier" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "verification_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "specification" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "series_id" UUID NOT NULL,
    "version" INTEGER NOT NULL,
    "status" "SpecificationStatus" NOT NULL,
    "note" TEXT,
    "made_by_id" UUID,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "specification_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "specification_entry" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "specification_id" UUID NOT NULL,
    "characteristic" TEXT NOT NULL,
    "side" "Side" NOT NULL DEFAULT 'whole',
    "nominal_value_kind" "ValueKind",
    "nominal_entered" TEXT,
    "nominal_number" DOUBLE PRECISION,
    "nominal_resolution" DOUBLE PRECISION,
    "nominal_text" TEXT,
    "lower" DOUBLE PRECISION,
    "upper" DOUBLE PRECISION,
    "serial_from" INTEGER,
    "serial_to" INTEGER,
    "built_from" DATE,
    "built_to" DATE,
    "option" TEXT,
    "source_id" UUID,
    "locus" TEXT,
    "trust" "Trust" NOT NULL DEFAULT 'unknown',
    "note" TEXT,

    CONSTRAINT "specification_entry_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateTable
CREATE TABLE "specification_alternative" (
    "club_id" UUID NOT NULL DEFAULT (NULLIF(current_setting('trunnion.club'::text, true), ''::text))::uuid,
    "id" UUID NOT NULL,
    "entry_id" UUID NOT NULL,
    "role" "AlternativeRole" NOT NULL,
    "value_kind" "ValueKind" NOT NULL,
    "entered" TEXT NOT NULL,
    "number" DOUBLE PRECISION,
    "resolution" DOUBLE PRECISION,
    "text" TEXT,
    "source_id" UUID,
    "locus" TEXT,
    "trust" "Trust" NOT NULL DEFAULT 'unknown',
    "note" TEXT,

    CONSTRAINT "specification_alternative_pkey" PRIMARY KEY ("club_id","id")
);

-- CreateIndex
CREATE INDEX "car_club_id_series_id_serial_idx" ON "car"("club_id", "series_id", "serial");

-- CreateIndex
CREATE UNIQUE INDEX "car_club_id_chassis_key_claim_key" ON "car"("club_id", "chassis_key", "claim");

-- CreateIndex
CREATE INDEX "car_identity_club_id_kind_number_key_idx" ON "car_identity"("club_id", "kind", "number_key");

-- CreateIndex
CREATE UNIQUE INDEX "car_identity_club_id_car_id_kind_number_key_key" ON "car_identity"("club_id", "car_id", "kind", "number_key");

-- CreateIndex
CREATE INDEX "car_status_span_club_id_car_id_idx" ON "car_status_span"("club_id", "car_id");

-- CreateIndex
CREATE INDEX "car_status_span_club_id_status_idx" ON "car_status_span"("club_id", "status");

-- CreateIndex
CREATE INDEX "as_built_value_club_id_car_id_characteristic_side_idx" ON "as_built_value"("club_id", "car_id", "characteristic", "side");

-- CreateIndex
CREATE INDEX "history_note_club_id_car_id_idx" ON "history_note"("club_id", "car_id");

-- CreateIndex
CREATE INDEX "current_value_club_id_characteristic_number_idx" ON "current_value"("club_id", "characteristic", "number");

-- CreateIndex
CREATE INDEX "current_value_club_id_characteristic_text_idx" ON "current_value"("club_id", "characteristic", "text");

-- CreateIndex
CREATE INDEX "current_value_club_id_characteristic_verdict_idx" ON "current_value"("club_id", "characteristic", "verdict");

-- CreateIndex
CREATE UNIQUE INDEX "club_slug_key" ON "club"("slug");

-- CreateIndex
CREATE INDEX "membership_person_id_idx" ON "membership"("person_id");

-- CreateIndex
CREATE UNIQUE INDEX "membership_club_id_person_id_key" ON "membership"("club_id", "person_id");

-- CreateIndex
CREATE UNIQUE INDEX "invitation_token_hash_key" ON "invitation"("token_hash");

-- CreateIndex
CREATE INDEX "invitation_club_id_email_idx" ON "invitation"("club_id", "email");

-- CreateIndex
CREATE UNIQUE INDEX "rule_set_club_id_slug_version_key" ON "rule_set"("club_id", "slug", "version");

-- CreateIndex
CREATE UNIQUE INDEX "rule_check_club_id_rule_set_id_code_key" ON "rule_check"("club_id", "rule_set_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "event_class_club_id_rule_set_id_code_key" ON "event_class"("club_id", "rule_set_id", "code");

-- CreateIndex
CREATE INDEX "rule_limit_club_id_rule_set_id_idx" ON "rule_limit"("club_id", "rule_set_id");

-- CreateIndex
CREATE UNIQUE INDEX "event_club_id_slug_key" ON "event"("club_id", "slug");

-- CreateIndex
CREATE INDEX "entry_club_id_car_id_idx" ON "entry"("club_id", "car_id");

-- CreateIndex
CREATE UNIQUE INDEX "entry_club_id_event_id_running_number_key" ON "entry"("club_id", "event_id", "running_number");

-- CreateIndex
CREATE INDEX "printed_sheet_club_id_entry_id_printed_at_idx" ON "printed_sheet"("club_id", "entry_id", "printed_at");

-- CreateIndex
CREATE INDEX "finding_club_id_entry_id_idx" ON "finding"("club_id", "entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "finding_club_id_client_key_key" ON "finding"("club_id", "client_key");

-- CreateIndex
CREATE INDEX "entry_decision_club_id_entry_id_idx" ON "entry_decision"("club_id", "entry_id");

-- CreateIndex
CREATE UNIQUE INDEX "entry_decision_club_id_client_key_key" ON "entry_decision"("club_id", "client_key");

-- CreateIndex
CREATE INDEX "dated_item_club_id_car_id_idx" ON "dated_item"("club_id", "car_id");

-- CreateIndex
CREATE INDEX "dated_item_club_id_valid_to_idx" ON "dated_item"("club_id", "valid_to");

-- CreateIndex
CREATE UNIQUE INDEX "evidence_club_id_sha256_key" ON "evidence"("club_id", "sha256");

-- CreateIndex
CREATE INDEX "evidence_link_club_id_evidence_id_idx" ON "evidence_link"("club_id", "evidence_id");

-- CreateIndex
CREATE INDEX "evidence_link_club_id_car_id_idx" ON "evidence_link"("club_id", "car_id");

-- CreateIndex
CREATE INDEX "journal_entry_club_id_car_id_sequence_idx" ON "journal_entry"("club_id", "car_id", "sequence");

-- CreateIndex
CREATE INDEX "journal_entry_club_id_noun_noun_id_idx" ON "journal_entry"("club_id", "noun", "noun_id");

-- CreateIndex
CREATE INDEX "import_run_club_id_sha256_idx" ON "import_run"("club_id", "sha256");

-- CreateIndex
CREATE UNIQUE INDEX "saved_filter_club_id_person_id_name_key" ON "saved_filter"("club_id", "person_id", "name");

-- CreateIndex
CREATE INDEX "keeper_club_id_membership_id_idx" ON "keeper"("club_id", "membership_id");

-- CreateIndex
CREATE INDEX "keepership_club_id_car_id_idx" ON "keepership"("club_id", "car_id");

-- CreateIndex
CREATE INDEX "keepership_club_id_keeper_id_idx" ON "keepership"("club_id", "keeper_id");

-- CreateIndex
CREATE INDEX "submission_club_id_status_idx" ON "submission"("club_id", "status");

-- CreateIndex
CREATE INDEX "submission_club_id_car_id_idx" ON "submission"("club_id", "car_id");

-- CreateIndex
CREATE UNIQUE INDEX "submission_club_id_client_key_key" ON "submission"("club_id", "client_key");

-- CreateIndex
CREATE INDEX "submission_message_club_id_submission_id_idx" ON "submission_message"("club_id", "submission_id");

-- CreateIndex
CREATE INDEX "modification_club_id_submission_id_idx" ON "modification"("club_id", "submission_id");

-- CreateIndex
CREATE UNIQUE INDEX "modification_club_id_car_id_sequence_key" ON "modification"("club_id", "car_id", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "modification_change_club_id_modification_id_characteristic__key" ON "modification_change"("club_id", "modification_id", "characteristic", "side");

-- CreateIndex
CREATE INDEX "modification_fastener_club_id_modification_id_idx" ON "modification_fastener"("club_id", "modification_id");

-- CreateIndex
CREATE UNIQUE INDEX "marque_club_id_slug_key" ON "marque"("club_id", "slug");

-- CreateIndex
CREATE INDEX "series_club_id_marque_id_idx" ON "series"("club_id", "marque_id");

-- CreateIndex
CREATE UNIQUE INDEX "series_club_id_slug_key" ON "series"("club_id", "slug");

-- CreateIndex
CREATE UNIQUE INDEX "series_option_club_id_series_id_code_key" ON "series_option"("club_id", "series_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "characteristic_club_id_key_key" ON "characteristic"("club_id", "key");

-- CreateIndex
CREATE UNIQUE INDEX "source_club_id_title_key" ON "source"("club_id", "title");

-- CreateIndex
CREATE UNIQUE INDEX "instrument_club_id_label_key" ON "instrument"("club_id", "label");

-- CreateIndex
CREATE UNIQUE INDEX "setting_sheet_club_id_car_id_sequence_key" ON "setting_sheet"("club_id", "car_id", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "reading_club_id_setting_sheet_id_characteristic_side_repeat_key" ON "reading"("club_id", "setting_sheet_id", "characteristic", "side", "repeat");

-- CreateIndex
CREATE UNIQUE INDEX "person_email_key" ON "person"("email");

-- CreateIndex
CREATE UNIQUE INDEX "session_token_key" ON "session"("token");

-- CreateIndex
CREATE INDEX "session_person_id_idx" ON "session"("person_id");

-- CreateIndex
CREATE INDEX "credential_person_id_idx" ON "credential"("person_id");

-- CreateIndex
CREATE INDEX "verification_identifier_idx" ON "verification"("identifier");

-- CreateIndex
CREATE UNIQUE INDEX "specification_club_id_series_id_version_key" ON "specification"("club_id", "series_id", "version");

-- CreateIndex
CREATE INDEX "specification_entry_club_id_specification_id_idx" ON "specification_entry"("club_id", "specification_id");

-- CreateIndex
CREATE INDEX "specification_alternative_club_id_entry_id_idx" ON "specification_alternative"("club_id", "entry_id");

-- AddForeignKey
ALTER TABLE "car" ADD CONSTRAINT "car_club_id_series_id_fkey" FOREIGN KEY ("club_id", "series_id") REFERENCES "series"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "car_identity" ADD CONSTRAINT "car_identity_club_id_car_id_fkey" FOREIGN KEY ("club_id", "car_id") REFERENCES "car"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "car_identity" ADD CONSTRAINT "car_identity_club_id_source_id_fkey" FOREIGN KEY ("club_id", "source_id") REFERENCES "source"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "car_status_span" ADD CONSTRAINT "car_status_span_club_id_car_id_fkey" FOREIGN KEY ("club_id", "car_id") REFERENCES "car"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "car_status_span" ADD CONSTRAINT "car_status_span_club_id_source_id_fkey" FOREIGN KEY ("club_id", "source_id") REFERENCES "source"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "car_option" ADD CONSTRAINT "car_option_club_id_car_id_fkey" FOREIGN KEY ("club_id", "car_id") REFERENCES "car"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "as_built_value" ADD CONSTRAINT "as_built_value_club_id_car_id_fkey" FOREIGN KEY ("club_id", "car_id") REFERENCES "car"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "as_built_value" ADD CONSTRAINT "as_built_value_club_id_source_id_fkey" FOREIGN KEY ("club_id", "source_id") REFERENCES "source"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "history_note" ADD CONSTRAINT "history_note_club_id_car_id_fkey" FOREIGN KEY ("club_id", "car_id") REFERENCES "car"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "history_note" ADD CONSTRAINT "history_note_club_id_source_id_fkey" FOREIGN KEY ("club_id", "source_id") REFERENCES "source"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "current_value" ADD CONSTRAINT "current_value_club_id_car_id_fkey" FOREIGN KEY ("club_id", "car_id") REFERENCES "car"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "membership" ADD CONSTRAINT "membership_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "club"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "membership" ADD CONSTRAINT "membership_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "invitation" ADD CONSTRAINT "invitation_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "club"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "rule_set" ADD CONSTRAINT "rule_set_club_id_copied_from_id_fkey" FOREIGN KEY ("club_id", "copied_from_id") REFERENCES "rule_set"("club_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "rule_check" ADD CONSTRAINT "rule_check_club_id_rule_set_id_fkey" FOREIGN KEY ("club_id", "rule_set_id") REFERENCES "rule_set"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "event_class" ADD CONSTRAINT "event_class_club_id_rule_set_id_fkey" FOREIGN KEY ("club_id", "rule_set_id") REFERENCES "rule_set"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "rule_limit" ADD CONSTRAINT "rule_limit_club_id_rule_set_id_fkey" FOREIGN KEY ("club_id", "rule_set_id") REFERENCES "rule_set"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "rule_limit" ADD CONSTRAINT "rule_limit_club_id_event_class_id_fkey" FOREIGN KEY ("club_id", "event_class_id") REFERENCES "event_class"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "event" ADD CONSTRAINT "event_club_id_rule_set_id_fkey" FOREIGN KEY ("club_id", "rule_set_id") REFERENCES "rule_set"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "entry" ADD CONSTRAINT "entry_club_id_event_id_fkey" FOREIGN KEY ("club_id", "event_id") REFERENCES "event"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "entry" ADD CONSTRAINT "entry_club_id_car_id_fkey" FOREIGN KEY ("club_id", "car_id") REFERENCES "car"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "entry" ADD CONSTRAINT "entry_club_id_event_class_id_fkey" FOREIGN KEY ("club_id", "event_class_id") REFERENCES "event_class"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "printed_sheet" ADD CONSTRAINT "printed_sheet_club_id_entry_id_fkey" FOREIGN KEY ("club_id", "entry_id") REFERENCES "entry"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "finding" ADD CONSTRAINT "finding_club_id_entry_id_fkey" FOREIGN KEY ("club_id", "entry_id") REFERENCES "entry"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "finding" ADD CONSTRAINT "finding_club_id_printed_sheet_id_fkey" FOREIGN KEY ("club_id", "printed_sheet_id") REFERENCES "printed_sheet"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "entry_decision" ADD CONSTRAINT "entry_decision_club_id_entry_id_fkey" FOREIGN KEY ("club_id", "entry_id") REFERENCES "entry"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "dated_item" ADD CONSTRAINT "dated_item_club_id_car_id_fkey" FOREIGN KEY ("club_id", "car_id") REFERENCES "car"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "dated_item" ADD CONSTRAINT "dated_item_club_id_source_id_fkey" FOREIGN KEY ("club_id", "source_id") REFERENCES "source"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "evidence_link" ADD CONSTRAINT "evidence_link_club_id_evidence_id_fkey" FOREIGN KEY ("club_id", "evidence_id") REFERENCES "evidence"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "evidence_link" ADD CONSTRAINT "evidence_link_club_id_car_id_fkey" FOREIGN KEY ("club_id", "car_id") REFERENCES "car"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "evidence_link" ADD CONSTRAINT "evidence_link_club_id_as_built_value_id_fkey" FOREIGN KEY ("club_id", "as_built_value_id") REFERENCES "as_built_value"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "evidence_link" ADD CONSTRAINT "evidence_link_club_id_modification_id_fkey" FOREIGN KEY ("club_id", "modification_id") REFERENCES "modification"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "evidence_link" ADD CONSTRAINT "evidence_link_club_id_setting_sheet_id_fkey" FOREIGN KEY ("club_id", "setting_sheet_id") REFERENCES "setting_sheet"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "evidence_link" ADD CONSTRAINT "evidence_link_club_id_finding_id_fkey" FOREIGN KEY ("club_id", "finding_id") REFERENCES "finding"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "import_run" ADD CONSTRAINT "import_run_club_id_source_id_fkey" FOREIGN KEY ("club_id", "source_id") REFERENCES "source"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "keeper" ADD CONSTRAINT "keeper_club_id_membership_id_fkey" FOREIGN KEY ("club_id", "membership_id") REFERENCES "membership"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "keepership" ADD CONSTRAINT "keepership_club_id_car_id_fkey" FOREIGN KEY ("club_id", "car_id") REFERENCES "car"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "keepership" ADD CONSTRAINT "keepership_club_id_keeper_id_fkey" FOREIGN KEY ("club_id", "keeper_id") REFERENCES "keeper"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "keepership" ADD CONSTRAINT "keepership_club_id_source_id_fkey" FOREIGN KEY ("club_id", "source_id") REFERENCES "source"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "submission" ADD CONSTRAINT "submission_club_id_car_id_fkey" FOREIGN KEY ("club_id", "car_id") REFERENCES "car"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "submission" ADD CONSTRAINT "submission_club_id_supersedes_id_fkey" FOREIGN KEY ("club_id", "supersedes_id") REFERENCES "submission"("club_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "submission_message" ADD CONSTRAINT "submission_message_club_id_submission_id_fkey" FOREIGN KEY ("club_id", "submission_id") REFERENCES "submission"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "modification" ADD CONSTRAINT "modification_club_id_submission_id_fkey" FOREIGN KEY ("club_id", "submission_id") REFERENCES "submission"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "modification" ADD CONSTRAINT "modification_club_id_car_id_fkey" FOREIGN KEY ("club_id", "car_id") REFERENCES "car"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "modification" ADD CONSTRAINT "modification_club_id_source_id_fkey" FOREIGN KEY ("club_id", "source_id") REFERENCES "source"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "modification_change" ADD CONSTRAINT "modification_change_club_id_modification_id_fkey" FOREIGN KEY ("club_id", "modification_id") REFERENCES "modification"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "modification_fastener" ADD CONSTRAINT "modification_fastener_club_id_modification_id_fkey" FOREIGN KEY ("club_id", "modification_id") REFERENCES "modification"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "series" ADD CONSTRAINT "series_club_id_marque_id_fkey" FOREIGN KEY ("club_id", "marque_id") REFERENCES "marque"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "series_option" ADD CONSTRAINT "series_option_club_id_series_id_fkey" FOREIGN KEY ("club_id", "series_id") REFERENCES "series"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "setting_sheet" ADD CONSTRAINT "setting_sheet_club_id_car_id_fkey" FOREIGN KEY ("club_id", "car_id") REFERENCES "car"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "setting_sheet" ADD CONSTRAINT "setting_sheet_club_id_submission_id_fkey" FOREIGN KEY ("club_id", "submission_id") REFERENCES "submission"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "setting_sheet" ADD CONSTRAINT "setting_sheet_club_id_source_id_fkey" FOREIGN KEY ("club_id", "source_id") REFERENCES "source"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reading" ADD CONSTRAINT "reading_club_id_setting_sheet_id_fkey" FOREIGN KEY ("club_id", "setting_sheet_id") REFERENCES "setting_sheet"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reading" ADD CONSTRAINT "reading_club_id_instrument_id_fkey" FOREIGN KEY ("club_id", "instrument_id") REFERENCES "instrument"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "session" ADD CONSTRAINT "session_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "credential" ADD CONSTRAINT "credential_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "specification" ADD CONSTRAINT "specification_club_id_series_id_fkey" FOREIGN KEY ("club_id", "series_id") REFERENCES "series"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "specification_entry" ADD CONSTRAINT "specification_entry_club_id_specification_id_fkey" FOREIGN KEY ("club_id", "specification_id") REFERENCES "specification"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "specification_entry" ADD CONSTRAINT "specification_entry_club_id_source_id_fkey" FOREIGN KEY ("club_id", "source_id") REFERENCES "source"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "specification_alternative" ADD CONSTRAINT "specification_alternative_club_id_entry_id_fkey" FOREIGN KEY ("club_id", "entry_id") REFERENCES "specification_entry"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "specification_alternative" ADD CONSTRAINT "specification_alternative_club_id_source_id_fkey" FOREIGN KEY ("club_id", "source_id") REFERENCES "source"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

COMMENT ON TABLE "car" IS 'One car: one chassis as the register files it. Two cars may claim one number.';
COMMENT ON COLUMN "car"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "car"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "car"."series_id" IS 'Series it belongs to; empty while not settled.';
COMMENT ON COLUMN "car"."chassis" IS 'Chassis number it is filed under, as the register writes it.';
COMMENT ON COLUMN "car"."chassis_key" IS 'Chassis number in capitals without spaces, dashes and dots, for finding.';
COMMENT ON COLUMN "car"."claim" IS '1, or 2 and up for a further car that claims the same number.';
COMMENT ON COLUMN "car"."serial" IS 'Serial read from the number; empty when it does not fit the series'' pattern.';
COMMENT ON COLUMN "car"."built_text" IS 'Build date, as written ("c. 1971", "before March 1972").';
COMMENT ON COLUMN "car"."built_earliest" IS 'Build date: earliest day the text allows.';
COMMENT ON COLUMN "car"."built_latest" IS 'Build date: latest day the text allows.';
COMMENT ON COLUMN "car"."first_registered_text" IS 'First registration, as written ("c. 1971", "before March 1972").';
COMMENT ON COLUMN "car"."first_registered_earliest" IS 'First registration: earliest day the text allows.';
COMMENT ON COLUMN "car"."first_registered_latest" IS 'First registration: latest day the text allows.';
COMMENT ON COLUMN "car"."remarks" IS 'What the row of the register said that found no field, kept to the letter.';
COMMENT ON COLUMN "car"."version" IS 'Counts up with every accepted change; guards against two editors.';
COMMENT ON COLUMN "car"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TYPE "IdentityKind" IS 'What a number identifies.';
COMMENT ON TYPE "IdentityStanding" IS 'How a number on a car stands.';
COMMENT ON TABLE "car_identity" IS 'A number or mark a car bears or bore, over time.';
COMMENT ON COLUMN "car_identity"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "car_identity"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "car_identity"."car_id" IS 'The car.';
COMMENT ON COLUMN "car_identity"."kind" IS 'Chassis, commission, engine, body number or registration mark.';
COMMENT ON COLUMN "car_identity"."number" IS 'As written.';
COMMENT ON COLUMN "car_identity"."number_key" IS 'In capitals without spaces, dashes and dots, for finding.';
COMMENT ON COLUMN "car_identity"."standing" IS 'Accepted, disputed or re-stamped.';
COMMENT ON COLUMN "car_identity"."from_text" IS 'Borne from, as written ("c. 1971", "before March 1972").';
COMMENT ON COLUMN "car_identity"."from_earliest" IS 'Borne from: earliest day the text allows.';
COMMENT ON COLUMN "car_identity"."from_latest" IS 'Borne from: latest day the text allows.';
COMMENT ON COLUMN "car_identity"."to_text" IS 'Borne until, as written ("c. 1971", "before March 1972").';
COMMENT ON COLUMN "car_identity"."to_earliest" IS 'Borne until: earliest day the text allows.';
COMMENT ON COLUMN "car_identity"."to_latest" IS 'Borne until: latest day the text allows.';
COMMENT ON COLUMN "car_identity"."source_id" IS 'Source that supports it.';
COMMENT ON COLUMN "car_identity"."locus" IS 'Page, clause or sheet within the source.';
COMMENT ON COLUMN "car_identity"."trust" IS 'How far it is trusted.';
COMMENT ON COLUMN "car_identity"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TYPE "CarStatus" IS 'What has become of a car.';
COMMENT ON TABLE "car_status_span" IS 'What had become of a car over a span of time; the open span is its status now.';
COMMENT ON COLUMN "car_status_span"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "car_status_span"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "car_status_span"."car_id" IS 'The car.';
COMMENT ON COLUMN "car_status_span"."status" IS 'In use, under restoration, laid up, …';
COMMENT ON COLUMN "car_status_span"."from_text" IS 'Since, as written ("c. 1971", "before March 1972").';
COMMENT ON COLUMN "car_status_span"."from_earliest" IS 'Since: earliest day the text allows.';
COMMENT ON COLUMN "car_status_span"."from_latest" IS 'Since: latest day the text allows.';
COMMENT ON COLUMN "car_status_span"."to" IS 'Last day of the span; empty while it is the present one.';
COMMENT ON COLUMN "car_status_span"."source_id" IS 'Source that supports it.';
COMMENT ON COLUMN "car_status_span"."locus" IS 'Page, clause or sheet within the source.';
COMMENT ON COLUMN "car_status_span"."trust" IS 'How far it is trusted.';
COMMENT ON COLUMN "car_status_span"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TABLE "car_option" IS 'An option a car was built with.';
COMMENT ON COLUMN "car_option"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "car_option"."car_id" IS 'The car.';
COMMENT ON COLUMN "car_option"."code" IS 'The series'' option code.';
COMMENT ON TABLE "as_built_value" IS 'A value the works'' records, or inference, give for one chassis.';
COMMENT ON COLUMN "as_built_value"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "as_built_value"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "as_built_value"."car_id" IS 'The car.';
COMMENT ON COLUMN "as_built_value"."characteristic" IS 'Characteristic''s key.';
COMMENT ON COLUMN "as_built_value"."side" IS 'Side.';
COMMENT ON COLUMN "as_built_value"."value_kind" IS 'Value: kind (quantity, choice, designation, text, date, absent).';
COMMENT ON COLUMN "as_built_value"."entered" IS 'Value: what was entered, to the letter.';
COMMENT ON COLUMN "as_built_value"."number" IS 'Value: SI number of a quantity.';
COMMENT ON COLUMN "as_built_value"."resolution" IS 'Value: resolution the entry implies, SI.';
COMMENT ON COLUMN "as_built_value"."text" IS 'Value: code of a choice, canonical designation, text, or ISO date.';
COMMENT ON COLUMN "as_built_value"."source_id" IS 'Source that supports it.';
COMMENT ON COLUMN "as_built_value"."locus" IS 'Page, clause or sheet within the source.';
COMMENT ON COLUMN "as_built_value"."trust" IS 'How far it is trusted.';
COMMENT ON COLUMN "as_built_value"."recorded_at" IS 'When the row was recorded.';
COMMENT ON COLUMN "as_built_value"."superseded_at" IS 'When a correction took its place; empty while it stands.';
COMMENT ON TABLE "history_note" IS 'Something known of a car''s life, with its date.';
COMMENT ON COLUMN "history_note"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "history_note"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "history_note"."car_id" IS 'The car.';
COMMENT ON COLUMN "history_note"."on_text" IS 'When, as written ("c. 1971", "before March 1972").';
COMMENT ON COLUMN "history_note"."on_earliest" IS 'When: earliest day the text allows.';
COMMENT ON COLUMN "history_note"."on_latest" IS 'When: latest day the text allows.';
COMMENT ON COLUMN "history_note"."text" IS 'What happened; no personal data.';
COMMENT ON COLUMN "history_note"."source_id" IS 'Source that supports it.';
COMMENT ON COLUMN "history_note"."locus" IS 'Page, clause or sheet within the source.';
COMMENT ON COLUMN "history_note"."trust" IS 'How far it is trusted.';
COMMENT ON COLUMN "history_note"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TYPE "Origin" IS 'Where the present value of a characteristic comes from.';
COMMENT ON TABLE "current_value" IS 'Present value of a characteristic, worked out from the records; a command rebuilds and proves it.';
COMMENT ON COLUMN "current_value"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "current_value"."car_id" IS 'The car.';
COMMENT ON COLUMN "current_value"."characteristic" IS 'Characteristic''s key.';
COMMENT ON COLUMN "current_value"."side" IS 'Side.';
COMMENT ON COLUMN "current_value"."value_kind" IS 'Value: kind (quantity, choice, designation, text, date, absent).';
COMMENT ON COLUMN "current_value"."entered" IS 'Value: what was entered, to the letter.';
COMMENT ON COLUMN "current_value"."number" IS 'Value: SI number of a quantity.';
COMMENT ON COLUMN "current_value"."resolution" IS 'Value: resolution the entry implies, SI.';
COMMENT ON COLUMN "current_value"."text" IS 'Value: code of a choice, canonical designation, text, or ISO date.';
COMMENT ON COLUMN "current_value"."origin" IS 'Specification, as built, modification or reading.';
COMMENT ON COLUMN "current_value"."origin_id" IS 'Row it comes from.';
COMMENT ON COLUMN "current_value"."since" IS 'Since when the record says so.';
COMMENT ON COLUMN "current_value"."verdict" IS 'Against factory.';
COMMENT ON TYPE "ClubKind" IS 'An owners'' club or a fleet: one tenancy.';
COMMENT ON TYPE "Role" IS 'What a member may do.';
COMMENT ON TABLE "club" IS 'One tenancy: an owners'' club or a fleet. Stands outside the clubs'' rows, as their root.';
COMMENT ON COLUMN "club"."id" IS 'UUIDv7.';
COMMENT ON COLUMN "club"."slug" IS 'Short name in addresses and commands.';
COMMENT ON COLUMN "club"."name" IS 'Full name.';
COMMENT ON COLUMN "club"."kind" IS 'Owners'' club or fleet.';
COMMENT ON COLUMN "club"."unit_system" IS 'Units shown first: metric or imperial.';
COMMENT ON COLUMN "club"."side_words" IS 'Words for the sides: leftRight or nearOff.';
COMMENT ON COLUMN "club"."created_at" IS 'When the club was made.';
COMMENT ON TABLE "membership" IS 'A person''s belonging to a club, with what they may do there.';
COMMENT ON COLUMN "membership"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "membership"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "membership"."person_id" IS 'Who belongs.';
COMMENT ON COLUMN "membership"."roles" IS 'What they may do; at least one.';
COMMENT ON COLUMN "membership"."joined_at" IS 'When they joined.';
COMMENT ON COLUMN "membership"."left_at" IS 'When they left; empty while a member.';
COMMENT ON TABLE "invitation" IS 'A link by which somebody may join a club. Only its hash is kept.';
COMMENT ON COLUMN "invitation"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "invitation"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "invitation"."email" IS 'Address invited, lower case.';
COMMENT ON COLUMN "invitation"."roles" IS 'Roles given on acceptance.';
COMMENT ON COLUMN "invitation"."token_hash" IS 'SHA-256 (hex) of the token in the link.';
COMMENT ON COLUMN "invitation"."invited_by_id" IS 'Member who invited.';
COMMENT ON COLUMN "invitation"."expires_at" IS 'When the link ends.';
COMMENT ON COLUMN "invitation"."accepted_at" IS 'When it was used; a link works once.';
COMMENT ON COLUMN "invitation"."revoked_at" IS 'When a registrar took it back.';
COMMENT ON COLUMN "invitation"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TABLE "rule_set" IS 'One version of the checks, limits and classes an organiser uses.';
COMMENT ON COLUMN "rule_set"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "rule_set"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "rule_set"."slug" IS 'Short name in addresses and commands.';
COMMENT ON COLUMN "rule_set"."version" IS 'Version, from 1.';
COMMENT ON COLUMN "rule_set"."name" IS 'Full name.';
COMMENT ON COLUMN "rule_set"."edition" IS 'Edition or year as the organiser gives it.';
COMMENT ON COLUMN "rule_set"."copied_from_id" IS 'Version it was copied from.';
COMMENT ON COLUMN "rule_set"."note" IS 'Free note.';
COMMENT ON COLUMN "rule_set"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TABLE "rule_check" IS 'One thing to look at, with when it applies and where it comes from.';
COMMENT ON COLUMN "rule_check"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "rule_check"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "rule_check"."rule_set_id" IS 'Rule set it belongs to.';
COMMENT ON COLUMN "rule_check"."code" IS 'Stable code within the rule set.';
COMMENT ON COLUMN "rule_check"."ordinal" IS 'Order within its station.';
COMMENT ON COLUMN "rule_check"."station" IS 'Station of the walk round the car.';
COMMENT ON COLUMN "rule_check"."assembly" IS 'Assembly it looks at.';
COMMENT ON COLUMN "rule_check"."text" IS 'What to look at, in the imperative.';
COMMENT ON COLUMN "rule_check"."method" IS 'How to look, where it is not plain.';
COMMENT ON COLUMN "rule_check"."criterion" IS 'What makes it pass, as the register''s schema reads it.';
COMMENT ON COLUMN "rule_check"."condition" IS 'When it applies: a condition.';
COMMENT ON COLUMN "rule_check"."why" IS 'Why it is on the sheet, with places for the figures.';
COMMENT ON COLUMN "rule_check"."caution" IS 'Caution to read before doing it.';
COMMENT ON COLUMN "rule_check"."source_title" IS 'Publication it comes from.';
COMMENT ON COLUMN "rule_check"."source_edition" IS 'Edition of the publication.';
COMMENT ON COLUMN "rule_check"."source_clause" IS 'Clause or page.';
COMMENT ON TABLE "event_class" IS 'A class cars are entered in.';
COMMENT ON COLUMN "event_class"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "event_class"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "event_class"."rule_set_id" IS 'Rule set it belongs to.';
COMMENT ON COLUMN "event_class"."code" IS 'Code on entry lists.';
COMMENT ON COLUMN "event_class"."name" IS 'Full name.';
COMMENT ON COLUMN "event_class"."eligibility" IS 'Which cars may enter: a condition.';
COMMENT ON TABLE "rule_limit" IS 'A limit an organiser sets on a characteristic, for all classes or one.';
COMMENT ON COLUMN "rule_limit"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "rule_limit"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "rule_limit"."rule_set_id" IS 'Rule set it belongs to.';
COMMENT ON COLUMN "rule_limit"."event_class_id" IS 'Class it is for; empty for all.';
COMMENT ON COLUMN "rule_limit"."characteristic" IS 'Characteristic''s key.';
COMMENT ON COLUMN "rule_limit"."side" IS 'Side.';
COMMENT ON COLUMN "rule_limit"."lower" IS 'Lower limit, SI, included.';
COMMENT ON COLUMN "rule_limit"."upper" IS 'Upper limit, SI, included.';
COMMENT ON COLUMN "rule_limit"."source_title" IS 'Publication it comes from.';
COMMENT ON COLUMN "rule_limit"."source_clause" IS 'Clause or page.';
COMMENT ON TABLE "event" IS 'A track day, hill climb or test day with scrutineering.';
COMMENT ON COLUMN "event"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "event"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "event"."slug" IS 'Short name in addresses and commands.';
COMMENT ON COLUMN "event"."name" IS 'Full name.';
COMMENT ON COLUMN "event"."on" IS 'First day.';
COMMENT ON COLUMN "event"."venue" IS 'Where.';
COMMENT ON COLUMN "event"."rule_set_id" IS 'Rule set in force.';
COMMENT ON COLUMN "event"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TABLE "entry" IS 'A car entered in an event.';
COMMENT ON COLUMN "entry"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "entry"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "entry"."event_id" IS 'The event.';
COMMENT ON COLUMN "entry"."running_number" IS 'Number on the car''s side, as displayed.';
COMMENT ON COLUMN "entry"."running_order" IS 'Place in running order.';
COMMENT ON COLUMN "entry"."car_id" IS 'The car; empty when it is not on the register.';
COMMENT ON COLUMN "entry"."described_as" IS 'What the entry list said of the car.';
COMMENT ON COLUMN "entry"."driver" IS 'Driver''s name. Personal data.';
COMMENT ON COLUMN "entry"."group" IS 'Group or session.';
COMMENT ON COLUMN "entry"."event_class_id" IS 'Class entered in.';
COMMENT ON COLUMN "entry"."withdrawn_at" IS 'When it was withdrawn.';
COMMENT ON COLUMN "entry"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TABLE "printed_sheet" IS 'A sheet as it was printed: from model and layout version the same bytes come again.';
COMMENT ON COLUMN "printed_sheet"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "printed_sheet"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "printed_sheet"."entry_id" IS 'The entry it was printed for.';
COMMENT ON COLUMN "printed_sheet"."layout_version" IS 'Version of the drawing.';
COMMENT ON COLUMN "printed_sheet"."record_hash" IS 'Hash of the record it was made from, hex.';
COMMENT ON COLUMN "printed_sheet"."model" IS 'The finished model.';
COMMENT ON COLUMN "printed_sheet"."printed_by_id" IS 'Person who printed it; empty for the command line.';
COMMENT ON COLUMN "printed_sheet"."printed_at" IS 'When it was printed.';
COMMENT ON TYPE "FindingResult" IS 'Scrutineer''s result for one check.';
COMMENT ON TABLE "finding" IS 'What a scrutineer found at one check.';
COMMENT ON COLUMN "finding"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "finding"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "finding"."entry_id" IS 'The entry looked at.';
COMMENT ON COLUMN "finding"."printed_sheet_id" IS 'Sheet it was written on; empty when taken without one.';
COMMENT ON COLUMN "finding"."check_code" IS 'Code of the check.';
COMMENT ON COLUMN "finding"."result" IS 'Pass, advise, refuse or not applicable.';
COMMENT ON COLUMN "finding"."reading_value_kind" IS 'Reading taken: kind (quantity, choice, designation, text, date, absent).';
COMMENT ON COLUMN "finding"."reading_entered" IS 'Reading taken: what was entered, to the letter.';
COMMENT ON COLUMN "finding"."reading_number" IS 'Reading taken: SI number of a quantity.';
COMMENT ON COLUMN "finding"."reading_resolution" IS 'Reading taken: resolution the entry implies, SI.';
COMMENT ON COLUMN "finding"."reading_text" IS 'Reading taken: code of a choice, canonical designation, text, or ISO date.';
COMMENT ON COLUMN "finding"."note" IS 'Note.';
COMMENT ON COLUMN "finding"."found_by_id" IS 'Scrutineer.';
COMMENT ON COLUMN "finding"."found_at" IS 'When, by the device''s clock.';
COMMENT ON COLUMN "finding"."client_key" IS 'Key the device made, so that sending twice is one finding.';
COMMENT ON COLUMN "finding"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TYPE "DecisionOutcome" IS 'Outcome of scrutineering.';
COMMENT ON TABLE "entry_decision" IS 'A scrutineer''s decision on an entry; the latest counts.';
COMMENT ON COLUMN "entry_decision"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "entry_decision"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "entry_decision"."entry_id" IS 'The entry.';
COMMENT ON COLUMN "entry_decision"."outcome" IS 'Pass, pass with advice, refused.';
COMMENT ON COLUMN "entry_decision"."decided_by_id" IS 'Scrutineer.';
COMMENT ON COLUMN "entry_decision"."decided_at" IS 'When, by the device''s clock.';
COMMENT ON COLUMN "entry_decision"."note" IS 'Note.';
COMMENT ON COLUMN "entry_decision"."client_key" IS 'Key the device made, so that sending twice is one decision.';
COMMENT ON COLUMN "entry_decision"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TABLE "dated_item" IS 'Something on a car that is valid until a day: harness, extinguisher, inspection.';
COMMENT ON COLUMN "dated_item"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "dated_item"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "dated_item"."car_id" IS 'The car.';
COMMENT ON COLUMN "dated_item"."kind" IS 'harness, extinguisher, seat, inspection, …';
COMMENT ON COLUMN "dated_item"."label" IS 'What it is.';
COMMENT ON COLUMN "dated_item"."valid_from" IS 'First day it is valid.';
COMMENT ON COLUMN "dated_item"."valid_to" IS 'Last day it is valid; empty when not known.';
COMMENT ON COLUMN "dated_item"."source_id" IS 'Source that supports it.';
COMMENT ON COLUMN "dated_item"."locus" IS 'Page, clause or sheet within the source.';
COMMENT ON COLUMN "dated_item"."trust" IS 'How far it is trusted.';
COMMENT ON COLUMN "dated_item"."recorded_at" IS 'When the row was recorded.';
COMMENT ON COLUMN "dated_item"."replaced_at" IS 'When it was replaced; empty while fitted.';
COMMENT ON TABLE "evidence" IS 'A photograph or document, stored outside the database under its content''s hash.';
COMMENT ON COLUMN "evidence"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "evidence"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "evidence"."sha256" IS 'SHA-256 of the content, hex.';
COMMENT ON COLUMN "evidence"."media_type" IS 'Media type found in the content, not the one claimed.';
COMMENT ON COLUMN "evidence"."bytes" IS 'Size in bytes.';
COMMENT ON COLUMN "evidence"."file_name" IS 'File name it came with.';
COMMENT ON COLUMN "evidence"."caption" IS 'What it shows.';
COMMENT ON COLUMN "evidence"."quarter_turns" IS 'Quarter turns clockwise to show it upright.';
COMMENT ON COLUMN "evidence"."taken_text" IS 'When it was taken, as written ("c. 1971", "before March 1972").';
COMMENT ON COLUMN "evidence"."taken_earliest" IS 'When it was taken: earliest day the text allows.';
COMMENT ON COLUMN "evidence"."taken_latest" IS 'When it was taken: latest day the text allows.';
COMMENT ON COLUMN "evidence"."added_by_id" IS 'Person who added it.';
COMMENT ON COLUMN "evidence"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TABLE "evidence_link" IS 'What a piece of evidence supports; exactly one target.';
COMMENT ON COLUMN "evidence_link"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "evidence_link"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "evidence_link"."evidence_id" IS 'The evidence.';
COMMENT ON COLUMN "evidence_link"."car_id" IS 'A car as a whole.';
COMMENT ON COLUMN "evidence_link"."as_built_value_id" IS 'An as-built value.';
COMMENT ON COLUMN "evidence_link"."modification_id" IS 'A modification.';
COMMENT ON COLUMN "evidence_link"."setting_sheet_id" IS 'A setting sheet.';
COMMENT ON COLUMN "evidence_link"."finding_id" IS 'A finding.';
COMMENT ON COLUMN "evidence_link"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TABLE "journal_entry" IS 'One accepted change: who, what, when, why, before and after. Append-only, chained by hash per club; no personal data.';
COMMENT ON COLUMN "journal_entry"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "journal_entry"."sequence" IS 'Place in the club''s chain, from 1; given by the database.';
COMMENT ON COLUMN "journal_entry"."at" IS 'When it was recorded; given by the database.';
COMMENT ON COLUMN "journal_entry"."person_id" IS 'Person who did it; empty for the command line.';
COMMENT ON COLUMN "journal_entry"."action" IS 'What was done, e.g. `car.import`.';
COMMENT ON COLUMN "journal_entry"."noun" IS 'Kind of record it was done to.';
COMMENT ON COLUMN "journal_entry"."noun_id" IS 'The record it was done to.';
COMMENT ON COLUMN "journal_entry"."car_id" IS 'Car concerned, if any.';
COMMENT ON COLUMN "journal_entry"."run_id" IS 'Import or other run it was part of.';
COMMENT ON COLUMN "journal_entry"."reason" IS 'Why.';
COMMENT ON COLUMN "journal_entry"."before" IS 'The record before; empty when made.';
COMMENT ON COLUMN "journal_entry"."after" IS 'The record after; empty when taken away.';
COMMENT ON COLUMN "journal_entry"."previous_hash" IS 'Hash of the entry before, hex; given by the database.';
COMMENT ON COLUMN "journal_entry"."hash" IS 'SHA-256 over previous hash and content, hex; given by the database.';
COMMENT ON TABLE "import_run" IS 'One reading-in of a file.';
COMMENT ON COLUMN "import_run"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "import_run"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "import_run"."file_name" IS 'Name of the file.';
COMMENT ON COLUMN "import_run"."sha256" IS 'SHA-256 of the file, hex.';
COMMENT ON COLUMN "import_run"."source_id" IS 'Source that its rows are recorded under.';
COMMENT ON COLUMN "import_run"."made_by_id" IS 'Person who read it in; empty for the command line.';
COMMENT ON COLUMN "import_run"."rows_read" IS 'Rows read.';
COMMENT ON COLUMN "import_run"."cars_added" IS 'Cars added.';
COMMENT ON COLUMN "import_run"."cars_changed" IS 'Cars changed.';
COMMENT ON COLUMN "import_run"."rows_refused" IS 'Rows refused.';
COMMENT ON COLUMN "import_run"."recorded_at" IS 'When the row was recorded.';
COMMENT ON COLUMN "import_run"."undone_at" IS 'When it was undone as one step.';
COMMENT ON TABLE "saved_filter" IS 'A condition somebody keeps under a name.';
COMMENT ON COLUMN "saved_filter"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "saved_filter"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "saved_filter"."name" IS 'Name.';
COMMENT ON COLUMN "saved_filter"."condition" IS 'The condition.';
COMMENT ON COLUMN "saved_filter"."person_id" IS 'Whose it is.';
COMMENT ON COLUMN "saved_filter"."shared" IS 'Shown to the whole club.';
COMMENT ON COLUMN "saved_filter"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TABLE "keeper" IS 'Somebody who keeps or kept a car. Personal data.';
COMMENT ON COLUMN "keeper"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "keeper"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "keeper"."name" IS 'Name; empty once erased.';
COMMENT ON COLUMN "keeper"."address" IS 'Postal address; empty once erased.';
COMMENT ON COLUMN "keeper"."email" IS 'E-mail; empty once erased.';
COMMENT ON COLUMN "keeper"."phone" IS 'Telephone; empty once erased.';
COMMENT ON COLUMN "keeper"."membership_id" IS 'Membership, when the keeper signs in here.';
COMMENT ON COLUMN "keeper"."erased_at" IS 'When the personal data were erased.';
COMMENT ON COLUMN "keeper"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TABLE "keepership" IS 'Who kept which car, and when.';
COMMENT ON COLUMN "keepership"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "keepership"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "keepership"."car_id" IS 'The car.';
COMMENT ON COLUMN "keepership"."keeper_id" IS 'The keeper.';
COMMENT ON COLUMN "keepership"."from_text" IS 'Kept from, as written ("c. 1971", "before March 1972").';
COMMENT ON COLUMN "keepership"."from_earliest" IS 'Kept from: earliest day the text allows.';
COMMENT ON COLUMN "keepership"."from_latest" IS 'Kept from: latest day the text allows.';
COMMENT ON COLUMN "keepership"."to" IS 'Last day; empty while the keeper has it.';
COMMENT ON COLUMN "keepership"."source_id" IS 'Source that supports it.';
COMMENT ON COLUMN "keepership"."locus" IS 'Page, clause or sheet within the source.';
COMMENT ON COLUMN "keepership"."trust" IS 'How far it is trusted.';
COMMENT ON COLUMN "keepership"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TYPE "SubmissionStatus" IS 'Where a submission stands.';
COMMENT ON TABLE "submission" IS 'What a member hands in about a car, until a registrar decides.';
COMMENT ON COLUMN "submission"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "submission"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "submission"."car_id" IS 'The car.';
COMMENT ON COLUMN "submission"."status" IS 'Where it stands.';
COMMENT ON COLUMN "submission"."made_by_id" IS 'Person who made it; empty for an import.';
COMMENT ON COLUMN "submission"."client_key" IS 'Key the client made, so that sending twice is one submission.';
COMMENT ON COLUMN "submission"."version" IS 'Counts up with every step; guards against two editors.';
COMMENT ON COLUMN "submission"."submitted_at" IS 'When it was handed in.';
COMMENT ON COLUMN "submission"."decided_at" IS 'When it was decided.';
COMMENT ON COLUMN "submission"."decided_by_id" IS 'Who decided; empty for an import.';
COMMENT ON COLUMN "submission"."decision_reason" IS 'The reviewer''s reason.';
COMMENT ON COLUMN "submission"."supersedes_id" IS 'Accepted submission that this one takes the place of.';
COMMENT ON COLUMN "submission"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TABLE "submission_message" IS 'A question or an answer about a submission.';
COMMENT ON COLUMN "submission_message"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "submission_message"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "submission_message"."submission_id" IS 'The submission.';
COMMENT ON COLUMN "submission_message"."person_id" IS 'Who wrote it.';
COMMENT ON COLUMN "submission_message"."text" IS 'What was written.';
COMMENT ON COLUMN "submission_message"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TABLE "modification" IS 'What was changed on a car, on one occasion.';
COMMENT ON COLUMN "modification"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "modification"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "modification"."submission_id" IS 'Submission it was handed in with.';
COMMENT ON COLUMN "modification"."car_id" IS 'The car.';
COMMENT ON COLUMN "modification"."fitted_text" IS 'When it was fitted, as written ("c. 1971", "before March 1972").';
COMMENT ON COLUMN "modification"."fitted_earliest" IS 'When it was fitted: earliest day the text allows.';
COMMENT ON COLUMN "modification"."fitted_latest" IS 'When it was fitted: latest day the text allows.';
COMMENT ON COLUMN "modification"."sequence" IS 'Order of acceptance within the car.';
COMMENT ON COLUMN "modification"."reason" IS 'Why it was changed.';
COMMENT ON COLUMN "modification"."donor" IS 'Donor car or supplier''s part, in the owner''s words; no personal data.';
COMMENT ON COLUMN "modification"."odometer" IS 'Odometer at the time, metres.';
COMMENT ON COLUMN "modification"."reversible" IS 'Can be put back; empty when not said.';
COMMENT ON COLUMN "modification"."old_part_kept" IS 'The old part is kept; empty when not said.';
COMMENT ON COLUMN "modification"."note" IS 'Free note.';
COMMENT ON COLUMN "modification"."source_id" IS 'Source that supports it.';
COMMENT ON COLUMN "modification"."locus" IS 'Page, clause or sheet within the source.';
COMMENT ON COLUMN "modification"."trust" IS 'How far it is trusted.';
COMMENT ON COLUMN "modification"."recorded_at" IS 'When the row was recorded.';
COMMENT ON COLUMN "modification"."superseded_at" IS 'When a superseding submission took its place; empty while it stands.';
COMMENT ON TABLE "modification_change" IS 'Before and after of one characteristic.';
COMMENT ON COLUMN "modification_change"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "modification_change"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "modification_change"."modification_id" IS 'The modification.';
COMMENT ON COLUMN "modification_change"."characteristic" IS 'Characteristic''s key.';
COMMENT ON COLUMN "modification_change"."side" IS 'Side.';
COMMENT ON COLUMN "modification_change"."before_value_kind" IS 'Before: kind (quantity, choice, designation, text, date, absent).';
COMMENT ON COLUMN "modification_change"."before_entered" IS 'Before: what was entered, to the letter.';
COMMENT ON COLUMN "modification_change"."before_number" IS 'Before: SI number of a quantity.';
COMMENT ON COLUMN "modification_change"."before_resolution" IS 'Before: resolution the entry implies, SI.';
COMMENT ON COLUMN "modification_change"."before_text" IS 'Before: code of a choice, canonical designation, text, or ISO date.';
COMMENT ON COLUMN "modification_change"."after_value_kind" IS 'After: kind (quantity, choice, designation, text, date, absent).';
COMMENT ON COLUMN "modification_change"."after_entered" IS 'After: what was entered, to the letter.';
COMMENT ON COLUMN "modification_change"."after_number" IS 'After: SI number of a quantity.';
COMMENT ON COLUMN "modification_change"."after_resolution" IS 'After: resolution the entry implies, SI.';
COMMENT ON COLUMN "modification_change"."after_text" IS 'After: code of a choice, canonical designation, text, or ISO date.';
COMMENT ON TABLE "modification_fastener" IS 'A fastener used with a modification.';
COMMENT ON COLUMN "modification_fastener"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "modification_fastener"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "modification_fastener"."modification_id" IS 'The modification.';
COMMENT ON COLUMN "modification_fastener"."place" IS 'Where it sits, e.g. "rear link to bracket, left".';
COMMENT ON COLUMN "modification_fastener"."thread" IS 'Thread designation, e.g. M10x1.25.';
COMMENT ON COLUMN "modification_fastener"."grade" IS 'Grade designation, e.g. 10.9.';
COMMENT ON COLUMN "modification_fastener"."length" IS 'Length under the head, metres.';
COMMENT ON COLUMN "modification_fastener"."spacer_stack" IS 'Height of the stack of spacers it carries, metres.';
COMMENT ON COLUMN "modification_fastener"."count" IS 'How many.';
COMMENT ON COLUMN "modification_fastener"."note" IS 'Free note.';
COMMENT ON TYPE "Trust" IS 'How far a statement is trusted.';
COMMENT ON TYPE "Side" IS 'Side of the car, seen from the driver''s seat; `whole` where it has one.';
COMMENT ON TYPE "ValueKind" IS 'Kind of a recorded value.';
COMMENT ON TYPE "Verdict" IS 'Outcome of comparing a characteristic with a baseline.';
COMMENT ON TABLE "marque" IS 'A maker''s name the club looks after.';
COMMENT ON COLUMN "marque"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "marque"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "marque"."slug" IS 'Short name in addresses.';
COMMENT ON COLUMN "marque"."name" IS 'Full name.';
COMMENT ON COLUMN "marque"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TABLE "series" IS 'A marque''s model and mark, with its chassis-number pattern and build period.';
COMMENT ON COLUMN "series"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "series"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "series"."marque_id" IS 'Marque it belongs to.';
COMMENT ON COLUMN "series"."slug" IS 'Short name in addresses, files and conditions.';
COMMENT ON COLUMN "series"."name" IS 'Full name, e.g. "Series 2".';
COMMENT ON COLUMN "series"."ordinal" IS 'Order of appearance.';
COMMENT ON COLUMN "series"."number_prefix" IS 'Characters before the serial in a chassis number.';
COMMENT ON COLUMN "series"."number_digits" IS 'Digits of the serial.';
COMMENT ON COLUMN "series"."first_serial" IS 'First serial, inclusive.';
COMMENT ON COLUMN "series"."last_serial" IS 'Last serial, inclusive.';
COMMENT ON COLUMN "series"."number_suffixes" IS 'Suffixes a chassis number may end in (body, steering side).';
COMMENT ON COLUMN "series"."built_from" IS 'First day of build.';
COMMENT ON COLUMN "series"."built_to" IS 'Last day of build.';
COMMENT ON COLUMN "series"."built_count" IS 'How many were built, if known.';
COMMENT ON COLUMN "series"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TABLE "series_option" IS 'An option the works offered on a series.';
COMMENT ON COLUMN "series_option"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "series_option"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "series_option"."series_id" IS 'Series it was offered on.';
COMMENT ON COLUMN "series_option"."code" IS 'Code in build records.';
COMMENT ON COLUMN "series_option"."label" IS 'What it was.';
COMMENT ON TABLE "characteristic" IS 'A club''s own characteristic, beside the built-in dictionary.';
COMMENT ON COLUMN "characteristic"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "characteristic"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "characteristic"."key" IS 'Dotted key, distinct from every built-in one.';
COMMENT ON COLUMN "characteristic"."label" IS 'Plain label.';
COMMENT ON COLUMN "characteristic"."assembly" IS 'Assembly it belongs to.';
COMMENT ON COLUMN "characteristic"."sided" IS 'Recorded once per side.';
COMMENT ON COLUMN "characteristic"."kind" IS 'quantity, choice, designation, text or date.';
COMMENT ON COLUMN "characteristic"."definition" IS 'Everything its kind needs (dimension, units, choices, …), as the register''s schema reads it.';
COMMENT ON COLUMN "characteristic"."help" IS 'What is meant, and how to see or measure it.';
COMMENT ON COLUMN "characteristic"."setting" IS 'Adjusted and measured, rather than fitted.';
COMMENT ON COLUMN "characteristic"."removable" IS '"Not fitted" is an answer.';
COMMENT ON COLUMN "characteristic"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TYPE "SourceKind" IS 'What kind of thing a source is.';
COMMENT ON TABLE "source" IS 'Where statements come from: a manual, a build sheet, a letter, an imported register.';
COMMENT ON COLUMN "source"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "source"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "source"."kind" IS 'What kind of thing it is.';
COMMENT ON COLUMN "source"."title" IS 'Title by which people know it.';
COMMENT ON COLUMN "source"."edition" IS 'Edition, number or date as printed.';
COMMENT ON COLUMN "source"."note" IS 'Free note.';
COMMENT ON COLUMN "source"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TYPE "LoadState" IS 'How the car was loaded when it was measured.';
COMMENT ON TABLE "instrument" IS 'Something readings are taken with.';
COMMENT ON COLUMN "instrument"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "instrument"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "instrument"."label" IS 'What it is, e.g. "gravity gauge no. 2".';
COMMENT ON COLUMN "instrument"."dimension" IS 'Dimension it reads.';
COMMENT ON COLUMN "instrument"."resolution" IS 'Smallest step, SI.';
COMMENT ON COLUMN "instrument"."expanded_uncertainty" IS 'Expanded uncertainty (k = 2), SI; empty when not known.';
COMMENT ON COLUMN "instrument"."calibrated_on" IS 'When it was last calibrated.';
COMMENT ON COLUMN "instrument"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TABLE "setting_sheet" IS 'One occasion of measuring a car.';
COMMENT ON COLUMN "setting_sheet"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "setting_sheet"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "setting_sheet"."car_id" IS 'The car.';
COMMENT ON COLUMN "setting_sheet"."submission_id" IS 'Submission it was handed in with; empty for findings of an event.';
COMMENT ON COLUMN "setting_sheet"."on" IS 'Day of measuring.';
COMMENT ON COLUMN "setting_sheet"."sequence" IS 'Order of acceptance within the car.';
COMMENT ON COLUMN "setting_sheet"."load_state" IS 'How the car was loaded.';
COMMENT ON COLUMN "setting_sheet"."note" IS 'Free note.';
COMMENT ON COLUMN "setting_sheet"."source_id" IS 'Source that supports it.';
COMMENT ON COLUMN "setting_sheet"."locus" IS 'Page, clause or sheet within the source.';
COMMENT ON COLUMN "setting_sheet"."trust" IS 'How far it is trusted.';
COMMENT ON COLUMN "setting_sheet"."recorded_at" IS 'When the row was recorded.';
COMMENT ON COLUMN "setting_sheet"."superseded_at" IS 'When a superseding submission took its place; empty while it stands.';
COMMENT ON TABLE "reading" IS 'One reading of one characteristic.';
COMMENT ON COLUMN "reading"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "reading"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "reading"."setting_sheet_id" IS 'The setting sheet.';
COMMENT ON COLUMN "reading"."characteristic" IS 'Characteristic''s key.';
COMMENT ON COLUMN "reading"."side" IS 'Side.';
COMMENT ON COLUMN "reading"."repeat" IS '1, or 2 and up for repeat readings.';
COMMENT ON COLUMN "reading"."value_kind" IS 'Value: kind (quantity, choice, designation, text, date, absent).';
COMMENT ON COLUMN "reading"."entered" IS 'Value: what was entered, to the letter.';
COMMENT ON COLUMN "reading"."number" IS 'Value: SI number of a quantity.';
COMMENT ON COLUMN "reading"."resolution" IS 'Value: resolution the entry implies, SI.';
COMMENT ON COLUMN "reading"."text" IS 'Value: code of a choice, canonical designation, text, or ISO date.';
COMMENT ON COLUMN "reading"."expanded_uncertainty" IS 'Expanded uncertainty (k = 2), SI; empty when not known.';
COMMENT ON COLUMN "reading"."instrument_id" IS 'What it was read with.';
COMMENT ON TABLE "person" IS 'Somebody who can sign in.';
COMMENT ON COLUMN "person"."id" IS 'UUIDv7.';
COMMENT ON COLUMN "person"."name" IS 'Name as shown to other members.';
COMMENT ON COLUMN "person"."email" IS 'Address to sign in with, lower case.';
COMMENT ON COLUMN "person"."email_verified" IS 'True once the address was proved by following a link.';
COMMENT ON COLUMN "person"."image" IS 'Address of a portrait; not used by the screens.';
COMMENT ON COLUMN "person"."created_at" IS 'When the account was made.';
COMMENT ON COLUMN "person"."updated_at" IS 'When the account last changed.';
COMMENT ON TABLE "session" IS 'One signed-in browser.';
COMMENT ON COLUMN "session"."id" IS 'UUIDv7.';
COMMENT ON COLUMN "session"."token" IS 'Secret the browser''s cookie carries.';
COMMENT ON COLUMN "session"."person_id" IS 'Who is signed in.';
COMMENT ON COLUMN "session"."expires_at" IS 'When the session ends.';
COMMENT ON COLUMN "session"."ip_address" IS 'Network address at sign-in.';
COMMENT ON COLUMN "session"."user_agent" IS 'Browser at sign-in.';
COMMENT ON COLUMN "session"."created_at" IS 'When the session began.';
COMMENT ON COLUMN "session"."updated_at" IS 'When the session was last extended.';
COMMENT ON TABLE "credential" IS 'A way to prove who one is: here a hashed password.';
COMMENT ON COLUMN "credential"."id" IS 'UUIDv7.';
COMMENT ON COLUMN "credential"."account_id" IS 'The person''s id at the provider.';
COMMENT ON COLUMN "credential"."provider_id" IS 'Kind of credential; `credential` for a password.';
COMMENT ON COLUMN "credential"."person_id" IS 'Whose it is.';
COMMENT ON COLUMN "credential"."access_token" IS 'Token of an outside provider; unused with passwords.';
COMMENT ON COLUMN "credential"."refresh_token" IS 'Token of an outside provider; unused with passwords.';
COMMENT ON COLUMN "credential"."id_token" IS 'Token of an outside provider; unused with passwords.';
COMMENT ON COLUMN "credential"."access_token_expires_at" IS 'End of the outside token; unused with passwords.';
COMMENT ON COLUMN "credential"."refresh_token_expires_at" IS 'End of the outside token; unused with passwords.';
COMMENT ON COLUMN "credential"."scope" IS 'Rights at an outside provider; unused with passwords.';
COMMENT ON COLUMN "credential"."password" IS 'Salted hash of the password.';
COMMENT ON COLUMN "credential"."created_at" IS 'When it was made.';
COMMENT ON COLUMN "credential"."updated_at" IS 'When it last changed.';
COMMENT ON TABLE "verification" IS 'A short-lived proof sent to somebody (password reset, address change).';
COMMENT ON COLUMN "verification"."id" IS 'UUIDv7.';
COMMENT ON COLUMN "verification"."identifier" IS 'What is being proved.';
COMMENT ON COLUMN "verification"."value" IS 'The proof.';
COMMENT ON COLUMN "verification"."expires_at" IS 'When it ends.';
COMMENT ON COLUMN "verification"."created_at" IS 'When it was made.';
COMMENT ON COLUMN "verification"."updated_at" IS 'When it last changed.';
COMMENT ON TYPE "SpecificationStatus" IS 'Where a version of a specification stands.';
COMMENT ON TABLE "specification" IS 'One version of what the works specified for a series.';
COMMENT ON COLUMN "specification"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "specification"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "specification"."series_id" IS 'Series it speaks of.';
COMMENT ON COLUMN "specification"."version" IS 'Version, from 1.';
COMMENT ON COLUMN "specification"."status" IS 'Draft, current or superseded; one current version a series.';
COMMENT ON COLUMN "specification"."note" IS 'What changed, and why.';
COMMENT ON COLUMN "specification"."made_by_id" IS 'Person who made it; empty for an import.';
COMMENT ON COLUMN "specification"."recorded_at" IS 'When the row was recorded.';
COMMENT ON TABLE "specification_entry" IS 'What the works specified for one characteristic, for a span of the series.';
COMMENT ON COLUMN "specification_entry"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "specification_entry"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "specification_entry"."specification_id" IS 'Version it belongs to.';
COMMENT ON COLUMN "specification_entry"."characteristic" IS 'Characteristic''s key.';
COMMENT ON COLUMN "specification_entry"."side" IS 'Side; `whole` also means both sides alike.';
COMMENT ON COLUMN "specification_entry"."nominal_value_kind" IS 'Nominal: kind (quantity, choice, designation, text, date, absent).';
COMMENT ON COLUMN "specification_entry"."nominal_entered" IS 'Nominal: what was entered, to the letter.';
COMMENT ON COLUMN "specification_entry"."nominal_number" IS 'Nominal: SI number of a quantity.';
COMMENT ON COLUMN "specification_entry"."nominal_resolution" IS 'Nominal: resolution the entry implies, SI.';
COMMENT ON COLUMN "specification_entry"."nominal_text" IS 'Nominal: code of a choice, canonical designation, text, or ISO date.';
COMMENT ON COLUMN "specification_entry"."lower" IS 'Lower limit, SI, included; empty where there is none.';
COMMENT ON COLUMN "specification_entry"."upper" IS 'Upper limit, SI, included; empty where there is none.';
COMMENT ON COLUMN "specification_entry"."serial_from" IS 'First serial it holds for.';
COMMENT ON COLUMN "specification_entry"."serial_to" IS 'Last serial it holds for.';
COMMENT ON COLUMN "specification_entry"."built_from" IS 'First day of build it holds for.';
COMMENT ON COLUMN "specification_entry"."built_to" IS 'Last day of build it holds for.';
COMMENT ON COLUMN "specification_entry"."option" IS 'Option the car must have been built with.';
COMMENT ON COLUMN "specification_entry"."source_id" IS 'Source that supports it.';
COMMENT ON COLUMN "specification_entry"."locus" IS 'Page, clause or sheet within the source.';
COMMENT ON COLUMN "specification_entry"."trust" IS 'How far it is trusted.';
COMMENT ON COLUMN "specification_entry"."note" IS 'Free note.';
COMMENT ON TYPE "AlternativeRole" IS 'Why another value stands in for the nominal.';
COMMENT ON TABLE "specification_alternative" IS 'A value accepted in place of the nominal.';
COMMENT ON COLUMN "specification_alternative"."club_id" IS 'Club this row belongs to; filled from the transaction''s club when left out.';
COMMENT ON COLUMN "specification_alternative"."id" IS 'UUIDv7, unique within the club.';
COMMENT ON COLUMN "specification_alternative"."entry_id" IS 'Entry it belongs to.';
COMMENT ON COLUMN "specification_alternative"."role" IS 'Period option, accepted substitute or later service replacement.';
COMMENT ON COLUMN "specification_alternative"."value_kind" IS 'Value: kind (quantity, choice, designation, text, date, absent).';
COMMENT ON COLUMN "specification_alternative"."entered" IS 'Value: what was entered, to the letter.';
COMMENT ON COLUMN "specification_alternative"."number" IS 'Value: SI number of a quantity.';
COMMENT ON COLUMN "specification_alternative"."resolution" IS 'Value: resolution the entry implies, SI.';
COMMENT ON COLUMN "specification_alternative"."text" IS 'Value: code of a choice, canonical designation, text, or ISO date.';
COMMENT ON COLUMN "specification_alternative"."source_id" IS 'Source that supports it.';
COMMENT ON COLUMN "specification_alternative"."locus" IS 'Page, clause or sheet within the source.';
COMMENT ON COLUMN "specification_alternative"."trust" IS 'How far it is trusted.';
COMMENT ON COLUMN "specification_alternative"."note" IS 'Free note.';

ALTER TABLE "car" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "car" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "car_identity" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "car_identity" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "car_status_span" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "car_status_span" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "car_option" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "car_option" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "as_built_value" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "as_built_value" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "history_note" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "history_note" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "current_value" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "current_value" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "membership" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "membership" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "invitation" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "invitation" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "rule_set" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "rule_set" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "rule_check" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "rule_check" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "event_class" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "event_class" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "rule_limit" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "rule_limit" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "event" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "event" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "entry" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "entry" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "printed_sheet" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "printed_sheet" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "finding" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "finding" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "entry_decision" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "entry_decision" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "dated_item" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "dated_item" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "evidence" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "evidence" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "evidence_link" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "evidence_link" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "journal_entry" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "journal_entry" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "import_run" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "import_run" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "saved_filter" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "saved_filter" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "keeper" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "keeper" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "keepership" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "keepership" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "submission" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "submission" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "submission_message" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "submission_message" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "modification" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "modification" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "modification_change" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "modification_change" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "modification_fastener" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "modification_fastener" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "marque" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "marque" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "series" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "series" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "series_option" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "series_option" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "characteristic" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "characteristic" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "source" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "source" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "instrument" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "instrument" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "setting_sheet" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "setting_sheet" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "reading" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "reading" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "specification" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "specification" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "specification_entry" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "specification_entry" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);
ALTER TABLE "specification_alternative" ENABLE ROW LEVEL SECURITY;
CREATE POLICY club_isolation ON "specification_alternative" USING (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid) WITH CHECK (club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid);

-- ---------------------------------------------------------------------------------------------
-- By hand from here: what the schema language cannot say.

-- A person sees their own memberships before a club is chosen; a club's members as any other row.
CREATE POLICY "own_membership" ON "membership" FOR SELECT
  USING (person_id = (NULLIF(current_setting('trunnion.person', true), ''))::uuid);

-- Whoever holds the link sees the invitation it belongs to.
CREATE POLICY "own_invitation" ON "invitation" FOR SELECT
  USING (token_hash = NULLIF(current_setting('trunnion.invitation', true), ''));

-- Clubs stand outside the tenancies: anyone may find one by its short name, only its own transaction may change it.
ALTER TABLE "club" ENABLE ROW LEVEL SECURITY;
CREATE POLICY "club_found" ON "club" FOR SELECT USING (true);
CREATE POLICY "club_changed" ON "club" FOR UPDATE
  USING (id = (NULLIF(current_setting('trunnion.club', true), ''))::uuid);

-- One of each kind at a time.
CREATE UNIQUE INDEX "specification_current_key" ON "specification" (club_id, series_id) WHERE status = 'current';
CREATE UNIQUE INDEX "car_status_span_open_key" ON "car_status_span" (club_id, car_id) WHERE "to" IS NULL;
CREATE UNIQUE INDEX "as_built_value_standing_key" ON "as_built_value" (club_id, car_id, characteristic, side)
  WHERE superseded_at IS NULL;

-- Evidence supports exactly one thing by one link.
ALTER TABLE "evidence_link" ADD CONSTRAINT "evidence_link_one_target"
  CHECK (num_nonnulls(car_id, as_built_value_id, modification_id, setting_sheet_id, finding_id) = 1);

-- Limits stand the right way round, and numbers are numbers.
ALTER TABLE "specification_entry" ADD CONSTRAINT "specification_entry_limits_ordered" CHECK (lower <= upper);
ALTER TABLE "specification_entry" ADD CONSTRAINT "specification_entry_serials_ordered" CHECK (serial_from <= serial_to);
ALTER TABLE "rule_limit" ADD CONSTRAINT "rule_limit_ordered" CHECK (lower <= upper);
ALTER TABLE "membership" ADD CONSTRAINT "membership_some_role" CHECK (cardinality(roles) > 0);
ALTER TABLE "car" ADD CONSTRAINT "car_claim_counts_from_one" CHECK (claim >= 1);

-- The journal: chained by hash, append-only.
CREATE FUNCTION journal_entry_hash(entry "journal_entry") RETURNS text
LANGUAGE sql STABLE AS $$
  SELECT encode(sha256(convert_to(concat_ws('|',
    entry.previous_hash, entry.club_id, entry.sequence,
    to_char(entry.at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"'),
    coalesce(entry.person_id::text, '-'), entry.action, entry.noun, entry.noun_id,
    coalesce(entry.car_id::text, '-'), coalesce(entry.run_id::text, '-'), coalesce(to_jsonb(entry.reason)::text, '-'),
    coalesce(entry.before::text, '-'), coalesce(entry.after::text, '-')), 'UTF8')), 'hex')
$$;
COMMENT ON FUNCTION journal_entry_hash("journal_entry") IS
  'SHA-256 (hex) over the previous hash and the content of an entry; worked out again by `trunnion check`.';

CREATE FUNCTION journal_entry_chain() RETURNS trigger
LANGUAGE plpgsql AS $$
DECLARE
  last record;
BEGIN
  -- One writer of a club''s chain at a time, until its transaction ends.
  PERFORM pg_advisory_xact_lock(hashtextextended(NEW.club_id::text, 1));
  SELECT sequence, hash INTO last FROM journal_entry
    WHERE club_id = NEW.club_id ORDER BY sequence DESC LIMIT 1;
  NEW.sequence := coalesce(last.sequence, 0) + 1;
  NEW.previous_hash := coalesce(last.hash, '');
  NEW.at := date_trunc('milliseconds', now());
  NEW.hash := journal_entry_hash(NEW);
  RETURN NEW;
END
$$;
COMMENT ON FUNCTION journal_entry_chain() IS 'Gives a new journal entry its place, time and hash.';
CREATE TRIGGER "journal_entry_chained" BEFORE INSERT ON "journal_entry"
  FOR EACH ROW EXECUTE FUNCTION journal_entry_chain();

CREATE FUNCTION journal_entry_kept() RETURNS trigger
LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'the journal is append-only';
END
$$;
COMMENT ON FUNCTION journal_entry_kept() IS 'Refuses to change or take away a journal entry, whoever asks.';
CREATE TRIGGER "journal_entry_append_only" BEFORE UPDATE OR DELETE OR TRUNCATE ON "journal_entry"
  FOR EACH STATEMENT EXECUTE FUNCTION journal_entry_kept();
