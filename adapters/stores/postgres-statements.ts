/** The longer statements of the PostgreSQL store. Each is atomic by itself and costs one round trip. Lists come as arrays taken
 *  apart in a select list, in step with each other: `unnest` of several at once in FROM takes three times as long. */

/** A channel's state: snapshot and entries after it, or only the entries after what the asker remembers.
 *  $1 channel, $2 message or null, $3 fold version, $4 and $5 row id and entry number of what is remembered. */
export const LOAD = `
  SELECT c.id, c.last, a.message IS NOT NULL AS answered, a.reply, s.seq, s.skipped, s.memory, e.entries
  FROM kneepad_channel c
  LEFT JOIN kneepad_answered a ON a.channel = c.id AND a.message = $2
  LEFT JOIN kneepad_snapshot s ON s.channel = c.id AND s.fold = $3 AND c.id <> $4
  LEFT JOIN LATERAL (
    SELECT array_agg(e.entry ORDER BY e.seq) AS entries FROM kneepad_entry e
    WHERE e.channel = c.id AND e.seq > CASE WHEN c.id = $4 THEN $5 ELSE coalesce(s.seq, 0) END
  ) e ON true
  WHERE c.key = $1`

/** One answered message. The update of the channel's row makes writers of one channel wait for each other; no row comes
 *  back where the channel is not there, moved on, or answered this message already.
 *  $1 channel, $2 message, $3 at, $4 at [ms], $5 reply, $6 after or null, $7 row id or null, $8 number of entries,
 *  $9 to $13 the entries, $14 cancels, $15 to $17 reminders, $18 fold version, $19 and $20 the snapshot's. */
const ADD = `
  WITH c AS (
    UPDATE kneepad_channel SET last = last + $8::int
    WHERE key = $1 AND ($6::bigint IS NULL OR last = $6::bigint) AND ($7::bigint IS NULL OR id = $7::bigint)
      AND NOT EXISTS (SELECT FROM kneepad_answered a WHERE a.channel = kneepad_channel.id AND a.message = $2)
    RETURNING id, last
  ), answer AS (
    INSERT INTO kneepad_answered SELECT id, $2, $3, $4::bigint, $5 FROM c
  ), entry AS (
    INSERT INTO kneepad_entry
    SELECT c.id, c.last - $8::int + n, message, part, kind, at_ms, entry FROM c, (
      SELECT generate_series(1, $8::int) AS n, unnest($9::text[]) AS message, unnest($10::int[]) AS part,
        unnest($11::text[]) AS kind, unnest($12::bigint[]) AS at_ms, unnest($13::text[]) AS entry
    ) e
  )`

const ADD_MORE = `, cancel AS (
    UPDATE kneepad_reminder r SET state = 'cancelled', holder = NULL
    FROM c WHERE r.channel = c.id AND r.id = ANY ($14::text[]) AND r.state = 'waiting'
  ), remind AS (
    INSERT INTO kneepad_reminder
    SELECT c.id, r.id, due_ms, due_ms, body, 'waiting', NULL, 0
    FROM c, (SELECT unnest($15::text[]) AS id, unnest($16::bigint[]) AS due_ms, unnest($17::text[]) AS body) r
    ON CONFLICT (channel, id) DO UPDATE SET due_ms = excluded.due_ms, next_ms = excluded.next_ms,
      body = excluded.body, state = 'waiting', holder = NULL, attempts = 0
  ), snapshot AS (
    INSERT INTO kneepad_snapshot
    SELECT c.id, $18::int, c.last, $19::int, $20::text FROM c WHERE $20::text IS NOT NULL
    ON CONFLICT (channel, fold) DO UPDATE SET seq = excluded.seq, skipped = excluded.skipped, memory = excluded.memory
  ), old AS (
    DELETE FROM kneepad_snapshot s USING c WHERE s.channel = c.id AND s.fold < $18::int AND $20::text IS NOT NULL
  )`

/** Most messages set no reminder and write no snapshot: those take only the first 13 values. */
export const APPEND = `${ADD} SELECT id, last FROM c`
export const APPEND_MORE = `${ADD}${ADD_MORE} SELECT id, last FROM c`

/** Entries of another store. $1 channel, $2 its last number so far, $3 how many, $4 to $8 the entries. */
export const ENTRIES = `
  INSERT INTO kneepad_entry
  SELECT $1::bigint, $2::bigint + generate_series(1, $3::int), unnest($4::text[]), unnest($5::int[]), unnest($6::text[]),
    unnest($7::bigint[]), unnest($8::text[])`

/** Messages of another store, with their replies or null. $1 channel, $2 to $5 the messages. */
export const ANSWERED = `
  INSERT INTO kneepad_answered AS a
  SELECT $1::bigint, unnest($2::text[]), unnest($3::text[]), unnest($4::bigint[]), unnest($5::text[])
  ON CONFLICT (channel, message) DO UPDATE SET reply = excluded.reply WHERE a.reply IS NULL AND excluded.reply IS NOT NULL
  RETURNING reply IS NOT NULL AS reply`

/** Reminders of another store. $1 channel, $2 to $4 the reminders. */
export const REMINDERS = `
  INSERT INTO kneepad_reminder
  SELECT $1::bigint, unnest($2::text[]), unnest($3::bigint[]), unnest($3::bigint[]), unnest($4::text[]), 'waiting', NULL, 0
  ON CONFLICT DO NOTHING RETURNING channel`
