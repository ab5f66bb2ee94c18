/** Showers and wet rooms: the sloped bed, the slope itself, waterproofing, the flood test, weep holes. */
import { floorArea, type Ring } from '../core/floor/rings.ts'
import { mudBags, mudParts } from '../core/shower/mud.ts'
import { evenPanBed, type Pan, type PanBed, panBed, planeBed } from '../core/shower/pan.ts'
import { area, count, number, type Phrase, say, slope, small, volume } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import { aboutMud } from './around/about.ts'
import { asksParts, mudBed } from './around/mud-bed.ts'
import { drainOf, panRing, panRoom, wallMarks } from './around/pan-room.ts'
import { figureNear, lengthMm, lengthNear, toldPer } from './around/read.ts'
import { withCautions } from './around/safety.ts'
import { wetWork } from './around/wet-work.ts'
import { knownTile } from './stuff.ts'
import { type Brief, sourceOf, type Told } from './topic.ts'

export function shower(brief: Brief): Outcome<Told> {
  return withCautions(brief, asked(brief), 'cement')
}

function asked(brief: Brief): Outcome<Told> {
  if (asksParts(brief.heard) && !brief.has('slope-word', 'drain', 'pan')) return mudBed(brief)
  if (brief.has('flood-test')) return floodAnswer(brief)
  if (brief.heard.has('curb') && brief.heard.has('build-up', 'high')) return fine(curbHeight())
  if (brief.has('weep')) return rule(brief, 'shower.weep', [say('shower.weep-how')])
  const hasPan = brief.facts.rooms !== undefined
  if (brief.has('waterproofing', 'coat', 'tape')) return wetWork(brief)
  if (
    brief.has('slope-word') &&
    brief.has('curb', 'bench', 'niche') &&
    (!hasPan || !brief.has('pan', 'drain', 'mud-word'))
  )
    return ledge(brief)
  if (brief.has('slope-word') && !brief.has('mud-word', 'mortar', 'bag') && !hasPan) return slopeRule(brief)
  if (brief.has('pan', 'mud-word', 'mortar') || (hasPan && brief.has('slope-word', 'drain', 'curb'))) return pan(brief)
  if (brief.has('slope-word')) return slopeRule(brief)
  if (brief.has('curb', 'bench', 'niche')) return ledge(brief)
  return hasPan ? wetWork(brief) : slopeRule(brief)
}

/** The slope said, as a fall a metre: "1/4 per foot", "2%". */
function saidSlope(brief: Brief): number | null {
  const h = brief.heard
  const percent = figureNear(h, ['percent'], 'slope-word')
  if (percent) return percent.n * 10
  const q = h.quantities.find((one) => ['length', 'none'].includes(one.dimension) && toldPer(h, one) === 'ft')
  if (q) return lengthMm(q, false) / 0.3048
  const metre = h.quantities.find((one) => one.unit === 'mm' && toldPer(h, one) === 'm')
  return metre ? metre.n : null
}

/** The bed at the drain: said as a thickness, else the usual one. */
function atDrain(brief: Brief, assumed: Phrase[]): number {
  const said = lengthNear(brief.heard, brief.metric, 'thick', 'deep', 'drain')
  if (said !== null && said >= 10 && said <= 120) return said
  const { atDrainMm } = brief.settings.around.shower
  assumed.push(say('shower.assumed-thickness', { thickness: small(atDrainMm.value) }))
  return atDrainMm.value
}

function pan(brief: Brief): Outcome<Told> {
  const assumed: Phrase[] = []
  const { shower: s } = brief.settings.around
  const room = panRoom(brief.facts)
  if (!room) return brief.heard.has('how-many', 'bag') ? refuse('question', { question: 'pan' }) : fine(aboutMud(brief))
  assumed.push(...room.notes)
  const slopeMmPerM = saidSlope(brief) ?? s.slopeMmPerM.value
  const thick = atDrain(brief, assumed)
  if (brief.has('linear-drain')) return channel(brief, room, slopeMmPerM, thick, assumed)
  const drain = drainOf(brief, room, assumed)
  const ring = panRing(room, drain)
  if (!ring) return refuse('bad-floor', { why: 'drain-in-column' })
  const bed = panBed({ ring, drain, slopeMmPerM, atDrainMm: thick })
  if (!bed.ok) return bed
  const value = room.columns.length > 1 ? lessColumns(bed.value, room.columns) : bed.value
  const tile = knownTile(brief.facts)
  const details = [
    edgeLine({ ...value, marks: wallMarks(value.marks, ring, room) }, thick, room.columns.length === 1),
    ...evenInstead(brief, value, { ring, drain, slopeMmPerM, atDrainMm: thick }),
    ...mixLines(brief, value.volumeL),
    ...(room.columns.length > 1 ? [say('shower.column')] : []),
    say('shower.membrane-too', { slope: slope(slopeMmPerM) }),
    ...(tile && tile.lengthMm > s.largeTileMm.value && room.columns.length === 0
      ? [
          say('shower.envelope', {
            cuts: count(value.foldsMm.length),
            run: small(value.foldsMm.reduce((a, b) => a + b, 0)),
          }),
        ]
      : []),
  ]
  return fine({
    ...panTold(brief, value.volumeL, value.areaMm2 / 1e6, slopeMmPerM, details, assumed),
    warnings: warningsFor(brief, value, slopeMmPerM),
    working: [
      say(value.kind === 'level' ? 'shower.work-level' : 'shower.work-even', {
        area: number(value.areaMm2 / 1e6, 3),
        thickness: number(thick, 1),
        rise: number(value.riseMm, 1),
        run: small(value.farthestMm),
        litres: number(value.volumeL, 1),
      }),
    ],
  })
}

/** Columns take their face out of the bed, at its mean depth; what they hide from the drain still falls to it. */
function lessColumns(bed: PanBed, columns: readonly Ring[]): PanBed {
  const takenMm2 = columns.reduce((sum, ring) => sum + Math.abs(floorArea({ rings: [ring] })), 0)
  const share = 1 - takenMm2 / bed.areaMm2
  return share > 0 ? { ...bed, areaMm2: bed.areaMm2 * share, volumeL: bed.volumeL * share } : bed
}

function edgeLine(bed: PanBed, thick: number, column: boolean): Phrase {
  if (bed.kind === 'level')
    return say('shower.edge-level', { edge: small(thick + bed.riseMm), drain: small(thick), rise: small(bed.riseMm) })
  const marks = bed.marks.map((mark) =>
    say('shower.mark', { start: small(mark.startMm), low: small(mark.lowMm), end: small(mark.endMm) }),
  )
  return say(column ? 'shower.edge-column' : 'shower.edge-even', { marks: marks.slice(0, 8) })
}

/** Where a level edge makes a plane too steep: the same fall everywhere, and an edge that rises. */
function evenInstead(brief: Brief, bed: PanBed, pan: Pan): Phrase[] {
  if (bed.kind !== 'level' || bed.steepestMmPerM <= brief.settings.around.shower.steepestMmPerM.value + 0.05) return []
  const even = evenPanBed(pan)
  if (!even.ok) return []
  const lows = even.value.marks.map((mark) => mark.lowMm)
  const highs = even.value.marks.map((mark) => Math.max(mark.startMm, mark.endMm))
  return [
    say('shower.even-instead', {
      low: small(Math.min(...lows)),
      high: small(Math.max(...highs)),
      mud: mudPhrase(brief, even.value.volumeL),
    }),
  ]
}

const mudPhrase = (brief: Brief, litres: number) =>
  brief.metric ? volume(litres) : say('shower.cubic-feet', { n: number(litres / 28.316846592, 1) })

function warningsFor(brief: Brief, bed: PanBed, slopeMmPerM: number): Phrase[] {
  const { shower: s } = brief.settings.around
  const steep = bed.steepestMmPerM > s.steepestMmPerM.value + 0.05
  return [
    ...(slopeMmPerM < s.slopeMmPerM.value - 0.3 ? [say('shower.too-flat', { least: slope(s.slopeMmPerM.value) })] : []),
    ...(steep
      ? [say('shower.steep', { steepest: slope(bed.steepestMmPerM), most: slope(s.steepestMmPerM.value) })]
      : []),
    say('shower.code'),
  ]
}

function channel(
  brief: Brief,
  room: { lengthMm: number; widthMm: number },
  slopeMmPerM: number,
  thick: number,
  assumed: Phrase[],
): Outcome<Told> {
  // The channel lies along the shorter wall unless the words say otherwise; the floor falls the long way.
  const bed = planeBed(Math.min(room.lengthMm, room.widthMm), Math.max(room.lengthMm, room.widthMm), slopeMmPerM, thick)
  if (!bed.ok) return bed
  assumed.push(say('shower.assumed-channel'))
  const areaM2 = (room.lengthMm * room.widthMm) / 1e6
  const details = [
    say('shower.edge-plane', { far: small(thick + bed.value.riseMm), drain: small(thick) }),
    ...mixLines(brief, bed.value.volumeL),
    say('shower.membrane-too', { slope: slope(slopeMmPerM) }),
  ]
  return fine({
    ...panTold(brief, bed.value.volumeL, areaM2, slopeMmPerM, details, assumed),
    warnings: [say('shower.code')],
    working: [
      say('shower.work-plane', {
        area: number(areaM2, 3),
        thickness: number(thick, 1),
        rise: number(bed.value.riseMm, 1),
        litres: number(bed.value.volumeL, 1),
      }),
    ],
  })
}

/** Ready-mixed bags, and the same from cement and sand. */
function mixLines(brief: Brief, litres: number): Phrase[] {
  const { shower: s } = brief.settings.around
  const bags = mudBags(litres, s.mudBagL.value)
  const parts = mudParts(litres, s.sandParts.value)
  if (!bags.ok || !parts.ok) return []
  return [
    say('shower.bags', { bags: count(bags.value), bag: { is: 'mass', kg: s.mudBagKg.value } }),
    say('shower.parts', {
      sacks: number(parts.value.cementSacks, 1),
      sand: volumeOfSand(parts.value.sandL),
      parts: number(s.sandParts.value, 0),
    }),
  ]
}

const volumeOfSand = (litres: number): Phrase =>
  say('shower.sand', { feet: number(litres / 28.316846592, 1), litres: number(litres, 0) })

function panTold(
  brief: Brief,
  litres: number,
  areaM2: number,
  slopeMmPerM: number,
  details: Phrase[],
  assumed: Phrase[],
): Told {
  const { shower: s } = brief.settings.around
  const bags = mudBags(litres, s.mudBagL.value)
  return {
    topic: 'shower',
    answer: say('shower.pan', {
      mud: mudPhrase(brief, litres),
      slope: slope(slopeMmPerM),
      area: area(areaM2),
    }),
    details,
    assumed,
    sources: [sourceOf(s.slopeMmPerM), sourceOf(s.atDrainMm), sourceOf(s.sandParts)],
    values: {
      area_m2: areaM2,
      mud_l: litres,
      slope_mm_per_m: slopeMmPerM,
      mortar_bags: bags.ok ? bags.value : undefined,
    },
    offers: ['math', 'keep'],
  }
}

function slopeRule(brief: Brief): Outcome<Told> {
  const { shower: s } = brief.settings.around
  const run = lengthNear(brief.heard, brief.metric, 'from', 'to', 'drain', 'long', 'wall')
  const rise = run !== null && run > 150 ? (run * s.slopeMmPerM.value) / 1000 : null
  return fine({
    topic: 'shower',
    answer: say('shower.slope', { slope: slope(s.slopeMmPerM.value) }),
    details: [
      ...(rise !== null ? [say('shower.rise', { run: small(run as number), rise: small(rise) })] : []),
      say('shower.slope-membrane'),
      say('shower.slope-most', { most: slope(s.steepestMmPerM.value) }),
    ],
    warnings: [say('shower.code')],
    sources: [sourceOf(s.slopeMmPerM), sourceOf(s.steepestMmPerM)],
    working: [say('shower.work-slope', { slope: slope(s.slopeMmPerM.value) })],
    values: { slope_mm_per_m: s.slopeMmPerM.value },
    offers: ['math'],
  })
}

/** Plumbing codes, from memory: the dam of a shower 2 to 9 in above the drain. */
const CURB_MM = { least: 50.8, most: 228.6 } as const

const curbHeight = (): Told => ({
  topic: 'shower',
  answer: say('shower.curb-height', { least: small(CURB_MM.least), most: small(CURB_MM.most) }),
  details: [say('shower.curb-liner')],
  warnings: [say('shower.code')],
  sources: [{ text: 'plumbing codes', memory: true }],
  values: { curb_mm: CURB_MM.least, curb_mm_low: CURB_MM.least, curb_mm_high: CURB_MM.most },
})

function ledge(brief: Brief): Outcome<Told> {
  return rule(brief, 'shower.ledge', [say('shower.ledge-wrap')])
}

function floodAnswer(brief: Brief): Outcome<Told> {
  const { shower: s } = brief.settings.around
  const room = panRoom(brief.facts)
  const litres = room ? (room.lengthMm * room.widthMm * s.floodDepthMm.value) / 1e6 : null
  return fine({
    topic: 'shower',
    answer: say('shower.flood', { depth: small(s.floodDepthMm.value), hours: { is: 'hours', h: s.floodH.value } }),
    details: [
      say('shower.flood-how'),
      ...(litres !== null
        ? [say('shower.flood-water', { litres: volume(litres), mass: { is: 'mass', kg: litres } })]
        : []),
    ],
    warnings: [say('shower.code')],
    sources: [sourceOf(s.floodDepthMm), sourceOf(s.floodH)],
    values: { ...(room ? { area_m2: (room.lengthMm * room.widthMm) / 1e6, fill_l: litres as number } : {}) },
  })
}

/** A rule that needs no sum but the slope. */
function rule(brief: Brief, key: string, details: Phrase[]): Outcome<Told> {
  const { shower: s } = brief.settings.around
  return fine({
    topic: 'shower',
    answer: say(key, { slope: slope(s.slopeMmPerM.value) }),
    details,
    warnings: [say('shower.code')],
    sources: [sourceOf(s.slopeMmPerM)],
    values: { slope_mm_per_m: s.slopeMmPerM.value },
  })
}
