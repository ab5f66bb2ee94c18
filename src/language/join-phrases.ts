/** Joins the phrase tables of a language, later ones over earlier ones. An object without a prototype is a table of keys from the
 *  start: spread into a usual one, 1,500 phrases take 5 ms of each start. */
export const joinPhrases = (...tables: readonly Readonly<Record<string, string>>[]): Readonly<Record<string, string>> =>
  Object.assign(Object.create(null), ...tables)
