/** `work` with its last few answers kept: one message asks some things several times over. Not in a WeakMap: what its values reach
 *  outlives the collection of young objects there, so that all of every message would grow old.
 *  @param most answers kept before all are let go */
export function remembered<K, V>(most: number, work: (key: K) => V): (key: K) => V {
  const kept = new Map<K, V>()
  return (key) => {
    const known = kept.get(key)
    if (known !== undefined) return known
    const value = work(key)
    if (kept.size >= most) kept.clear()
    kept.set(key, value)
    return value
  }
}
