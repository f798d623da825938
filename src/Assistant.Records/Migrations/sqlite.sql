-- Made from the migrations, see SqliteSchemaTests.
CREATE TABLE IF NOT EXISTS "__EFMigrationsHistory" (
    "MigrationId" TEXT NOT NULL CONSTRAINT "PK___EFMigrationsHistory" PRIMARY KEY,
    "ProductVersion" TEXT NOT NULL
);

CREATE TABLE "assets" (
    "id" TEXT NOT NULL CONSTRAINT "PK_assets" PRIMARY KEY,
    "site" TEXT NOT NULL,
    "unit" TEXT NOT NULL
);

CREATE TABLE "outbox" (
    "id" INTEGER NOT NULL CONSTRAINT "PK_outbox" PRIMARY KEY AUTOINCREMENT,
    "channel" TEXT NOT NULL,
    "conversation" TEXT NOT NULL,
    "message_id" TEXT NOT NULL,
    "reply" TEXT NOT NULL,
    "due" TEXT NOT NULL,
    "attempts" INTEGER NOT NULL,
    "delivered_at" TEXT NULL
);

CREATE TABLE "pictures" (
    "id" TEXT NOT NULL CONSTRAINT "PK_pictures" PRIMARY KEY,
    "jpeg" BLOB NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL
);

CREATE TABLE "asset_facts" (
    "asset_id" TEXT NOT NULL,
    "sequence" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "visit_id" TEXT NULL,
    "event_number" INTEGER NULL,
    CONSTRAINT "PK_asset_facts" PRIMARY KEY ("asset_id", "sequence"),
    CONSTRAINT "FK_asset_facts_assets_asset_id" FOREIGN KEY ("asset_id") REFERENCES "assets" ("id") ON DELETE RESTRICT
);

CREATE TABLE "visits" (
    "id" TEXT NOT NULL CONSTRAINT "PK_visits" PRIMARY KEY,
    "site" TEXT NOT NULL,
    "asset_id" TEXT NULL,
    "opened_at" TEXT NOT NULL,
    "closed_at" TEXT NULL,
    "version" INTEGER NOT NULL,
    "head_hash" BLOB NOT NULL,
    CONSTRAINT "FK_visits_assets_asset_id" FOREIGN KEY ("asset_id") REFERENCES "assets" ("id") ON DELETE RESTRICT
);

CREATE TABLE "conversations" (
    "channel" TEXT NOT NULL,
    "conversation" TEXT NOT NULL,
    "visit_id" TEXT NOT NULL,
    CONSTRAINT "PK_conversations" PRIMARY KEY ("channel", "conversation"),
    CONSTRAINT "FK_conversations_visits_visit_id" FOREIGN KEY ("visit_id") REFERENCES "visits" ("id") ON DELETE RESTRICT
);

CREATE TABLE "events" (
    "visit_id" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "personal" TEXT NULL,
    "salt" BLOB NULL,
    "personal_digest" BLOB NOT NULL,
    "prev_hash" BLOB NOT NULL,
    "hash" BLOB NOT NULL,
    CONSTRAINT "PK_events" PRIMARY KEY ("visit_id", "number"),
    CONSTRAINT "FK_events_visits_visit_id" FOREIGN KEY ("visit_id") REFERENCES "visits" ("id") ON DELETE RESTRICT
);

CREATE TABLE "messages" (
    "channel" TEXT NOT NULL,
    "message_id" TEXT NOT NULL,
    "visit_id" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "reply" TEXT NOT NULL,
    CONSTRAINT "PK_messages" PRIMARY KEY ("channel", "message_id"),
    CONSTRAINT "FK_messages_visits_visit_id" FOREIGN KEY ("visit_id") REFERENCES "visits" ("id") ON DELETE RESTRICT
);

CREATE TABLE "reminders" (
    "visit_id" TEXT NOT NULL,
    "event_number" INTEGER NOT NULL,
    "due" TEXT NOT NULL,
    "done_at" TEXT NULL,
    CONSTRAINT "PK_reminders" PRIMARY KEY ("visit_id", "event_number"),
    CONSTRAINT "FK_reminders_visits_visit_id" FOREIGN KEY ("visit_id") REFERENCES "visits" ("id") ON DELETE RESTRICT
);

CREATE INDEX "IX_asset_facts_visit_id_event_number" ON "asset_facts" ("visit_id", "event_number");

CREATE INDEX "IX_conversations_visit_id" ON "conversations" ("visit_id");

CREATE INDEX "IX_messages_visit_id" ON "messages" ("visit_id");

CREATE INDEX "IX_outbox_channel_delivered_at_due" ON "outbox" ("channel", "delivered_at", "due");

CREATE UNIQUE INDEX "IX_outbox_channel_message_id" ON "outbox" ("channel", "message_id");

CREATE INDEX "IX_reminders_done_at_due" ON "reminders" ("done_at", "due");

CREATE INDEX "IX_visits_asset_id" ON "visits" ("asset_id");

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261125090631_FirstRelease', '10.0.15');

CREATE TABLE "enrolment_tries" (
    "id" INTEGER NOT NULL CONSTRAINT "PK_enrolment_tries" PRIMARY KEY AUTOINCREMENT,
    "address_digest" TEXT NOT NULL,
    "at" TEXT NOT NULL
);

CREATE TABLE "firms" (
    "id" TEXT NOT NULL CONSTRAINT "PK_firms" PRIMARY KEY,
    "name" TEXT NOT NULL
);

CREATE TABLE "stopped_addresses" (
    "address_digest" TEXT NOT NULL CONSTRAINT "PK_stopped_addresses" PRIMARY KEY,
    "at" TEXT NOT NULL
);

CREATE TABLE "visit_members" (
    "visit_id" TEXT NOT NULL,
    "person_id" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "since" TEXT NOT NULL,
    CONSTRAINT "PK_visit_members" PRIMARY KEY ("visit_id", "person_id"),
    CONSTRAINT "FK_visit_members_visits_visit_id" FOREIGN KEY ("visit_id") REFERENCES "visits" ("id") ON DELETE RESTRICT
);

CREATE TABLE "people" (
    "id" TEXT NOT NULL CONSTRAINT "PK_people" PRIMARY KEY,
    "firm_id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "name_key" TEXT NOT NULL,
    "roles" INTEGER NOT NULL,
    "revoked_at" TEXT NULL,
    CONSTRAINT "FK_people_firms_firm_id" FOREIGN KEY ("firm_id") REFERENCES "firms" ("id") ON DELETE RESTRICT
);

CREATE TABLE "visit_access" (
    "visit_id" TEXT NOT NULL CONSTRAINT "PK_visit_access" PRIMARY KEY,
    "firm_id" TEXT NULL,
    "code" TEXT NOT NULL,
    CONSTRAINT "FK_visit_access_firms_firm_id" FOREIGN KEY ("firm_id") REFERENCES "firms" ("id") ON DELETE RESTRICT,
    CONSTRAINT "FK_visit_access_visits_visit_id" FOREIGN KEY ("visit_id") REFERENCES "visits" ("id") ON DELETE RESTRICT
);

CREATE TABLE "channel_identities" (
    "channel" TEXT NOT NULL,
    "address" TEXT NOT NULL,
    "person_id" TEXT NOT NULL,
    "bound_at" TEXT NOT NULL,
    "revoked_at" TEXT NULL,
    CONSTRAINT "PK_channel_identities" PRIMARY KEY ("channel", "address"),
    CONSTRAINT "FK_channel_identities_people_person_id" FOREIGN KEY ("person_id") REFERENCES "people" ("id") ON DELETE RESTRICT
);

CREATE TABLE "enrolment_codes" (
    "digest" TEXT NOT NULL CONSTRAINT "PK_enrolment_codes" PRIMARY KEY,
    "person_id" TEXT NOT NULL,
    "expires" TEXT NOT NULL,
    CONSTRAINT "FK_enrolment_codes_people_person_id" FOREIGN KEY ("person_id") REFERENCES "people" ("id") ON DELETE RESTRICT
);

CREATE INDEX "IX_channel_identities_person_id" ON "channel_identities" ("person_id");

CREATE UNIQUE INDEX "IX_enrolment_codes_person_id" ON "enrolment_codes" ("person_id");

CREATE INDEX "IX_enrolment_tries_at" ON "enrolment_tries" ("at");

CREATE UNIQUE INDEX "IX_firms_name" ON "firms" ("name");

CREATE INDEX "IX_people_firm_id" ON "people" ("firm_id");

CREATE UNIQUE INDEX "IX_people_name_key" ON "people" ("name_key");

CREATE INDEX "IX_visit_access_code" ON "visit_access" ("code");

CREATE INDEX "IX_visit_access_firm_id" ON "visit_access" ("firm_id");

CREATE INDEX "IX_visit_members_person_id" ON "visit_members" ("person_id");

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261125124217_People', '10.0.15');

ALTER TABLE "outbox" ADD "gave_up_at" TEXT NULL;

ALTER TABLE "outbox" ADD "reported_at" TEXT NULL;

ALTER TABLE "outbox" ADD "tried_at" TEXT NULL;

ALTER TABLE "outbox" ADD "trouble" TEXT NULL;

ALTER TABLE "outbox" ADD "version" INTEGER NULL;

ALTER TABLE "outbox" ADD "visit_id" TEXT NULL;

CREATE INDEX "IX_outbox_channel_conversation_delivered_at" ON "outbox" ("channel", "conversation", "delivered_at");

CREATE TABLE "inbox" (
    "id" INTEGER NOT NULL CONSTRAINT "PK_inbox" PRIMARY KEY AUTOINCREMENT,
    "channel" TEXT NOT NULL,
    "message_id" TEXT NOT NULL,
    "conversation" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "sent_at" TEXT NOT NULL,
    "received_at" TEXT NOT NULL,
    "digest" TEXT NOT NULL,
    "handled_at" TEXT NULL
);

CREATE UNIQUE INDEX "IX_inbox_channel_digest" ON "inbox" ("channel", "digest");

CREATE UNIQUE INDEX "IX_inbox_channel_message_id" ON "inbox" ("channel", "message_id");

CREATE INDEX "IX_inbox_channel_handled_at_sent_at" ON "inbox" ("channel", "handled_at", "sent_at");

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261125130000_TextDelivery', '10.0.15');

ALTER TABLE "reminders" ADD "given_to" TEXT NULL;

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261125155924_ReminderGiven', '10.0.15');

CREATE INDEX "IX_events_kind" ON "events" ("kind") WHERE kind IN ('cylinder-used', 'event-withdrawn');

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261125213642_CylinderIndex', '10.0.15');

ALTER TABLE "outbox" ADD "part_of" INTEGER NULL;

CREATE TABLE "rooms" (
    "channel" TEXT NOT NULL,
    "conversation" TEXT NOT NULL,
    "reference" TEXT NULL,
    "is_group" INTEGER NOT NULL,
    "can_edit" INTEGER NOT NULL,
    "visit_id" TEXT NULL,
    "told" INTEGER NOT NULL,
    "summary_id" TEXT NULL,
    "summary_digest" TEXT NULL,
    "listened_from" TEXT NULL,
    "listened_to" TEXT NULL,
    "heard" TEXT NULL,
    CONSTRAINT "PK_rooms" PRIMARY KEY ("channel", "conversation"),
    CONSTRAINT "FK_rooms_visits_visit_id" FOREIGN KEY ("visit_id") REFERENCES "visits" ("id") ON DELETE RESTRICT
);

CREATE INDEX "IX_rooms_visit_id" ON "rooms" ("visit_id");

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261125214954_Rooms', '10.0.15');

DROP INDEX "IX_messages_visit_id";

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261126045025_LeanMessages', '10.0.15');

