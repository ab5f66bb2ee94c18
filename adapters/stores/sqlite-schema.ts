/** The layout of the SQLite file, as numbered steps that only go forward. A step that has landed is never changed. */

/** Says whose file it is (`PRAGMA application_id`): "knpd" in ASCII. */
export const APPLICATION_ID = 0x6b_6e_70_64

export const STEPS: readonly string[] = [
  `
  CREATE TABLE channel (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    key TEXT NOT NULL UNIQUE,
    workspace TEXT NOT NULL
  ) STRICT;
  CREATE INDEX channel_workspace ON channel (workspace);

  CREATE TABLE entry (
    channel INTEGER NOT NULL,
    seq INTEGER NOT NULL,
    message TEXT NOT NULL,
    part INTEGER NOT NULL,
    kind TEXT NOT NULL,
    at_ms INTEGER NOT NULL,
    entry TEXT NOT NULL,
    PRIMARY KEY (channel, seq)
  ) STRICT, WITHOUT ROWID;
  CREATE INDEX entry_kind ON entry (channel, kind);

  -- One row for each message that has entries or was answered: this is what makes a redelivery harmless. Each index more
  -- on the entries themselves would be a page more to write for every message.
  CREATE TABLE answered (
    channel INTEGER NOT NULL,
    message TEXT NOT NULL,
    at TEXT NOT NULL,
    at_ms INTEGER NOT NULL,
    reply TEXT,
    PRIMARY KEY (channel, message)
  ) STRICT, WITHOUT ROWID;

  CREATE TABLE snapshot (
    channel INTEGER NOT NULL,
    fold INTEGER NOT NULL,
    seq INTEGER NOT NULL,
    skipped INTEGER NOT NULL,
    memory TEXT NOT NULL,
    PRIMARY KEY (channel, fold)
  ) STRICT, WITHOUT ROWID;

  CREATE TABLE button (
    channel INTEGER NOT NULL,
    key TEXT NOT NULL,
    value TEXT NOT NULL,
    until_ms INTEGER NOT NULL,
    PRIMARY KEY (channel, key)
  ) STRICT, WITHOUT ROWID;

  CREATE TABLE reminder (
    channel INTEGER NOT NULL,
    id TEXT NOT NULL,
    due_ms INTEGER NOT NULL,
    next_ms INTEGER NOT NULL,
    body TEXT NOT NULL,
    state TEXT NOT NULL CHECK (state IN ('waiting', 'sent', 'cancelled')),
    holder TEXT,
    attempts INTEGER NOT NULL,
    PRIMARY KEY (channel, id)
  ) STRICT, WITHOUT ROWID;
  CREATE INDEX reminder_next ON reminder (next_ms) WHERE state = 'waiting';
  `,
  // Only what is learned from is looked for by its kind; an index of all kinds was a page more to write for every message.
  `
  DROP INDEX entry_kind;
  CREATE INDEX entry_learned ON entry (channel, at_ms) WHERE kind IN ('use', 'undo');
  `,
]
