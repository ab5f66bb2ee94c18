/** The fewest tiles that give all pieces: quick rules and bounds first, and only where they differ an exact search, with
 *  its work counted in steps, so that the same order gets the same plan at every run. */
import { fine, type Outcome, refuse } from '../../problem.ts'
import { bothWays } from './both-ways.ts'
import { sizeBound } from './bounds.ts'
import { cover, dive } from './cover.ts'
import { fillTiles } from './fill.ts'
import { Groups, type Lying } from './groups.ts'
import { type CutOrder, type CutPlan, checkOrder, type Placed, type TileCut } from './order.ts'
import { greedyPairs, layPair, matchPairs, pairFits } from './pairs.ts'
import { patternsOneWay } from './patterns.ts'
import { prices } from './prices.ts'
import { quickPlan, quickRules } from './quick.ts'
import { oneWay, openShop, type Shop } from './shop.ts'

/** Steps each part may take: together under 10 ms for 40 pieces on a slow machine. */
const BUDGET = {
  fill: 40_000,
  patterns: 10_000,
  patternWork: 100_000,
  simplex: 150,
  cover: 100_000,
  /** Above this the exact searches are left out. */
  pieces: 250,
  kinds: 120,
  matching: 400,
  /** Kinds that are still paired. */
  pairing: 3000,
} as const

/** Cuts all pieces of an order from as few stock tiles as can be found. Cuts are guillotine (straight through what is
 *  left of the tile), any number of stages; k pieces side by side lose k - 1 kerfs; the last trim may be less than a kerf.
 *  Never more tiles than first-fit decreasing. Sizes [mm]: stock 1 to 20,000, kerf 0 to 50, up to 10,000 pieces.
 *  `piece` in the plan is the index of the first equal piece of the order.
 *  @problem out-of-range a side, kerf, quantity or limit outside its range, a piece larger than the tile, or one whose
 *  factory sides no tile offers (both of two opposite sides, but shorter than the tile)
 *  @problem missing no pieces
 *  @problem too-much-work more than 10,000 pieces */
export function planCuts(order: CutOrder): Outcome<CutPlan> {
  const checked = checkOrder(order)
  if (!checked.ok) return checked
  const shop = openShop(order)
  if ('impossible' in shop) return impossible(order, shop.impossible)
  const alone = oneEach(order)
  if (alone) return fine(alone)
  const found = new Planner(shop).run()
  const plan = written(order, shop, found.tiles)
  return fine({ stockTiles: found.tiles.length, bound: found.bound, proven: found.tiles.length === found.bound, plan })
}

/** Most rooms' cuts are over half a tile: where no two pieces share a tile each takes one, and there is nothing to search. */
function oneEach(order: CutOrder): CutPlan | null {
  const { stockWMm: w, stockHMm: h, kerfMm: kerf, pieces } = order
  if (order.turn === 'quarter') return null
  const wanted = pieces.map((p, piece) => ({ ...p, piece })).filter((p) => p.qty > 0)
  for (const [i, a] of wanted.entries())
    for (const b of wanted.slice(a.qty > 1 ? i : i + 1))
      if (a.wMm + b.wMm + kerf <= w + 1e-6 || a.hMm + b.hMm + kerf <= h + 1e-6) return null
  const plan = wanted.map(({ wMm, hMm, qty, factory = [], piece }): TileCut => {
    const xMm = factory.includes('right') ? w - wMm : 0
    const yMm = factory.includes('top') ? h - hMm : 0
    return { times: qty, cut: [{ xMm, yMm, wMm, hMm, piece }] }
  })
  const stockTiles = wanted.reduce((sum, p) => sum + p.qty, 0)
  return { stockTiles, bound: stockTiles, proven: true, plan }
}

function impossible(order: CutOrder, index: number) {
  const { wMm, hMm, factory = [] } = order.pieces[index]!
  const wide = factory.includes('left') && factory.includes('right') && wMm < order.stockWMm
  return wide
    ? refuse('out-of-range', { field: 'w', value: wMm, min: order.stockWMm, max: order.stockWMm, unit: 'mm' })
    : refuse('out-of-range', { field: 'h', value: hMm, min: order.stockHMm, max: order.stockHMm, unit: 'mm' })
}

class Planner {
  readonly shop: Shop
  readonly line: ReturnType<typeof oneWay>
  readonly qty: number[]
  tiles: Lying[][]
  bound: number
  readonly measures: readonly Float64Array[]

  constructor(shop: Shop) {
    this.shop = shop
    this.line = oneWay(shop)
    this.qty = shop.kinds.map((k) => k.qty)
    const { bound, measures } = sizeBound(shop)
    this.bound = bound
    this.measures = measures
    this.tiles = []
  }

  get open(): boolean {
    return this.tiles.length > this.bound
  }

  run(): { tiles: Lying[][]; bound: number } {
    for (const rule of quickRules(this.shop)) {
      if (this.tiles.length && !this.open) break
      this.offer(quickPlan(this.shop, rule))
    }
    if (this.open && this.shop.max >= 2 && this.shop.kinds.length <= BUDGET.pairing) this.pair()
    const small = this.shop.pieces <= BUDGET.pieces && this.shop.kinds.length <= BUDGET.kinds
    if (this.open && small && this.line) this.fill()
    if (this.open && small && this.line) this.coverLine(this.line.sizes, this.line.capacity)
    if (this.open && small && !this.line) {
      const { tiles, bound } = bothWays(new Groups(this.shop), this.measures, this)
      this.offer([...tiles])
      this.bound = bound
    }
    return { tiles: this.tiles, bound: this.bound }
  }

  offer(tiles: Lying[][]): void {
    if (this.tiles.length === 0 || tiles.length < this.tiles.length) this.tiles = tiles
  }

  offerKinds(tiles: readonly (readonly number[])[]): void {
    if (tiles.length < this.tiles.length) this.tiles = tiles.map((kinds) => this.lay(kinds))
  }

  lay(kinds: readonly number[]): Lying[] {
    const { line, shop } = this
    if (!line) return layPair(shop, kinds)
    let at = 0
    return kinds.map((kind) => {
      const size = line.sizes[kind]!
      const pose = shop.kinds[kind]!.poses.find((p) => (line.upright ? p.h : p.w) === size)!
      const lying = { kind, x: line.upright ? 0 : at, y: line.upright ? at : 0, w: pose.w, h: pose.h }
      at += size
      return lying
    })
  }

  /** Whether no tile gives three pieces: then pairing is all there is, and a largest matching is the optimum. */
  get atMostPairs(): boolean {
    const { shop, line } = this
    if (shop.max === 2) return true
    const smallest = (sizes: readonly number[]) =>
      shop.kinds
        .flatMap((k, i) => Array<number>(Math.min(3, k.qty)).fill(sizes[i]!))
        .sort((a, b) => a - b)
        .slice(0, 3)
        .reduce((sum, s) => sum + s, 0)
    if (shop.pieces < 3) return true
    return line ? smallest(line.sizes) > line.capacity : smallest(shop.kinds.map((k) => k.area)) > shop.area
  }

  /** Kinds from the largest: by the one size that counts where there is one, else by area. */
  get order(): number[] {
    const kinds = this.qty.map((_, kind) => kind)
    const sizes = this.line?.sizes
    return sizes ? kinds.sort((a, b) => sizes[b]! - sizes[a]!) : kinds
  }

  /** Two from a tile at most: exact where no tile gives more, a plan to compare with elsewhere. */
  pair(): void {
    const { shop, line } = this
    const fits = (a: number, b: number) =>
      line ? line.sizes[a]! + line.sizes[b]! <= line.capacity : pairFits(shop, a, b)
    const exact = this.atMostPairs
    const order = this.order
    const greedy = greedyPairs(
      order.map((k) => this.qty[k]!),
      (a, b) => fits(order[a]!, order[b]!),
    )
    this.offerKinds(greedy.map((tile) => tile.map((k) => order[k]!)))
    if (exact && line) this.bound = Math.max(this.bound, greedy.length)
    if (!this.open || shop.pieces > BUDGET.matching || (!exact && shop.max > 3 && !this.anchored)) return
    const kinds = this.qty.flatMap((n, kind) => Array<number>(n).fill(kind))
    const mate = matchPairs(kinds.length, (a, b) => fits(kinds[a]!, kinds[b]!))
    const tiles: number[][] = []
    mate.forEach((other, one) => {
      if (other < one) tiles.push(other === -1 ? [kinds[one]!] : [kinds[one]!, kinds[other]!])
    })
    this.offerKinds(tiles)
    if (exact) this.bound = Math.max(this.bound, tiles.length)
  }

  get anchored(): boolean {
    return this.shop.kinds.some((k) => k.poses.some((p) => p.needs))
  }

  /** One direction: tile after tile, the target raised while the search proves that fewer will not do. */
  fill(): void {
    const { sizes, capacity } = this.line!
    const order = this.order
    const task = {
      sizes: order.map((k) => sizes[k]!),
      qty: order.map((k) => this.qty[k]!),
      capacity,
      max: this.shop.max,
    }
    while (this.open) {
      const { tiles, exhausted } = fillTiles(task, this.bound, BUDGET.fill)
      if (tiles) this.offerKinds(tiles.map((tile) => tile.map((k) => order[k]!)))
      if (tiles || !exhausted) return
      this.bound++
    }
  }

  /** One direction: all patterns of a tile, their prices, and a search for the tiles that lose little. */
  coverLine(sizes: readonly number[], capacity: number): void {
    const limits = { patterns: BUDGET.patterns, work: BUDGET.patternWork }
    const patterns = patternsOneWay(this.shop, sizes, capacity, limits)
    const singles = this.shop.kinds.map((k, kind) => ({ kinds: [kind], counts: [1], area: k.area }))
    const list = patterns.complete ? patterns.list : [...patterns.list, ...singles]
    const price = prices(this.qty, list, BUDGET.simplex)
    const worth = this.qty.reduce((sum, n, kind) => sum + n * price[kind]!, 0)
    if (patterns.complete) this.bound = Math.max(this.bound, Math.ceil(worth - 1e-6))
    if (!this.open) return
    const task = { demand: this.qty, patterns: list, price }
    this.offerKinds(dive(task))
    while (this.open) {
      const { tiles, exhausted } = cover(task, this.bound, BUDGET.cover)
      if (tiles) this.offerKinds(tiles)
      if (tiles || !exhausted || !patterns.complete) break
      this.bound++
    }
  }
}

/** The plan in the order's own sizes, equal tiles together. */
function written(order: CutOrder, shop: Shop, tiles: readonly (readonly Lying[])[]): TileCut[] {
  const ways = new Map<string, { times: number; cut: Placed[] }>()
  for (const tile of tiles) {
    const key = tile.map((l) => `${l.kind} ${l.x} ${l.y} ${l.w}`).join()
    const known = ways.get(key)
    if (known) known.times++
    else ways.set(key, { times: 1, cut: tile.map((lying) => placed(order, shop, lying)) })
  }
  return [...ways.values()]
}

function placed(order: CutOrder, shop: Shop, { kind, x, y, w, h }: Lying): Placed {
  const { piece } = shop.kinds[kind]!
  const { wMm, hMm } = order.pieces[piece]!
  const { turned } = shop.kinds[kind]!.poses.find((p) => p.w === w && p.h === h)!
  return {
    xMm: x / shop.unitsPerMm,
    yMm: y / shop.unitsPerMm,
    wMm: turned ? hMm : wMm,
    hMm: turned ? wMm : hMm,
    piece,
  }
}
