/** Keeps the last few answers of some work: one message asks some things several times over. The oldest is let go for a new one.
 *  A ring of its own, not a Map: tables that Map and WeakMap have outgrown or cleared keep all that was in them alive until the
 *  whole heap is collected, so that everything of every message would grow old.
 *  @param most answers kept */
export function remembered<K, V>(most: number): (key: K, work: () => V) => V {
  const keys: K[] = []
  const values: V[] = []
  let next = 0
  return (key, work) => {
    const at = keys.indexOf(key)
    if (at >= 0) return values[at]!
    const value = work()
    keys[next] = key
    values[next] = value
    next = (next + 1) % most
    return value
  }
}
