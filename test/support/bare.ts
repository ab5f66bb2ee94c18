/** The least a database does to keep a message: one row put in, durable, and read back. */
import { DatabaseSync } from 'node:sqlite'
import pg from 'pg'

export type Bare = { readonly keep: (text: string) => Promise<unknown>; readonly end: () => Promise<void> }

export function bareSqlite(file: string): Bare {
  const db = new DatabaseSync(file)
  db.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; CREATE TABLE bare (id INTEGER PRIMARY KEY, text TEXT)')
  const insert = db.prepare('INSERT INTO bare (text) VALUES (?)')
  const select = db.prepare('SELECT text FROM bare WHERE id = ?')
  return {
    keep: async (text) => {
      const { lastInsertRowid } = insert.run(text)
      return JSON.parse((select.get(lastInsertRowid) as { text: string }).text)
    },
    end: async () => db.close(),
  }
}

export async function barePostgres(url: string, connections: number): Promise<Bare> {
  const pool = new pg.Pool({ connectionString: url, max: connections })
  await pool.query('CREATE TABLE IF NOT EXISTS bare (id bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY, text text)')
  const insert = { name: 'insert', text: 'INSERT INTO bare (text) VALUES ($1) RETURNING id' }
  const select = { name: 'select', text: 'SELECT text FROM bare WHERE id = $1' }
  return {
    keep: async (text) => {
      const { rows } = await pool.query({ ...insert, values: [text] })
      const read = await pool.query({ ...select, values: [rows[0].id] })
      return JSON.parse(read.rows[0].text)
    },
    end: () => pool.end(),
  }
}
