/** A pool of connections to one PostgreSQL database, its tables laid at first use. A lost server is found again by the
 *  next operation; what goes wrong comes back as a value. */
import { createHash } from 'node:crypto'
import pg from 'pg'
import { MIGRATION_LOCK, STEPS } from './postgres-schema.ts'
import { type FailureCode, type Kept, kept, notKept } from './store.ts'

/** How long a connection, or a free one of the pool, is waited for [ms]; a crew member waits with it. */
const CONNECT_MS = 4000
/** The longest a statement may take [ms]. */
const STATEMENT_MS = 20_000
const DEFAULT_CONNECTIONS = 8
const INT8 = 20

/** postgresql.org/docs/current/errcodes-appendix.html */
const CODES: Readonly<Record<string, FailureCode>> = {
  '53100': 'full', // disk_full
  '25006': 'read-only', // read_only_sql_transaction
  XX001: 'corrupt', // data_corrupted
  XX002: 'corrupt', // index_corrupted
}
/** Classes: 08 connection exception, 28 invalid authorization, 3D invalid catalog name, 53 insufficient resources,
 *  57 operator intervention (a server going down or coming up, a cancelled statement). */
const UNREACHABLE_CLASSES = ['08', '28', '3D', '53', '57']
const UNIQUE_VIOLATION = '23505'
/** Deadlock, serialisation failure: nothing happened, and trying again is the documented way. */
const TRY_AGAIN = ['40P01', '40001']

class NewerLayout extends Error {}

export type Value = string | number | null | readonly (string | number | null)[]

/** Runs statements on one connection. */
export type Session = <Row>(sql: string, values?: readonly Value[]) => Promise<Row[]>

export class PostgresPool {
  readonly #pool: pg.Pool
  readonly #onLost: () => void
  #laid: Promise<void> | null = null

  constructor(url: string, connections: number | undefined, onLost: () => void) {
    this.#onLost = onLost
    this.#pool = new pg.Pool({
      connectionString: url,
      max: connections ?? DEFAULT_CONNECTIONS,
      connectionTimeoutMillis: CONNECT_MS,
      statement_timeout: STATEMENT_MS,
      query_timeout: STATEMENT_MS,
      keepAlive: true,
      application_name: 'kneepad',
      // Whole numbers of 64 bits are counts and instants here, far below 2^53.
      types: { getTypeParser: (oid: number) => (oid === INT8 ? Number : pg.types.getTypeParser(oid)) },
    })
    // Planning the long statements anew for each message costs more than it saves.
    this.#pool.on('connect', (client) => {
      client.query('SET plan_cache_mode = force_generic_plan').catch(onLost)
    })
    // An idle connection that breaks is only dropped from the pool.
    this.#pool.on('error', () => onLost())
  }

  /** One statement, which is atomic by itself. Run again once where the connection was lost under it: it must be
   *  harmless to run twice. */
  one<Row>(sql: string, values: readonly Value[] = []): Promise<Kept<Row[]>> {
    return this.use((session) => session<Row>(sql, values))
  }

  /** Statements on one connection, each its own transaction. */
  use<T>(work: (session: Session) => Promise<T>): Promise<Kept<T>> {
    return this.#attempt(work, false)
  }

  transaction<T>(work: (session: Session) => Promise<T>): Promise<Kept<T>> {
    return this.#attempt(work, true)
  }

  async close(): Promise<void> {
    if (!this.#pool.ended) await this.#pool.end()
  }

  async #attempt<T>(work: (session: Session) => Promise<T>, whole: boolean): Promise<Kept<T>> {
    for (let tries = 1; ; tries++) {
      try {
        this.#laid ??= this.#layTables()
        await this.#laid
        return kept(await this.#on(work, whole))
      } catch (error) {
        const failure = failureOf(error)
        if (failure === null) throw error
        const again = TRY_AGAIN.includes(codeOf(error) ?? '')
        if (failure === 'unreachable') {
          this.#onLost()
          this.#laid = null
        }
        if (again ? tries > 20 : tries > 1 || failure !== 'unreachable' || refused(error))
          return notKept(failure, `PostgreSQL: ${(error as Error).message}`)
      }
    }
  }

  async #on<T>(work: (session: Session) => Promise<T>, whole: boolean): Promise<T> {
    const client = await this.#pool.connect()
    let broken = false
    // A connection that dies while it is out of the pool says so here, and through the statement that was running.
    const died = () => {
      broken = true
    }
    client.on('error', died)
    try {
      const session = sessionOf(client)
      if (!whole) return await work(session)
      await client.query('BEGIN')
      const result = await work(session)
      await client.query('COMMIT')
      return result
    } catch (error) {
      if (whole && !broken) await client.query('ROLLBACK').catch(died)
      if (failureOf(error) === 'unreachable') broken = true
      throw error
    } finally {
      client.off('error', died)
      client.release(broken)
    }
  }

  /** Two starters at once: the second waits for the first, and finds it done. */
  #layTables(): Promise<void> {
    const laying = this.#on(async (session) => {
      await session('SELECT pg_advisory_xact_lock($1)', [MIGRATION_LOCK])
      await session('CREATE TABLE IF NOT EXISTS kneepad_layout (step integer PRIMARY KEY)')
      const [row] = await session<{ step: number | null }>('SELECT max(step) AS step FROM kneepad_layout')
      const version = row?.step ?? 0
      if (version > STEPS.length) throw new NewerLayout(`layout ${version}, this version knows up to ${STEPS.length}`)
      for (let step = version; step < STEPS.length; step++) {
        for (const sql of STEPS[step]!.split(';').filter((s) => s.trim())) await session(sql)
        await session('INSERT INTO kneepad_layout VALUES ($1)', [step + 1])
      }
    }, true)
    laying.catch(() => {
      if (this.#laid === laying) this.#laid = null
    })
    return laying
  }
}

/** Statements with values are prepared once on each connection, under a name made of their text. */
const names = new Map<string, string>()
function nameOf(sql: string): string {
  let name = names.get(sql)
  if (!name) {
    name = createHash('sha256').update(sql).digest('hex').slice(0, 32)
    names.set(sql, name)
  }
  return name
}

const sessionOf =
  (client: pg.PoolClient): Session =>
  async <Row>(sql: string, values?: readonly Value[]) => {
    const query = values ? { name: nameOf(sql), text: sql, values: [...values] } : { text: sql }
    return (await client.query(query)).rows as Row[]
  }

const codeOf = (error: unknown): string | undefined => (error as { code?: string }).code

export const isUniqueViolation = (error: unknown): boolean => codeOf(error) === UNIQUE_VIOLATION

/** Nobody listens there, or not to us: asking again at once is of no use. */
const refused = (error: unknown): boolean =>
  ['ECONNREFUSED', 'ENOTFOUND', 'EAI_AGAIN', 'ERR_INVALID_URL'].includes(codeOf(error) ?? '') ||
  /^(28|3D)/.test(codeOf(error) ?? '') ||
  /timeout/.test((error as Error).message)

/** Null for an error that is a bug of ours. */
function failureOf(error: unknown): FailureCode | null {
  if (error instanceof NewerLayout) return 'newer'
  const code = codeOf(error)
  if (code === 'ERR_INVALID_URL') return 'unreachable'
  if (error instanceof SyntaxError) return 'corrupt' // what lies in a row is not the JSON that was written
  if (error instanceof TypeError || error instanceof RangeError || error instanceof ReferenceError) return null
  if (error instanceof pg.DatabaseError && code)
    return CODES[code] ?? (UNREACHABLE_CLASSES.includes(code.slice(0, 2)) ? 'unreachable' : 'failed')
  return 'unreachable'
}
