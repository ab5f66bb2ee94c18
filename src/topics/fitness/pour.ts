/** Self-levelling underlayment: bags for a floor at a depth, how deep it may go, and when it takes tile. */
import { fillerBags, roughFillL } from '../../core/substrate/filler.ts'
import type { Heard } from '../../language/heard.ts'
import type { Quantity } from '../../language/measures.ts'
import { area, count, hours, instant, type Phrase, say, small, volume } from '../../phrase.ts'
import { yielding } from '../../practice.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { type Leveller, type Pack, usualPack } from '../../settings.ts'
import { alone } from '../around/read.ts'
import { floorSum } from '../floors.ts'
import { momentTold } from '../moment-told.ts'
import { packPhrase } from '../stuff.ts'
import type { Brief, Told } from '../topic.ts'

/** A pour is asked about, not a batch of it or its place in a list. */
export const asksPour = (heard: Heard): boolean =>
  heard.has('leveller') &&
  !heard.has('water', 'mix-verb', 'order-word', 'price', 'cost', 'pot-life', 'slake', 'primer', 'step-to') &&
  !(heard.has('build-up') && (heard.quantities.length > 0 || heard.has('tile'))) &&
  (heard.has('how-many', 'how-much', 'bag', 'enough', 'thick', 'deep', 'build-up', 'when', 'how-long') ||
    (heard.has('can-we') && heard.has('tile', 'walk')))

export function pour(brief: Brief): Outcome<Told> {
  const { heard } = brief
  const { material, pack } = levellerOf(brief)
  const asksTime = heard.has('when', 'how-long') || (heard.has('can-we') && heard.has('tile', 'walk'))
  if (asksTime && !heard.has('how-many', 'how-much', 'bag')) return fine(waits(brief, material))
  const floor = floorSum(floorFacts(brief))
  if (!floor.ok) return floor
  const said = sumOf(brief)
  if (!floor.value && said.depthMm === null && !said.own) return fine(depths(material))
  if (!floor.value) return refuse('question', { question: 'area' })
  if (said.depthMm === null) return refuse('question', { question: 'pour-depth' })
  const areaM2 = said.floorM2 ?? floor.value.areaM2
  const yieldL = said.own ? said.own.m2 * said.own.depthMm : yielding(material, pack).yieldL
  const rough = said.isGap ? roughFillL(areaM2, said.depthMm) : null
  const [lowL, highL] = rough ? [rough.lowL, rough.highL] : [areaM2 * said.depthMm, areaM2 * said.depthMm]
  const [low, high] = [fillerBags(lowL, yieldL), fillerBags(highL, yieldL)]
  if (!low.ok) return low
  if (!high.ok) return high
  const numbers = {
    bags: count(high.value),
    low: count(low.value),
    pack: packPhrase(pack),
    area: area(areaM2),
    depth: small(said.depthMm),
    fill: volume(highL),
    yield: volume(yieldL),
  }
  return fine({
    topic: 'substrate',
    answer: say(rough && low.value < high.value ? 'pour.patch' : rough ? 'pour.patch-one' : 'pour.bags', numbers),
    details: [say('pour.volume', numbers), say('pour.once'), ...(rough ? [] : edgeOf(material, said.depthMm))],
    assumed: said.own
      ? [say('pour.own', numbers)]
      : [say('grid.assumed-yield', { yield: volume(yieldL), bag: packPhrase(pack) })],
    sources: [{ text: material.source }],
    working: [say('pour.work', numbers)],
    values: {
      area_m2: areaM2,
      fill_l: highL,
      ...(rough ? { fill_l_low: lowL, fill_l_high: highL, leveller_bags_low: low.value } : {}),
      leveller_bags: high.value,
      min_bed_mm: material.minBedMm,
      max_bed_mm: material.maxBedMm,
    },
  })
}

const LEAST_LOOSE_FEET = 20

/** "130 feet" of a pour are square feet. [m2] */
const looseFeetM2 = ({ heard }: Brief): number | undefined => {
  const q = alone(heard).find((one) => one.unit === 'ft' && !one.compound && one.n > LEAST_LOOSE_FEET)
  return q && q.n * 0.09290304
}

const floorFacts = (brief: Brief) => {
  const { facts, heard } = brief
  const areaM2 = heard.facts.areaM2 ?? (heard.facts.rooms ? undefined : looseFeetM2(brief))
  return heard.facts.rooms || areaM2 !== undefined
    ? { rooms: heard.facts.rooms, areaM2 }
    : { rooms: facts.rooms, areaM2: facts.areaM2, leftM2: facts.leftM2 }
}

function levellerOf(brief: Brief): { readonly material: Leveller; readonly pack: Pack } {
  const found = Object.values(brief.settings.materials).find((m): m is Leveller => m.kind === 'leveller')!
  const usual = usualPack(found, brief.metric ? 'metric' : 'imperial')
  const kg = brief.heard.facts.bagKg
  return { material: found, pack: kg === undefined ? usual : { name: '', kg } }
}

type Sum = {
  readonly depthMm: number | null
  /** The depth is the deepest gap under a straightedge. */
  readonly isGap: boolean
  /** The crew's own figure: so much floor a bag at a depth. */
  readonly own: { readonly m2: number; readonly depthMm: number } | null
  /** The floor, where the areas of the message are told apart. [m2] */
  readonly floorM2: number | null
}

const DEEPEST_MM = 100

function sumOf({ heard, metric }: Brief): Sum {
  const lengths = alone(heard).flatMap((q) => {
    const mm = depthOf(q, metric)
    return mm !== null && mm > 0.4 && mm <= DEEPEST_MM ? [{ q, mm }] : []
  })
  const areas = heard.quantities.filter((q) => q.dimension === 'area')
  const covered = areas.find((q) => isCoverage(heard, q, areas.length))
  const at = covered ? lengths.find(({ q }) => q.first > covered.last && q.first - covered.last <= 5) : undefined
  const rest = lengths.filter((one) => one !== at)
  const gap = heard.rules.figures.gap
  const flat = heard.rules.subjects.some((hit) => hit.name === 'flatness') && !heard.has('thick', 'deep')
  const floors = areas.filter((q) => q !== covered)
  return {
    depthMm: gap?.gapMm ?? rest[0]?.mm ?? null,
    isGap: gap !== null || (flat && rest.length > 0),
    own: covered && at ? { m2: covered.si as number, depthMm: at.mm } : null,
    floorM2: covered && floors.length > 0 ? floors.reduce((sum, q) => sum + (q.si as number), 0) : null,
  }
}

const depthOf = (q: Quantity, metric: boolean): number | null =>
  q.dimension === 'length' && !['ft', 'm', 'yd'].includes(q.unit ?? '')
    ? q.si
    : q.dimension === 'none' && q.token.fraction && !metric
      ? q.n * 25.4
      : null

/** "13 m2 a bag at 1 mm", "rinde 13 m2 a 1 mm": what a bag covers, not the floor. */
function isCoverage({ reader, facts }: Heard, q: Quantity, areas: number): boolean {
  if (facts.coverageM2 === q.si) return true
  if (areas < 2) return false
  return [1, 2, 3].some((k) => reader.is(q.first - k, 'cover', 'bag'))
}

function edgeOf(material: Leveller, depthMm: number): Phrase[] {
  if (depthMm > material.maxBedMm) return [say('pour.too-deep', { most: small(material.maxBedMm) })]
  return depthMm < material.minBedMm ? [say('pour.too-thin', { least: small(material.minBedMm) })] : []
}

const depths = (material: Leveller): Told => ({
  topic: 'substrate',
  answer: say('pour.depths', { least: small(material.minBedMm), most: small(material.maxBedMm) }),
  sources: [{ text: material.source }],
  values: { min_bed_mm: material.minBedMm, max_bed_mm: material.maxBedMm },
})

/** "poured at noon, when can we tile?" */
function waits(brief: Brief, material: Leveller): Told {
  const { tile, walk } = material.waits
  const start = momentTold(brief, true)?.iso ?? null
  const after = (h: number): string =>
    Temporal.Instant.from(start as string)
      .add({ minutes: Math.round(h * 60) })
      .toZonedDateTimeISO(brief.zone ?? /[+-]\d\d:\d\d$/.exec(start as string)?.[0] ?? 'UTC')
      .toString({ timeZoneName: 'never', smallestUnit: 'second' })
  const args = { low: hours(tile.h), high: hours(tile.longestH), walk: hours(walk.h), walkHigh: hours(walk.longestH) }
  return {
    topic: 'substrate',
    answer: start ? say('pour.tile-at', { ...args, at: instant(after(tile.longestH)) }) : say('pour.tile-after', args),
    details: [say('pour.walk-after', args), say('pour.deep-waits')],
    sources: [{ text: material.source }],
    values: {
      tile_after_h: tile.longestH,
      tile_after_h_low: tile.h,
      walk_after_h: walk.longestH,
      walk_after_h_low: walk.h,
      ...(start ? { tile_at: after(tile.longestH), walk_at: after(walk.longestH) } : {}),
    },
  }
}
