/** Rooms told corner by corner ("corners 0,0 12,0 12,8 ...") or wall by wall ("walls: 12 right, 8 down, ..."). */
import type { Room } from '../facts.ts'
import type { Problem } from '../problem.ts'
import type { UnitName } from '../units/names.ts'
import type { Mark } from './lexicon.ts'
import { type Reader, toSi } from './measures.ts'

export type CornersHeard = { readonly room: Room; readonly problem: Problem | null }

const POINT = /(-?\d+(?:\.\d+)?)\s?,\s?(-?\d+(?:\.\d+)?)/g
const LEAST_CORNERS = 3

/** The unit written behind the list ("in feet", "mm"), else feet or metres by the crew's habit. */
function unitOf(text: string, metric: boolean): UnitName {
  const said = /\b(mm|cm|m|ft|feet|in|inches)\b/.exec(text)?.[1]
  const names: Record<string, UnitName> = { feet: 'ft', inches: 'in' }
  return said ? (names[said] ?? (said as UnitName)) : metric ? 'm' : 'ft'
}

function cornerList(text: string, metric: boolean): Room | null {
  const unit = unitOf(text, metric)
  const points = [...text.matchAll(POINT)].map((m) => [toSi(Number(m[1]), unit), toSi(Number(m[2]), unit)] as const)
  return points.length >= LEAST_CORNERS ? { count: 1, pieces: [], cornersMm: points } : null
}

const STEPS = { 'right-side': [1, 0], 'left-side': [-1, 0], 'top-side': [0, 1], 'bottom-side': [0, -1] } as const
const CLOSED_WITHIN_MM = 1

/** Walks the walls; what is missing at the end to the start is the closing error. */
function wallWalk(reader: Reader, marks: readonly Mark[], metric: boolean): Room | null {
  let [x, y] = [0, 0]
  const corners: (readonly [number, number])[] = [[0, 0]]
  for (let i = 0; i < reader.tokens.length; i++) {
    const q = reader.quantity(i)
    if (!q) continue
    const step = marks.find((m) => m.first > q.last && m.first <= q.last + 2 && m.concept in STEPS)
    i = q.last
    if (!step) continue
    const [dx, dy] = STEPS[step.concept as keyof typeof STEPS]
    const mm = q.si ?? toSi(q.n, metric ? 'm' : 'ft')
    x += dx * mm
    y += dy * mm
    corners.push([x, y])
  }
  if (corners.length <= LEAST_CORNERS) return null
  const closingErrorMm = Math.hypot(x, y)
  // The last corner is the first again, as near as the tape allows.
  corners.pop()
  return { count: 1, pieces: [], cornersMm: corners, ...(closingErrorMm > CLOSED_WITHIN_MM ? { closingErrorMm } : {}) }
}

export function readCorners(
  text: string,
  reader: Reader,
  marks: readonly Mark[],
  metric: boolean,
): CornersHeard | null {
  const list = marks.find((m) => m.concept === 'corners-list')
  if (list) {
    const from = reader.tokens[list.first + list.count - 1].to
    const room = cornerList(text.slice(from), metric)
    if (room) return { room, problem: null }
  }
  if (marks.some((m) => m.concept === 'walls-walk')) {
    const room = wallWalk(reader, marks, metric)
    if (room) return { room, problem: null }
  }
  return null
}
