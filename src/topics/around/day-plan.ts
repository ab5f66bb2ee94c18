/** The job split into days: full rows at the crew's pace, set towards the door, with each day's bags and wedges. */
import { readyAt, zoned } from '../../core/clock.ts'
import { bagsADay, type DayPlan, evenDays, type Row, rowAreas, settingOrder } from '../../core/day.ts'
import { movementLines, movementSpacingM } from '../../core/joints.ts'
import { clipsPerTile } from '../../core/levelling.ts'
import { moduleM2 } from '../../core/tile.ts'
import { momentIn } from '../../language/moments.ts'
import { area, count, hours, instant, number, type Phrase, say } from '../../phrase.ts'
import { clockRules } from '../../practice.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { floorSum } from '../floors.ts'
import { mortar } from '../mortar.ts'
import { jointOf, knownTile, mortarOf, packOf } from '../stuff.ts'
import { type Brief, sourceOf, type Told } from '../topic.ts'
import { plainJob } from './order-lines.ts'
import { dayM2, withoutDay } from './pace.ts'
import { laidRooms } from './rooms.ts'

const MOST_DAYS_TOLD = 6

export function dayPlan(said: Brief): Outcome<Told> {
  const brief = plainJob({ ...said, facts: withoutDay(said) })
  const assumed: Phrase[] = []
  const tile = knownTile(brief.facts)
  if (!tile) return refuse('question', { question: 'tile' })
  const floor = floorSum(brief.facts)
  if (!floor.ok) return floor
  if (!floor.value) return refuse('question', { question: 'area' })
  const { areaM2 } = floor.value
  const pace = dayM2(said, assumed)
  const jointMm = jointOf(brief, assumed)
  const l = brief.settings.around.levelling
  const rule = { spacingMm: l.spacingMm.value, cornerMm: l.cornerMm.value, singleUnderMm: l.singleUnderMm.value }
  const perTile = clipsPerTile(tile.lengthMm, tile.widthMm, rule)
  if (!perTile.ok) return perTile
  const perM2 =
    perTile.value / moduleM2({ shape: 'rectangle', lengthMm: tile.lengthMm, widthMm: tile.widthMm, jointMm })
  const days = planned(brief, areaM2, tile.widthMm + jointMm, perM2, pace, assumed)
  if (!days.ok) return days
  const bed = mortar(brief)
  const meant = mortarOf(brief, tile)
  if (!bed.ok) return bed
  if (!meant.ok) return meant
  const kgPerM2 = ((bed.value.values?.['mortar_kg'] as number) ?? 0) / areaM2
  const bagKg = packOf(brief, meant.value.mortar, []).kg
  const wait = meant.value.mortar.waits
  const starts = firstDay(brief, assumed)
  const ready = (i: number, waitH: number): Outcome<string> => {
    const at = readyAt(finishOf(starts, i), waitH, brief.zone, clockRules(brief.settings))
    return at.ok ? fine(at.value.iso) : at
  }
  const last = days.value.length - 1
  const [walkAt, groutAt] = [ready(last, wait.walk.h), ready(last, wait.grout.h)]
  if (!walkAt.ok) return walkAt
  if (!groutAt.ok) return groutAt
  const told = days.value.slice(0, MOST_DAYS_TOLD).map((day, i) => {
    const walk = ready(i, wait.walk.h)
    return say(day.stopsAt === 'joint' ? 'order.day-joint' : 'order.day', {
      n: count(i + 1),
      rows: count(day.rows.length),
      area: area(day.areaM2),
      bags: count(bagsADay(day, kgPerM2, bagKg)),
      wedges: count(Math.ceil(day.clips)),
      walk: instant(walk.ok ? walk.value : walkAt.value),
    })
  })
  return fine({
    topic: 'order',
    answer: say('order.days', { days: count(days.value.length), area: area(areaM2), pace: area(pace) }),
    details: [
      ...told,
      ...(days.value.length > MOST_DAYS_TOLD
        ? [say('order.more-days', { days: count(days.value.length - MOST_DAYS_TOLD) })]
        : []),
      say('order.day-walk', { grout: hours(wait.grout.h), all: instant(groutAt.value) }),
    ],
    assumed,
    warnings: [say('order.day-door')],
    sources: [sourceOf(brief.settings.around.day.hours)],
    working: days.value.map((day, i) =>
      say('order.work-day', { n: count(i + 1), rows: count(day.rows.length), area: number(day.areaM2, 2) }),
    ),
    values: {
      area_m2: areaM2,
      days: days.value.length,
      wedges: Math.ceil(Math.max(...days.value.map((d) => d.clips))),
      mortar_bags: bed.value.values?.['mortar_bags'],
      walk_at: walkAt.value,
      grout_at: groutAt.value,
    },
    offers: ['math'],
  })
}

const LAST_START_HOUR = 10
const FINISH_HOUR = 17

/** The first day: as told ("starting Monday"), else today before ten and tomorrow after. */
function firstDay(brief: Brief, assumed: Phrase[]): Temporal.ZonedDateTime {
  const now = zoned(brief.now, brief.zone)
  const today = now.ok ? now.value : Temporal.Instant.from(brief.now).toZonedDateTimeISO('UTC')
  const said = brief.heard.has('day-word')
    ? momentIn(brief.heard, () => brief.libraries.times(brief.language), brief.now, brief.zone, false)
    : null
  const start = said ? zoned(said.iso, brief.zone) : null
  // A weekday is the next one to come.
  const told = start?.ok ? (isBefore(start.value, today) ? start.value.add({ days: 7 }) : start.value) : null
  const day = told ?? today.add({ days: today.hour < LAST_START_HOUR ? 0 : 1 })
  if (!told) assumed.push(say('order.assumed-start', { at: instant(isoOf(day.withPlainTime({ hour: 8 }))) }))
  return day
}

const isBefore = (a: Temporal.ZonedDateTime, b: Temporal.ZonedDateTime): boolean =>
  Temporal.PlainDate.compare(a.toPlainDate(), b.toPlainDate()) < 0

const isoOf = (at: Temporal.ZonedDateTime): string => at.toString({ timeZoneName: 'never', smallestUnit: 'second' })

/** When a day's last tile is down: five in the afternoon. */
const finishOf = (first: Temporal.ZonedDateTime, day: number): string =>
  isoOf(first.add({ days: day }).withPlainTime({ hour: FINISH_HOUR }))

/** Rows of every room, each room's own way to its door; a bare area is rows of a square. */
function planned(
  brief: Brief,
  areaM2: number,
  pitchMm: number,
  clipsPerM2: number,
  pace: number,
  assumed: Phrase[],
): Outcome<DayPlan[]> {
  const rooms = laidRooms(brief.facts)
  if (!brief.heard.has('door')) assumed.push(say('order.assumed-door'))
  const rows: Row[] = []
  const order: number[] = []
  const floors = rooms ? rooms.flatMap((room) => Array.from({ length: room.count }, () => room.floor)) : []
  if (floors.length > 500) return refuse('too-much-work', { what: 'rooms' })
  for (const floor of floors) {
    const areas = rowAreas(floor, pitchMm, 'x')
    if (!areas.ok) return areas
    const own = settingOrder(areas.value.length, doorRow(brief, areas.value.length))
    if (!own.ok) return own
    order.push(...own.value.map((i) => i + rows.length))
    const joints = jointRows(areas.value.length, pitchMm)
    rows.push(...areas.value.map((m2, i) => ({ areaM2: m2, clips: m2 * clipsPerM2, joint: joints.has(i) })))
  }
  if (!floors.length) {
    const count = Math.min(4000, Math.max(1, Math.round((Math.sqrt(areaM2) * 1000) / pitchMm)))
    const own = settingOrder(count, 0)
    if (!own.ok) return own
    order.push(...own.value)
    rows.push(
      ...Array.from({ length: count }, () => ({
        areaM2: areaM2 / count,
        clips: (areaM2 / count) * clipsPerM2,
        joint: false,
      })),
    )
  }
  return evenDays(rows, order, pace)
}

/** Rows along which a movement joint of a dry interior runs: the span in equal parts no longer than the spacing. */
function jointRows(rows: number, pitchMm: number): ReadonlySet<number> {
  const lines = movementLines((rows * pitchMm) / 1000, movementSpacingM('interior').highM)
  return new Set(Array.from({ length: lines }, (_, k) => Math.round(((k + 1) * rows) / (lines + 1)) - 1))
}

/** The row the door opens on: the near wall unless the words put it elsewhere. */
function doorRow(brief: Brief, rows: number): number {
  if (brief.heard.has('top-side')) return rows - 1
  if (brief.heard.has('left-side', 'right-side')) return Math.floor((rows - 1) / 2)
  return 0
}
