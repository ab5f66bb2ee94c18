/** The order: everything for the job in one list, what it costs, what is missing; what it weighs and how high it builds. */
import { type Missing, missingFrom, type OnHand, type Order, orderOf } from '../core/order.ts'
import type { Price } from '../facts.ts'
import { logged } from '../jobs/job.ts'
import type { Heard } from '../language/heard.ts'
import type { Quantity } from '../language/measures.ts'
import { moneyIn, PRICED } from '../language/prices.ts'
import { type Amount, area, count, mass, type Phrase, percent, say } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import { axles } from './around/axles.ts'
import { accessStep, buildUp } from './around/build-up.ts'
import { dayPlan } from './around/day-plan.ts'
import { lifting, piecesIn, weigh } from './around/haul.ts'
import { type JobLines, jobLines, type NamedLine } from './around/order-lines.ts'
import { alone, figureNear } from './around/read.ts'
import { withCautions } from './around/safety.ts'
import { standing } from './around/standing.ts'
import { trim } from './around/trim.ts'
import { floorSum } from './floors.ts'
import { type Brief, sourceOf, type Told } from './topic.ts'

export function order(brief: Brief): Outcome<Told> {
  if (brief.has('schedule')) return withCautions(brief, dayPlan(brief))
  if (brief.has('base-trim', 'profile') || isStairs(brief)) return withCautions(brief, trim(brief), 'cutting', 'gfci')
  if (brief.heard.has('appliance') && standsHere(brief)) return withCautions(brief, standing(brief), 'structure')
  const levers = brief.has('wheelbase', 'hitch-word') ? axles(brief) : null
  if (levers) return withCautions(brief, levers, 'lifting')
  if (brief.has('lift') && !brief.has('payload', 'trip', 'trailer', 'truck'))
    return withCautions(brief, lifting(brief), 'lifting')
  if (brief.has('access-word') && !brief.has('build-up')) return withCautions(brief, accessStep(brief))
  if (brief.has('build-up', 'flange', 'undercut', 'under-counter', 'step-to', 'floor-load')) return built(brief)
  if (brief.has('payload', 'trip', 'trailer', 'truck')) return withCautions(brief, weigh(brief), 'lifting')
  if (brief.has('weight-word') && !brief.has('order-word'))
    return weighsAnything(brief) && !brief.has(...LAYERED) ? withCautions(brief, weigh(brief), 'lifting') : built(brief)
  return withCautions(brief, brief.has('missing') ? missing(brief) : list(brief), 'lifting')
}

/** The build-up, with what it touches: the structure under a load, the hookups of an appliance. */
function built(brief: Brief): Outcome<Told> {
  const told = buildUp(brief)
  if (brief.has('floor-load', 'weight-word')) return withCautions(brief, told, 'structure')
  return brief.has('under-counter') ? withCautions(brief, told, 'gas', 'electric') : withCautions(brief, told)
}

const standsHere = ({ heard }: Brief): boolean =>
  heard.quantities.some((q) => q.dimension === 'mass') &&
  !heard.has('payload', 'trip', 'trailer', 'truck', 'lift', 'bag', 'box')

const isStairs = (brief: Brief): boolean => brief.has('step') && !brief.has('step-to', 'build-up')

const LAYERED = ['cork', 'foam', 'cement-board', 'fibre-cement', 'membrane', 'mud-word', 'plywood', 'leveller'] as const

const weighsAnything = (brief: Brief): boolean => {
  const floor = floorSum(brief.facts)
  return (
    (floor.ok && floor.value !== null) ||
    brief.has('pallet') ||
    (brief.facts.tile !== undefined && brief.heard.has('each', 'per') && !brief.heard.has('area-word')) ||
    (brief.facts.tile !== undefined && piecesIn(brief) !== null && !brief.heard.has('area-word', 'floor-load')) ||
    figureNear(brief.heard, ['none'], 'bag', 'box', 'sheet', 'bucket') !== null
  )
}

function priced(lines: readonly NamedLine[], prices: readonly Price[], brief: Brief): NamedLine[] {
  return lines.map((line) => {
    const price = prices.find((p) => p.what === line.what)
    if (!price) return line
    return { ...line, priceEach: price.perM2 ? price.each * tileM2(brief, line) : price.each }
  })
}

/** Face of what a tile line counts: a piece or a box of them. [m2] */
function tileM2(brief: Brief, line: NamedLine): number {
  const { tile, boxM2, boxTiles } = brief.facts
  const face = tile && tile.lengthMm > 0 ? (tile.lengthMm * tile.widthMm) / 1e6 : 1
  return line.unit === 'box' ? (boxM2 ?? face * (boxTiles ?? 1)) : line.unit === 'm2' ? 1 : face
}

const taxPct = (brief: Brief): number => figureNear(brief.heard, ['percent'], 'tax')?.n ?? 0

/** Boxes for a bare area where only what a box covers is known. */
function boxesOfArea(brief: Brief): number | null {
  const floor = floorSum(brief.facts)
  if (!brief.facts.boxM2 || !floor.ok || !floor.value) return null
  const spare = brief.facts.sparePct ?? brief.settings.practice.tile.spareStraight.value * 100
  return Math.ceil((floor.value.areaM2 * (1 + spare / 100)) / brief.facts.boxM2 - 1e-9)
}

/** Lines by what was counted or by a bare area, where no tile is known: "5 bags at $28", "168 sf at $4 a foot". */
function countedLines(brief: Brief, prices: readonly Price[]): NamedLine[] {
  const lines: NamedLine[] = []
  const { heard } = brief
  const money = moneyIn(heard.quantities, heard.reader, heard.marks)
  for (const price of prices) {
    if (price.perM2) {
      const floor = floorSum(brief.facts)
      if (!floor.ok || !floor.value) continue
      const spare = brief.facts.sparePct ?? brief.settings.practice.tile.spareStraight.value * 100
      const need = floor.value.areaM2 * (1 + spare / 100)
      lines.push({
        what: 'tile',
        need: need / 0.0001,
        unit: 'm2',
        pack: 1,
        title: say('order.item-area', { area: area(need), spare: percent(spare) }),
        priceEach: price.each * 0.0001,
      })
      continue
    }
    const boxed = price.what === 'tile' ? boxesOfArea(brief) : null
    if (boxed !== null) {
      lines.push({ what: 'tile', need: boxed, unit: 'box', title: say('order.each-box'), priceEach: price.each })
      continue
    }
    const concepts = PRICED.filter(([, what]) => what === price.what).map(([concept]) => concept)
    const pieces = brief.heard.quantities.find(
      (q) =>
        q.dimension === 'none' &&
        Number.isInteger(q.n) &&
        !money.includes(q) &&
        concepts.some((c) => brief.heard.reader.is(q.last + 1, c)),
    )
    if (pieces)
      lines.push({
        what: price.what,
        need: pieces.n,
        unit: 'piece',
        title: say(`order.each-${price.what}`),
        priceEach: price.each,
      })
  }
  return lines
}

function list(brief: Brief): Outcome<Told> {
  const prices = brief.facts.prices ?? []
  const job = jobLines(brief)
  if (!job.ok) {
    const lines = countedLines(brief, brief.heard.facts.prices ?? [])
    return lines.length ? tellOrder(brief, { lines, assumed: [], values: {}, areaM2: 0 }, lines) : job
  }
  return tellOrder(brief, job.value, priced(job.value.lines, prices, brief))
}

const money = (n: number): Amount => ({ is: 'number', n, digits: 2 })

function tellOrder(brief: Brief, job: JobLines, lines: readonly NamedLine[]): Outcome<Told> {
  const worked = orderOf(lines, taxPct(brief))
  if (!worked.ok) return worked
  const { value } = worked
  const titleOf = titlesOf(lines)
  const anyPrice = value.lines.some((l) => l.cost !== null)
  const rows = value.lines.map((l) => rowOf(titleOf, l, l.buy, l.cost))
  return fine({
    topic: 'order',
    answer: anyPrice
      ? say(value.tax > 0 ? 'order.cost-tax' : 'order.cost', {
          cost: money(value.cost),
          goods: money(value.goods),
          tax: money(value.tax),
        })
      : say('order.list', { lines: count(value.lines.length), area: area(job.areaM2) }),
    details: rows,
    assumed: [
      ...job.assumed,
      ...(anyPrice && value.unpriced.length ? [say('order.unpriced', { lines: count(value.unpriced.length) })] : []),
    ],
    warnings: [say('order.one-lot')],
    sources: [sourceOf(brief.settings.around.order.atticPct)],
    working: [
      ...rows,
      say('order.work-total', {
        goods: money(value.goods),
        tax: money(value.tax),
        cost: money(value.cost),
        mass: mass(value.kg),
      }),
    ],
    values: {
      ...job.values,
      ...(anyPrice ? { cost: value.cost } : {}),
      ...(value.kg > 0 ? { weight_kg: value.kg } : {}),
    },
    tables: [orderTable(value, titleOf)],
    offers: ['math', 'keep'],
  })
}

type Titled = { readonly what: string; readonly use?: string; readonly unit: string }
type TitleOf = (line: Titled) => Phrase | Amount

function titlesOf(lines: readonly NamedLine[]): TitleOf {
  const titles = new Map(lines.map((l) => [`${l.what} ${l.use ?? ''}`, l.title]))
  return (line) => titles.get(`${line.what} ${line.use ?? ''}`) ?? say('order.item-tile')
}

/** "5 x large-format mortar, 50 lb bag"; "49 ft of backer rod". */
function rowOf(titleOf: TitleOf, line: Titled, n: number, cost: number | null = null): Phrase {
  const key = line.unit === 'm' || line.unit === 'm2' ? 'order.row-length' : 'order.row'
  const args = { n: buyAmount(line.unit, n), what: titleOf(line) }
  return cost === null ? say(key, args) : say(`${key}-priced`, { ...args, cost: money(cost) })
}

const buyAmount = (unit: string, n: number): Amount =>
  unit === 'm2' ? area(n * 0.0001) : unit === 'm' ? { is: 'run', mm: n * 1000 } : count(n)

function orderTable(worked: Order, titleOf: TitleOf): NonNullable<Told['tables']>[number] {
  return {
    name: 'order.csv',
    head: ['order.col-quantity', 'order.col-unit', 'order.col-what', 'order.col-price', 'order.col-cost'].map((key) =>
      say(key),
    ),
    rows: worked.lines.map((l) => [l.buy, say(`order.unit-${l.unit}`), titleOf(l), l.priceEach ?? null, l.cost]),
  }
}

/** Words between a count and what it counts: "4 half-full bags of the grey thinset". */
const COUNT_REACH = 6

/** What a figure counts: "4 bags of thinset and 60 tiles" are bags of mortar, and tiles. */
function countedIn({ reader }: Heard, q: Quantity): Price['what'] | null {
  let found: Price['what'] | null = null
  for (let i = q.last + 1; i <= q.last + COUNT_REACH; i++) {
    if (reader.number(i) || reader.sign(i) === ',' || reader.is(i, 'and', 'plus')) break
    const what = PRICED.find(([concept]) => reader.is(i, concept))
    // "bags of thinset": the stuff goes before its bag.
    if (what && (found === null || reader.is(i, 'grout', 'mortar'))) found = what[1]
  }
  return found
}

/** What the job's log says was used or is on hand: the list is for the whole floor, so what was used was got. */
function fromLog({ memory, facts }: Brief): OnHand[] {
  const { job } = memory
  const stock: OnHand[] = []
  for (const what of ['mortar', 'grout'] as const) {
    const log = logged(job, what)
    if (log.any) stock.push({ what, packs: log.bags + (log.leftBags ?? 0) })
  }
  const tile = logged(job, 'tile')
  if (!tile.any) return stock
  const boxed = (tile.leftBoxes ?? 0) * (facts.boxTiles ?? 0)
  return [...stock, { what: 'tile', packs: tile.tiles + (tile.leftTiles ?? 0) + boxed }]
}

/** What is still to be bought beside what the message says is on hand. */
function missing(brief: Brief): Outcome<Told> {
  const job = jobLines(brief)
  if (!job.ok) return job
  const worked = orderOf(job.value.lines)
  if (!worked.ok) return worked
  const onHand: OnHand[] = []
  for (const q of alone(brief.heard)) {
    const what = q.dimension === 'none' ? countedIn(brief.heard, q) : null
    if (what && !onHand.some((h) => h.what === what)) onHand.push({ what, packs: q.n })
  }
  for (const stock of fromLog(brief)) if (!onHand.some((h) => h.what === stock.what)) onHand.push(stock)
  const left = missingFrom(worked.value.lines, onHand)
  const titleOf = titlesOf(job.value.lines)
  const row = (m: Missing): Phrase => rowOf(titleOf, m, m.packs)
  if (!onHand.length && !left.length) return refuse('question', { question: 'on-hand' })
  return fine({
    topic: 'order',
    answer: left.length ? say('order.missing', { lines: count(left.length) }) : say('order.nothing-missing'),
    details: left.map(row),
    assumed: job.value.assumed,
    working: worked.value.lines.map((l) => rowOf(titleOf, l, l.buy)),
    values: {
      area_m2: job.value.areaM2,
      bags_to_buy: left.filter((m) => m.what === 'mortar').reduce((sum, m) => sum + m.packs, 0),
      missing_lines: left.length,
    },
    offers: ['math'],
  })
}
