/** The noun that says what a figure is: the nearest one in its clause, on either side. */
import type { Concept } from './concepts.ts'
import { type Item, isSize } from './items.ts'
import { type Mark, unitAt } from './lexicon.ts'
import type { Reader } from './measures.ts'

export type Noun = { readonly mark: Mark; readonly distance: number; readonly after: boolean }

/** Nouns a figure can belong to. */
export const NOUNS: ReadonlySet<Concept> = new Set<Concept>([
  'tile',
  'tile-kind',
  'mosaic',
  'plank',
  'hexagon',
  'porcelain',
  'ceramic',
  'stone',
  'glass',
  'sheet',
  'roll',
  'joint',
  'spacer',
  'notch',
  'trowel',
  'square-notch',
  'u-notch',
  'v-notch',
  'thick',
  'box',
  'bag',
  'kit',
  'bucket',
  'piece',
  'row',
  'room',
  'house-part',
  'island',
  'bite',
  'bump-out',
  'wall',
  'floor',
  'backsplash',
  'shower',
  'niche',
  'window-word',
  'outlet',
  'door',
  'spare',
  'step',
  'clip',
  'wedge',
  'membrane',
  'cork',
  'cement-board',
  'foam',
  'underlayment',
  'mortar',
  'grout',
  'water',
  'left-to-do',
  'leveller',
  'powder',
  'slab',
  'low',
  'highest',
  'joist',
  'price',
  'offset',
  'diagonal-measure',
  'void',
  'leg',
  'footprint',
  'edge-word',
  'straightedge',
  'lumber',
])

const REACH = 4
/** Words that end the stretch in which a noun can belong to the figure. */
const STOPS: readonly Concept[] = [
  'and',
  'plus',
  'minus',
  'for',
  'with',
  'laid-in',
  'between',
  'how-many',
  'how-much',
  'what',
  'when',
  'can-we',
]

const binds = (reader: Reader, i: number): boolean => /^[=:]$/.test(reader.sign(i))
const separates = (reader: Reader, i: number): boolean => /^[,;\n.?!]$/.test(reader.sign(i))

/** The nouns within reach after and before an item. */
export function nounsNear(item: Item, reader: Reader, marks: readonly Mark[]): Noun[] {
  return [...nounsOn(item, reader, marks, 1), ...nounsOn(item, reader, marks, -1)]
}

function nounsOn(item: Item, reader: Reader, marks: readonly Mark[], step: 1 | -1): Noun[] {
  const found: Noun[] = []
  let i = step === 1 ? item.last + 1 : item.first - 1
  for (let distance = 1; distance <= REACH && i >= 0 && i < reader.tokens.length; distance++, i += step) {
    if (separates(reader, i)) break
    const token = reader.tokens[i]
    if (token.kind === 'number' && !token.spelled) break
    // "tile=12x24 room=12x14": what stands before a sign of equality belongs to what comes after it.
    if (step === 1 && binds(reader, i + 1)) break
    // "tiles for 10x12": the tiles are not what the figure measures.
    if (reader.is(i, ...STOPS)) break
    // "metros cuadrados": a word of a unit is no noun.
    if (unitAt(reader.lexicon, reader.tokens, i - 1)?.count === 2) continue
    const here = marks.filter((m) => NOUNS.has(m.concept) && i >= m.first && i < m.first + m.count)
    for (const mark of here) if (!found.some((n) => n.mark === mark)) found.push({ mark, distance, after: step === 1 })
  }
  return found
}

/** Concepts standing right before an item, skipping articles: "less the 3x5". */
export function leadIn(item: Item, reader: Reader, ...concepts: readonly Concept[]): boolean {
  for (let i = item.first - 1; i >= Math.max(0, item.first - 5); i--) {
    // "cut out of a 12x14": what follows is what something is taken from.
    if (reader.is(i, 'of') && reader.is(i - 1, ...concepts)) return false
    if (reader.is(i, ...concepts)) return true
    // "missing for 10x13": what follows is what it is for.
    if (reader.is(i, 'for')) return false
    const token = reader.tokens[i]
    if (token.kind === 'number' && !token.spelled) return false
    if (separates(reader, i) && isSize(item)) return false
  }
  return false
}
