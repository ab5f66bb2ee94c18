/** Fills an SQLite store with channels, as quickly as the database takes them. */
import type { DatabaseSync } from 'node:sqlite'
import type { Entry } from '../../src/message.ts'

/** `slack:W1:C1`, `slack:W2:C2` … in 500 workspaces, each with the same entries. */
export function fillChannels(db: DatabaseSync, channels: number, entries: readonly Entry[]): void {
  const numbers = `WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < ${channels})`
  db.exec(`PRAGMA synchronous = OFF; BEGIN; ${numbers}
    INSERT INTO channel (key, workspace) SELECT 'slack:W' || (i % 500) || ':C' || i, 'slack:W' || (i % 500) FROM n`)
  db.prepare(
    `INSERT INTO entry SELECT c.id, e.key + 1, 'old' || e.key, 0, json_extract(e.value, '$.kind'), 0, e.value
      FROM channel c, json_each(?) e WHERE c.workspace GLOB 'slack:W*'`,
  ).run(JSON.stringify(entries))
  db.exec('COMMIT; PRAGMA wal_checkpoint(TRUNCATE)')
}
