/** The layout in PostgreSQL, as numbered steps that only go forward. A step that has landed is never changed. */

/** The key of the advisory lock that one starter holds while it lays the tables: "knpd" in ASCII. */
export const MIGRATION_LOCK = 0x6b_6e_70_64

export const STEPS: readonly string[] = [
  `
  CREATE TABLE kneepad_channel (
    id bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    key text NOT NULL UNIQUE,
    workspace text NOT NULL,
    last bigint NOT NULL
  );
  CREATE INDEX kneepad_channel_workspace ON kneepad_channel (workspace);

  CREATE TABLE kneepad_entry (
    channel bigint NOT NULL,
    seq bigint NOT NULL,
    message text NOT NULL,
    part integer NOT NULL,
    kind text NOT NULL,
    at_ms bigint NOT NULL,
    entry text NOT NULL,
    PRIMARY KEY (channel, seq),
    UNIQUE (channel, message, part)
  );
  CREATE INDEX kneepad_entry_kind ON kneepad_entry (channel, kind);

  CREATE TABLE kneepad_answered (
    channel bigint NOT NULL,
    message text NOT NULL,
    at text NOT NULL,
    at_ms bigint NOT NULL,
    reply text,
    PRIMARY KEY (channel, message)
  );

  CREATE TABLE kneepad_snapshot (
    channel bigint NOT NULL,
    fold integer NOT NULL,
    seq bigint NOT NULL,
    skipped integer NOT NULL,
    memory text NOT NULL,
    PRIMARY KEY (channel, fold)
  );

  CREATE TABLE kneepad_button (
    channel bigint NOT NULL,
    key text NOT NULL,
    value text NOT NULL,
    until_ms bigint NOT NULL,
    PRIMARY KEY (channel, key)
  );

  CREATE TABLE kneepad_reminder (
    channel bigint NOT NULL,
    id text NOT NULL,
    due_ms bigint NOT NULL,
    next_ms bigint NOT NULL,
    body text NOT NULL,
    state text NOT NULL CHECK (state IN ('waiting', 'sent', 'cancelled')),
    holder text,
    attempts integer NOT NULL,
    PRIMARY KEY (channel, id)
  );
  CREATE INDEX kneepad_reminder_next ON kneepad_reminder (next_ms) WHERE state = 'waiting';
  `,
  // A message's row in `answered` makes a redelivery harmless, as in SQLite; an index more on the entries only costs time;
  // and only what is learned from is looked for by its kind.
  `
  INSERT INTO kneepad_answered
    SELECT DISTINCT ON (channel, message) channel, message, entry::json ->> 'at', at_ms, NULL FROM kneepad_entry
    ON CONFLICT DO NOTHING;
  ALTER TABLE kneepad_entry DROP CONSTRAINT kneepad_entry_channel_message_part_key;
  DROP INDEX kneepad_entry_kind;
  CREATE INDEX kneepad_entry_learned ON kneepad_entry (channel, at_ms) WHERE kind IN ('use', 'undo');
  ALTER TABLE kneepad_channel ALTER COLUMN last SET DEFAULT 0;
  `,
]
