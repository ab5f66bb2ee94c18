/** Levelling: clips for a floor, wedges for the days it takes, when they come off. */
import { cure } from '../core/cure.ts'
import { sharedEdges } from '../core/layout/edges.ts'
import { type ClipRule, clipsForEdges, clipsPerTile, wedgesFor } from '../core/levelling.ts'
import { moduleM2 } from '../core/tile.ts'
import type { Facts, Tile } from '../facts.ts'
import { isTypicalTile } from '../language/sold-sizes.ts'
import { area, count, hours, number, type Phrase, percent, say, small, temperature } from '../phrase.ts'
import { cureLimits } from '../practice.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import { clipsNeeded } from './around/about.ts'
import { haveOf, verdictOf } from './around/enough.ts'
import { dayM2, withoutDay } from './around/pace.ts'
import { alone, figureNear, lengthMm } from './around/read.ts'
import { byTiling } from './by-tiling.ts'
import { floorSum } from './floors.ts'
import { type LaidFloor, laidFor, tiledFloor } from './plan.ts'
import { temperaturesOf } from './site.ts'
import { jointOf, knownTile, mortarOf, tilePhrase, usualJointMm } from './stuff.ts'
import { type Brief, sourceOf, type Told } from './topic.ts'

export function levelling(brief: Brief): Outcome<Told> {
  const isCount = brief.has('how-many', 'how-much')
  const asksWhen =
    (brief.has('when', 'how-long') || (brief.has('can-we') && brief.heard.has('remove-word'))) && !isCount
  const noFloor = brief.heard.facts.rooms === undefined && brief.heard.facts.areaM2 === undefined
  if (!asksWhen && !isCount && noFloor && asksWhether(brief)) return fine(clipsNeeded(brief))
  return asksWhen ? removal(brief) : byTiling(brief, clips)
}

/** "are clips required", "can I use clips on 12x12": no floor and nothing to count. */
const asksWhether = (brief: Brief): boolean =>
  brief.heard.has('can-we') || (brief.heard.rules.stances.length > 0 && !brief.heard.has('enough'))

/** A shorter length is a joint. */
const LEAST_SPACING_MM = 75

/** From here on a length beside clips is the floor's. [mm] */
const MOST_SPACING_MM = 3000

/** The rule with the spacing the crew named. */
function ruleOf(brief: Brief, assumed: Phrase[]): ClipRule {
  const { levelling: l } = brief.settings.around
  const q = figureNear(brief.heard, ['length'], 'joint', 'spacer', 'per', 'each', 'clip', 'apart')
  // "every 6 in 24x24": the "in" belongs to the tile, the figure to "every".
  const bare = alone(brief.heard).find((one) => one.unit === null && brief.heard.reader.is(one.first - 1, 'each'))
  // "at 12 in spacing" reads as a joint, but no joint is that wide.
  const wide = brief.facts.jointMm !== undefined && brief.facts.jointMm >= LEAST_SPACING_MM ? brief.facts.jointMm : null
  const said = wide ?? q?.si ?? (bare ? lengthMm(bare, brief.metric) : null)
  const spacingMm = said !== null && said >= LEAST_SPACING_MM && said < MOST_SPACING_MM ? said : l.spacingMm.value
  if (spacingMm !== said)
    assumed.push(say('levelling.assumed-spacing', { spacing: small(spacingMm), corner: small(l.cornerMm.value) }))
  return { spacingMm, cornerMm: l.cornerMm.value, singleUnderMm: l.singleUnderMm.value }
}

type Counted = { readonly clips: number; readonly tiles: number; readonly working: Phrase }

/** Clips without spares: by the edges that tiles share on the floor as laid, else by the clips a tile brings. */
function counted(facts: Facts, tile: Tile, jointMm: number, areaM2: number, rule: ClipRule): Outcome<Counted> {
  const perTile = clipsPerTile(tile.lengthMm, tile.widthMm, rule)
  if (!perTile.ok) return perTile
  const laid = laidFor(facts, tile, jointMm)
  if (laid?.ok) return onEdges(laid.value, rule)
  const tiles = areaM2 / moduleM2({ shape: 'rectangle', lengthMm: tile.lengthMm, widthMm: tile.widthMm, jointMm })
  const clips = tiles * perTile.value
  return fine({
    clips,
    tiles,
    working: say('levelling.work-area', {
      tiles: number(tiles, 1),
      each: count(perTile.value),
      clips: number(clips, 0),
    }),
  })
}

function onEdges({ rooms, cells }: LaidFloor, rule: ClipRule): Outcome<Counted> {
  let [clips, shared] = [0, 0]
  for (const laid of rooms) {
    const { room, start } = laid
    const edges = sharedEdges(tiledFloor(laid), start.spec)
    if (!edges.ok) return edges
    const here = clipsForEdges(edges.value, rule)
    if (!here.ok) return here
    clips += here.value * room.count
    shared += edges.value.reduce((sum, edge) => sum + edge.count, 0) * room.count
  }
  const args = { tiles: count(cells), edges: count(shared), clips: count(clips) }
  return fine({ clips, tiles: cells, working: say('levelling.work-edges', args) })
}

/** The floor, or the area that a number of tiles covers: "clips for 120 tiles". */
function floorOrTiles(brief: Brief, facts: Facts, tile: Tile): Outcome<{ areaM2: number } | null> {
  const floor = floorSum(facts)
  if (!floor.ok || floor.value) return floor
  const pieces = figureNear(brief.heard, ['none'], 'tile', 'piece', 'plank')
  if (!pieces || !Number.isInteger(pieces.n) || pieces.n < 2 || pieces.n > 1_000_000) return fine(null)
  const jointMm = facts.jointMm ?? usualJointMm(brief)
  const { lengthMm, widthMm } = tile
  return fine({ areaM2: pieces.n * moduleM2({ shape: 'rectangle', lengthMm, widthMm, jointMm }) })
}

/** "do I need clips for 24x48": the one bare pair is a size that tile is sold in, and no room. */
function tileAsRoom(brief: Brief): Outcome<Told> | null {
  const rooms = brief.heard.sizes.filter((size) => size.role === 'room')
  const [a, b] = rooms[0]?.item.parts ?? []
  if (rooms.length !== 1 || !a || !b || a.unit !== null || b.unit !== null || !isTypicalTile(a.n, b.n)) return null
  if (brief.heard.facts.areaM2 !== undefined || Math.max(a.n, b.n) < 24) return null
  return perTileOnly(brief, { lengthMm: Math.max(a.n, b.n) * 25.4, widthMm: Math.min(a.n, b.n) * 25.4 })
}

/** "how many clips per 24x24 tile" */
function perTileOnly(brief: Brief, tile: Tile): Outcome<Told> {
  const assumed: Phrase[] = []
  const each = clipsPerTile(tile.lengthMm, tile.widthMm, ruleOf(brief, assumed))
  if (!each.ok) return each
  const size = tilePhrase(tile, brief.metric)
  return fine({
    topic: 'levelling',
    answer: say('levelling.per-tile', { clips: count(each.value), tile: size }),
    details: [say('levelling.shared')],
    assumed,
    sources: [sourceOf(brief.settings.around.levelling.spacingMm)],
    working: [say('levelling.shared')],
    values: { clips: each.value, tile_length_mm: tile.lengthMm, tile_width_mm: tile.widthMm },
    offers: ['math'],
  })
}

const MOST_CLIPS = 10_000_000

function clips(brief: Brief): Outcome<Told> {
  const assumed: Phrase[] = []
  const day = withoutDay(brief)
  const { jointMm, ...rest } = day
  const facts = jointMm !== undefined && jointMm >= LEAST_SPACING_MM ? rest : day
  const tile = knownTile(facts)
  if (!tile) return tileAsRoom(brief) ?? refuse('question', { question: 'tile' })
  const floor = floorOrTiles(brief, facts, tile)
  if (!floor.ok) return floor
  if (!floor.value)
    return brief.heard.has('per', 'each') ? perTileOnly(brief, tile) : refuse('question', { question: 'area' })
  const { areaM2 } = floor.value
  const { levelling: l } = brief.settings.around
  const rule = ruleOf(brief, assumed)
  const plain = counted(facts, tile, jointOf({ ...brief, facts }, assumed), areaM2, rule)
  if (!plain.ok) return plain
  if (!(plain.value.clips < MOST_CLIPS)) return refuse('too-much-work', { what: count(Math.round(plain.value.clips)) })
  const buy = Math.ceil(plain.value.clips * (1 + l.sparePct.value / 100) - 1e-9)
  const m2 = dayM2(brief, assumed)
  const clipsADay = Math.min(plain.value.clips, (plain.value.clips * m2) / areaM2)
  const free = freeAfter(brief)
  if (!free.ok) return free
  const wedges = wedgesFor({ clipsADay, freeAfterH: free.value.highH })
  if (!wedges.ok) return wedges
  const size = tilePhrase(tile, brief.metric)
  const verdict = verdictOf(haveOf(brief, 'clip'), Math.ceil(plain.value.clips))
  // "bags of 250 clips": how they are sold.
  const pack = alone(brief.heard).find(
    (q) =>
      q.dimension === 'none' && q.n >= 20 && brief.heard.has('bag', 'box') && brief.heard.reader.is(q.first - 1, 'of'),
  )
  const packs = pack && Number.isInteger(pack.n) ? Math.ceil(buy / pack.n) : null
  const wedgesFirst = brief.has('wedge') && !brief.heard.has('clip')
  const answer = say(wedgesFirst ? 'levelling.wedges-first' : 'levelling.answer', {
    clips: count(buy),
    wedges: count(wedges.value),
    tile: size,
    area: area(areaM2),
    spares: percent(l.sparePct.value),
  })
  return fine({
    topic: 'levelling',
    answer: verdict[0] ?? answer,
    details: [
      ...(verdict.length ? [answer] : []),
      ...(packs ? [say('levelling.packs', { packs: count(packs), each: count(pack?.n ?? 0) })] : []),
      say(wedges.value >= plain.value.clips - 1 ? 'levelling.wedges-all' : 'levelling.wedges-day', {
        wedges: count(wedges.value),
        area: area(Math.min(m2, areaM2)),
      }),
      say('levelling.off', { hours: hours(Math.round(free.value.highH)) }),
    ],
    assumed,
    warnings: [
      say('levelling.direction'),
      ...(Math.min(tile.lengthMm, tile.widthMm) < rule.singleUnderMm ? [say('levelling.small-tile')] : []),
    ],
    sources: [sourceOf(l.spacingMm)],
    working: [
      plain.value.working,
      say('levelling.work-spares', {
        clips: number(plain.value.clips, 0),
        spares: percent(l.sparePct.value),
        buy: count(buy),
      }),
      say('levelling.work-wedges', { day: area(m2), a: number(clipsADay, 0), wedges: count(wedges.value) }),
    ],
    values: {
      area_m2: areaM2,
      tile_length_mm: tile.lengthMm,
      tile_width_mm: tile.widthMm,
      clips: buy,
      wedges: wedges.value,
      clip_packs: packs ?? undefined,
    },
    offers: ['math', 'keep'],
  })
}

/** Hours until the wedges come off: overnight at room temperature, longer in the cold as the mortar is. */
function freeAfter(brief: Brief): Outcome<{ lowH: number; highH: number; c: number | null }> {
  const { freeAfterH } = brief.settings.around.levelling
  const meant = mortarOf(brief, knownTile(brief.facts))
  if (!meant.ok) return meant
  const { mortar } = meant.value
  const said = temperaturesOf(brief).all
  const coldest = said.length ? Math.min(...said.map((t) => t.c)) : null
  const rapid = mortar.setting === 'cement' ? freeAfterH.value : mortar.waits.grout.h
  if (coldest === null) return fine({ lowH: rapid, highH: rapid, c: null })
  const worked = cure({
    waits: { free: { h: rapid, longestH: rapid } },
    setting: mortar.setting,
    referenceC: mortar.referenceC,
    history: { kind: 'constant', c: coldest },
    longest: false,
    limits: cureLimits(brief.settings, mortar),
  })
  return worked.ok ? fine({ ...worked.value.waits.free, c: coldest }) : worked
}

function removal(brief: Brief): Outcome<Told> {
  const free = freeAfter(brief)
  if (!free.ok) return free
  const { lowH, highH, c } = free.value
  return fine({
    topic: 'levelling',
    answer: say(c === null ? 'levelling.removal' : 'levelling.removal-at', {
      hours: hours(Math.ceil(highH)),
      ...(c === null ? {} : { temperature: temperature(c) }),
    }),
    details: [say('levelling.direction')],
    assumed: c === null ? [say('levelling.assumed-room')] : [],
    sources: [sourceOf(brief.settings.around.levelling.freeAfterH)],
    working: [say('levelling.work-removal', { hours: hours(Math.ceil(highH)) })],
    values: { grout_after_h: highH, grout_after_h_low: lowH, grout_after_h_high: highH },
    offers: ['math'],
  })
}
