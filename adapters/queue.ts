/** One channel's messages in order, different channels at the same time; and a small memory of ids already taken. */

/** Lets one waiting task go in each turn of the event loop. Answering is synchronous work: between two of them the sockets get
 *  their turn, so that no acknowledgement waits behind more than one answer. */
function createTurnstile(): () => Promise<void> {
  const waiting: (() => void)[] = []
  const next = (): void => {
    waiting.shift()?.()
    if (waiting.length > 0) setImmediate(next)
  }
  return () =>
    new Promise((resolve) => {
      waiting.push(resolve)
      if (waiting.length === 1) setImmediate(next)
    })
}

export type Queue = {
  /** Runs the task after those of its channel that came before; a failed one does not hold up the next. */
  readonly run: <T>(channel: string, task: () => Promise<T>) => Promise<T>
  /** Resolves when nothing is in flight, or after the time is up; tells whether it came to rest. */
  readonly drain: (timeoutMs: number) => Promise<boolean>
  readonly size: () => number
}

export function createQueue(): Queue {
  const turn = createTurnstile()
  const tails = new Map<string, Promise<unknown>>()
  let inFlight = 0
  let resting: (() => void)[] = []

  const run = <T>(channel: string, task: () => Promise<T>): Promise<T> => {
    inFlight += 1
    const before = tails.get(channel) ?? Promise.resolve()
    const result = before.then(turn).then(task)
    const tail = result
      .catch(() => {})
      .then(() => {
        if (tails.get(channel) === tail) tails.delete(channel)
        inFlight -= 1
        if (inFlight === 0) for (const rest of resting.splice(0)) rest()
      })
    tails.set(channel, tail)
    return result
  }

  const drain = (timeoutMs: number): Promise<boolean> => {
    if (inFlight === 0) return Promise.resolve(true)
    return new Promise((resolve) => {
      const timer = setTimeout(() => {
        resting = resting.filter((rest) => rest !== done)
        resolve(false)
      }, timeoutMs)
      const done = () => {
        clearTimeout(timer)
        resolve(true)
      }
      resting.push(done)
    })
  }

  return { run, drain, size: () => inFlight }
}

export type Guard = {
  /** True the first time; false for an id taken before. */
  readonly take: (id: string) => boolean
  /** Lets a failed one be tried again. */
  readonly release: (id: string) => void
}

/** Remembers the last `limit` ids of this process. The store remembers the rest. */
export function createGuard(limit = 5000): Guard {
  const seen = new Set<string>()
  const take = (id: string): boolean => {
    if (seen.has(id)) return false
    seen.add(id)
    if (seen.size > limit) seen.delete(seen.values().next().value as string)
    return true
  }
  return { take, release: (id) => seen.delete(id) }
}
