/** `npm run -s offcuts -- [FILE]`: cut lists in, plans out, a JSON line each. */
import type { CutOrder, PieceWanted } from '../../src/core/offcuts/order.ts'
import { planCuts } from '../../src/core/offcuts/plan.ts'
import { fine, type Outcome, refuse } from '../../src/problem.ts'
import { type Fields, fieldsOf, numberIn, pairIn } from './fields.ts'
import { answerLines } from './lines.ts'

const DEFAULT_KERF_MM = 3

/** The plan for one line's list, or its problem. */
export function offcuts(asked: unknown): Outcome<unknown> {
  const fields = fieldsOf(asked)
  if (!fields.ok) return fields
  const order = orderOf(fields.value)
  return order.ok ? planned(order.value) : order
}

function planned(order: CutOrder): Outcome<unknown> {
  const start = performance.now()
  const outcome = planCuts(order)
  const ms = Math.round((performance.now() - start) * 1000) / 1000
  if (!outcome.ok) return outcome
  const { stockTiles, bound, proven, plan } = outcome.value
  return fine({
    stock_tiles: stockTiles,
    bound,
    proven,
    plan: plan.map(({ times, cut }) => ({
      times,
      cut: cut.map(({ xMm, yMm, wMm, hMm }) => ({ x: xMm, y: yMm, w: wMm, h: hMm })),
    })),
    ms,
  })
}

function orderOf(fields: Fields): Outcome<CutOrder> {
  const stock = pairIn(fields, 'stock_mm')
  if (!stock.ok) return stock
  const kerf = numberIn(fields, 'kerf_mm', DEFAULT_KERF_MM)
  if (!kerf.ok) return kerf
  const pieces = piecesIn(fields['pieces'])
  if (!pieces.ok) return pieces
  const { turn = false, max_a_tile: most = null } = fields
  if (typeof turn !== 'boolean') return refuse('not-understood', { said: `turn: ${JSON.stringify(turn)}` })
  if (most !== null && typeof most !== 'number') return refuse('not-a-number', { said: 'max_a_tile' })
  const [stockWMm, stockHMm] = stock.value
  const direction = turn ? 'quarter' : 'none'
  return fine({ stockWMm, stockHMm, kerfMm: kerf.value, pieces: pieces.value, turn: direction, maxATile: most })
}

function piecesIn(given: unknown): Outcome<PieceWanted[]> {
  if (!Array.isArray(given)) return refuse('missing', { field: 'pieces' })
  const pieces: PieceWanted[] = []
  for (const [index, piece] of given.entries()) {
    const { w, h, qty = 1 } = (piece ?? {}) as Record<string, unknown>
    if (typeof w !== 'number' || typeof h !== 'number' || typeof qty !== 'number')
      return refuse('not-a-number', { said: `pieces[${index}]` })
    pieces.push({ wMm: w, hMm: h, qty })
  }
  return fine(pieces)
}

/** Plans ahead of the first line, hard ones among them, so that `ms` is the planning's own and not the compiler's. */
function warmUp(): void {
  for (let i = 0; i < 40; i++) {
    const sizes = Array.from({ length: 26 + (i % 12) }, (_, n) => [
      60 + ((n * 137 + i * 61) % 430),
      60 + ((n * 53 + i * 17) % 240),
    ])
    const pieces = sizes.map(([w, h]) => ({ w, h }))
    offcuts({ stock_mm: [610, 305], pieces: pieces.slice(0, 8 + i), turn: i % 2 === 0 })
    offcuts({ stock_mm: [610, 305], pieces: pieces.map(({ w }) => ({ w, h: 305 })) })
  }
}

if (import.meta.main) {
  warmUp()
  await answerLines(offcuts)
}
