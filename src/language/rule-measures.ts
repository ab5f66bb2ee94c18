/** What a crew measured, found in its words: joists, straightedge gaps, heights on a grid, diagonals, voids, calipers. */
import type { MeasureWords } from './measure-words.ts'
import { gridIn, rowsOf, type SaidGrid } from './rule-grid.ts'
import { joistsIn, type SaidJoists, type SaidSheathing, sheathingIn } from './rule-joists.ts'
import { beside, END, FOOT, INCH, inUnit, lengthsIn, listIn, N, START } from './rule-lengths.ts'
import { type FigureWords, partsAsFigures } from './rule-numbers.ts'

export type SaidVoids = { readonly count: number; readonly lengthMm: number; readonly widthMm: number }

export type SaidSquare =
  | { readonly is: 'diagonals'; readonly mm: readonly number[] }
  | { readonly is: 'marks'; readonly aMm: number; readonly bMm: number; readonly acrossMm: number }

export type Measures = {
  readonly joists: SaidJoists | null
  readonly sheathing: SaidSheathing | null
  /** Gaps under one edge, two or more. */
  readonly gapsMm: readonly number[]
  readonly grid: SaidGrid | null
  readonly square: SaidSquare | null
  readonly voids: SaidVoids | null
  /** Contact of lifted tiles, two or more. [%] */
  readonly contactsPct: readonly number[]
  readonly lifted: boolean
  /** One dimension of several tiles. */
  readonly calipersMm: readonly number[]
  readonly variationMm: number | null
  readonly warpMm: number | null
  readonly slabMm: number | null
  /** Humidity readings, two or more. [%] */
  readonly humiditiesPct: readonly number[]
  /** How many holes or probes were set. */
  readonly holes: number | null
}

/** Each measurement is looked for when it is asked for: a message holds one or two of them.
 *  @param text with its lines; @param plain the same by plainWords */
export function readMeasures(text: string, plain: string, w: MeasureWords, f: FigureWords): Measures {
  const has = (words: string) => new RegExp(`${START}(?:${words})${END}`, 'u').test(plain)
  return {
    get joists() {
      return joistsIn(plain, w, f)
    },
    get sheathing() {
      return sheathingIn(partsAsFigures(plain, f), w, f)
    },
    get gapsMm() {
      return has(w.gaps) ? listIn(plain, f, { least: 2, most: 1.5 * INCH }) : []
    },
    get grid() {
      return has(w.heights) || rowsOf(text).length >= 3 ? gridIn(text, plain, w, f) : null
    },
    get square() {
      return squareIn(plain, w, f, has)
    },
    get voids() {
      return voidsIn(plain, w, f)
    },
    get contactsPct() {
      return contactsIn(plain, f, has(w.lifted))
    },
    get lifted() {
      return has(w.lifted)
    },
    get calipersMm() {
      return has(w.calipers) || has(w.vary) ? listIn(plain, f, { least: 3, from: 2 * INCH, most: 2000 }) : []
    },
    get variationMm() {
      return beside(plain, w.vary, f)
    },
    get warpMm() {
      return beside(plain, w.warp, f)
    },
    get slabMm() {
      return slabIn(plain, w, f)
    },
    get humiditiesPct() {
      return humiditiesIn(plain)
    },
    get holes() {
      return holesIn(plain, w, f)
    },
  }
}

function voidsIn(plain: string, w: MeasureWords, f: FigureWords): SaidVoids | null {
  const unit = `(?:${f.inch}|${f.mm}|${f.cm})`
  const size = `(${N}) ?(${unit})? ?(?:x|by) ?(${N})(?: ?(${unit}))?`
  const count = `(?:(\\d+|${Object.keys(f.counts).join('|')}) )?`
  const hit =
    new RegExp(`${START}${count}${size}${END} (?:${w.voids})`, 'u').exec(plain) ??
    new RegExp(`${START}${count}(?:${w.voids}) (?:of |about |at |each |de |como )?${size}`, 'u').exec(plain)
  if (!hit) return null
  const unitSaid = hit[5] ?? hit[3]
  const lengthMm = inUnit(hit[2]!, unitSaid, f, INCH)
  const widthMm = inUnit(hit[4]!, unitSaid, f, INCH)
  if (lengthMm === null || widthMm === null) return null
  return { count: hit[1] ? (f.counts[hit[1]] ?? Number(hit[1])) : 1, lengthMm, widthMm }
}

/** "85 90 88 percent", "85%, 90% and 88%": only where each is a share. */
function contactsIn(plain: string, f: FigureWords, lifted: boolean): number[] {
  const run = new RegExp(
    `${START}\\d{2,3}(?: ?(?:${f.percent}))?(?:(?: and | )\\d{2,3}(?: ?(?:${f.percent}))?)+(?!["'x/.\\d])`,
    'u',
  )
  const said = run.exec(plain)?.[0]
  if (!said || !(lifted || new RegExp(f.percent, 'u').test(said))) return []
  const shares = [...said.matchAll(/\d+/g)].map(([n]) => Number(n))
  return shares.length >= 2 && shares.every((n) => n >= 10 && n <= 100) ? shares : []
}

function slabIn(plain: string, w: MeasureWords, f: FigureWords): number | null {
  const hit = new RegExp(
    `${START}(${N})[ -]?(${f.inch}|${f.mm}|${f.cm})[ -]?(?:\\p{L}+ )?(?:${w.thick})${END}`,
    'u',
  ).exec(plain)
  const after =
    hit ?? new RegExp(`${START}(?:${w.thick}) (?:of |de )?(${N}) ?(${f.inch}|${f.mm}|${f.cm})${END}`, 'u').exec(plain)
  return after ? inUnit(after[1]!, after[2], f, INCH) : null
}

/** "72 74 79": two shares or more one after the other. */
function humiditiesIn(plain: string): number[] {
  const run = /(?<![\p{L}\p{N}/.])\d{2}(?: ?%)?(?:(?: and | y | )\d{2}(?: ?%)?)+(?!["'x/.\d])/u.exec(plain)?.[0]
  return run ? [...run.matchAll(/\d+/g)].map(([n]) => Number(n)).filter((n) => n >= 20) : []
}

function holesIn(plain: string, w: MeasureWords, f: FigureWords): number | null {
  const counts = Object.keys(f.counts).join('|')
  const hit = new RegExp(`${START}(\\d{1,2}|${counts}) (?:rh |\\p{L}+ )?(?:${w.holes})${END}`, 'u').exec(plain)
  return hit ? (f.counts[hit[1]!] ?? Number(hit[1])) : null
}

function squareIn(plain: string, w: MeasureWords, f: FigureWords, has: (words: string) => boolean): SaidSquare | null {
  const marks = new RegExp(`(?:${w.marks})${END}`, 'u').exec(plain)
  const lengths = lengthsIn(marks ? plain.replace(marks[0], ' ') : plain, f)
  if (marks && lengths.length >= 1) {
    const [a, b] = marks[0].split(/[- ]/).map(Number) as [number, number]
    const metric =
      new RegExp(`(?:${f.metre}|${f.mm}|${f.cm})${END}`, 'u').test(plain) && lengths[0]! > 1000 * 4.5 && a === 3
    const scale = metric ? 1000 : FOOT
    return { is: 'marks', aMm: a * scale, bMm: b * scale, acrossMm: lengths.at(-1)! }
  }
  return has(w.diagonals) && lengths.length >= 2 ? { is: 'diagonals', mm: lengths } : null
}
