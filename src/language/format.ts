/** Amounts in SI to what a crew reads, in its units: inches to sixteenths, feet and inches, bags in pounds. */
import type { Amount } from '../phrase.ts'
import type { Separators } from './locale.ts'

export type Style = {
  readonly intl: string
  readonly separators: Separators
  readonly metric: boolean
  /** The instant the reply is made at (ISO 8601 with offset) and the zone clock times are told in. */
  readonly now: string
  readonly zone: string | null
  readonly phrases: Readonly<Record<string, string>>
  /** For what is kept and read later: every instant with its whole date. */
  readonly dated?: true
}

/** From here on a number has no decimals worth telling. */
const MOST_WRITTEN = 1e15
const LEAST_WRITTEN = 1e-6

/** A number with at most so many decimals, halves away from nought, grouped in thousands: what Intl.NumberFormat writes for the
 *  locales that ship, held to it by a test. Intl itself takes 12 ms for its first number, a tenth of what an `ask` takes. */
export function figure(n: number, digits: number, { decimal, thousands }: Separators): string {
  const size = Math.abs(n)
  if (!(size < MOST_WRITTEN)) return String(n)
  // The exponent moves the decimal point in the number as it is written, so that 6.35 is a half and not a hair below it.
  const steps = size < LEAST_WRITTEN ? 0 : Math.round(Number(`${size}e${digits}`))
  const figures = String(steps).padStart(digits + 1, '0')
  const whole = figures.slice(0, figures.length - digits)
  const fraction = figures.slice(whole.length).replace(/0+$/, '')
  const grouped = whole.length > 3 ? whole.replaceAll(/\B(?=(?:\d{3})+$)/g, thousands) : whole
  const sign = n < 0 || Object.is(n, -0) ? '-' : ''
  return sign + grouped + (fraction === '' ? '' : decimal + fraction)
}

const INCH_MM = 25.4
const SIXTEENTHS = 16

function reduced(over: number, under: number): string {
  let [a, b] = [over, under]
  while (b > 1 && a % 2 === 0) {
    a /= 2
    b /= 2
  }
  return `${a}/${b}`
}

/** Inches to the nearest sixteenth (thirty-second under 1/8 in): "3/16", "12 3/4". */
export function inchFigure(mm: number): string {
  const inches = Math.abs(mm) / INCH_MM
  const under = inches < 1 / 8 - 1e-6 ? 2 * SIXTEENTHS : SIXTEENTHS
  const parts = Math.round(inches * under)
  const whole = Math.floor(parts / under)
  const rest = parts - whole * under
  const sign = mm < 0 ? '-' : ''
  if (rest === 0) return `${sign}${whole}`
  return whole === 0 ? `${sign}${reduced(rest, under)}` : `${sign}${whole} ${reduced(rest, under)}`
}

/** Feet and inches to the sixteenth: `12'6 1/2"`; whole feet `12'`. */
export function feetInches(mm: number): string {
  const sixteenths = Math.round((Math.abs(mm) / INCH_MM) * SIXTEENTHS)
  const feet = Math.floor(sixteenths / (12 * SIXTEENTHS))
  const inches = (sixteenths - feet * 12 * SIXTEENTHS) / SIXTEENTHS
  const sign = mm < 0 ? '-' : ''
  if (feet === 0) return `${sign}${inchFigure(inches * INCH_MM)}"`
  return inches === 0 ? `${sign}${feet}'` : `${sign}${feet}'${inchFigure(inches * INCH_MM)}"`
}

const digitsFor = (n: number): number => (Math.abs(n) >= 100 ? 0 : Math.abs(n) >= 10 ? 1 : 2)

/** A unit's phrase of the catalogue with its figure in. */
const unit = (style: Style, key: string, n: string): string =>
  (style.phrases[`unit.${key}`] ?? `{n} ${key}`).replace('{n}', n)

const of = (style: Style, key: string, n: number, digits = digitsFor(n)): string =>
  unit(style, key, figure(n, digits, style.separators))

const QUART_L = 0.946352946

function volume(l: number, style: Style): string {
  if (style.metric) return l < 1 ? of(style, 'ml', Math.round(l * 1000), 0) : of(style, 'l', l, l < 10 ? 1 : 0)
  const quarts = l / QUART_L
  if (quarts >= 8) return of(style, 'gal', quarts / 4, 1)
  return of(style, 'qt', quarts, quarts < 1 ? 2 : 1)
}

function hours(h: number, style: Style): string {
  if (h >= 48)
    return of(style, h / 24 === 1 ? 'day' : 'days', h / 24, h / 24 < 10 && Math.abs((h / 24) % 1) > 0.05 ? 1 : 0)
  return of(style, h === 1 ? 'hour' : 'hours', h, h < 10 && Math.abs(h % 1) > 0.05 ? 1 : 0)
}

const dateFormats = new Map<string, Intl.DateTimeFormat>()

function dateFormat(intl: string, zone: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = `${intl} ${zone} ${JSON.stringify(options)}`
  let format = dateFormats.get(key)
  if (!format) {
    format = new Intl.DateTimeFormat(intl, { timeZone: zone, ...options })
    dateFormats.set(key, format)
  }
  return format
}

/** Whether the language tells the time in two halves of the day: "2 p.m." needs no minutes, "14:00" does. */
const hasHalves = (intl: string): boolean =>
  dateFormat(intl, 'UTC', { hour: 'numeric' }).resolvedOptions().hour12 === true

/** The zone an instant is told in: the job's, else the offset written in it. */
export const zoneOf = (iso: string, zone: string | null): string =>
  zone ?? /([+-]\d\d:?\d\d)(?:\[|$)/.exec(iso)?.[1] ?? 'UTC'

const WHOLE_DATE = {
  year: 'numeric',
  month: 'short',
  day: 'numeric',
  hour: 'numeric',
  minute: '2-digit',
} as const

/** A clock time with its day where that is not today: "tomorrow 2:30 PM", "Thu 7 AM". */
export function clockTime(iso: string, style: Style): string {
  const zone = zoneOf(style.now, style.zone)
  const at = Temporal.Instant.from(iso).toZonedDateTimeISO(zone)
  if (style.dated) return dateFormat(style.intl, zone, WHOLE_DATE).format(at.epochMilliseconds)
  const today = Temporal.Instant.from(style.now).toZonedDateTimeISO(zone)
  const days = today.toPlainDate().until(at.toPlainDate(), { largestUnit: 'day' }).days
  const minute = at.minute === 0 && hasHalves(style.intl) ? {} : { minute: '2-digit' as const }
  const time = dateFormat(style.intl, zone, { hour: 'numeric', ...minute }).format(at.epochMilliseconds)
  if (days === 0) return unit(style, 'today', time)
  if (days === 1) return unit(style, 'tomorrow', time)
  if (days === -1) return unit(style, 'yesterday', time)
  const day =
    Math.abs(days) < 7
      ? { weekday: 'long' as const }
      : { weekday: 'short' as const, month: 'short' as const, day: 'numeric' as const }
  return unit(style, 'day-time', time).replace('{day}', dateFormat(style.intl, zone, day).format(at.epochMilliseconds))
}

const PACK = /^([\d.,]+ \S+) (\w+)$/

/** A name from config in the reply's language: "sanded grout" by `name.sanded-grout`, "50 lb bag" by `pack.bag`. */
function namedText(text: string, { phrases }: Style): string {
  const known =
    phrases[
      `name.${text
        .toLowerCase()
        .replaceAll(/[^a-z0-9]+/g, '-')
        .replaceAll(/^-|-$/g, '')}`
    ]
  if (known !== undefined) return known
  const pack = PACK.exec(text)
  const told = pack ? phrases[`pack.${pack[2]}`] : undefined
  return pack && told !== undefined ? told.replace('{size}', pack[1]) : text
}

/** An amount as the crew reads it. */
export function amountText(amount: Amount, style: Style): string {
  const metric = style.metric
  switch (amount.is) {
    case 'count':
      return figure(amount.n, Number.isInteger(amount.n) ? 0 : 2, style.separators)
    case 'number':
      return figure(amount.n, amount.digits, style.separators)
    case 'room':
      return metric ? of(style, 'm', amount.mm / 1000, 3) : feetInches(amount.mm)
    case 'run':
      return metric
        ? of(style, 'm', amount.mm / 1000, amount.mm < 100_000 ? 1 : 0)
        : of(style, 'ft', amount.mm / 304.8, amount.mm < 30_480 ? 1 : 0)
    case 'small':
      return metric ? of(style, 'mm', amount.mm, amount.mm < 10 ? 1 : 0) : unit(style, 'in', inchFigure(amount.mm))
    case 'area':
      return metric ? of(style, 'm2', amount.m2) : of(style, 'sf', amount.m2 / 0.09290304, amount.m2 < 1.5 ? 1 : 0)
    case 'volume':
      return volume(amount.l, style)
    case 'mass':
      return metric ? of(style, 'kg', amount.kg) : of(style, 'lb', amount.kg / 0.45359237, amount.kg < 4 ? 1 : 0)
    case 'temperature':
      return metric ? of(style, 'c', amount.c, 0) : of(style, 'f', (amount.c * 9) / 5 + 32, 0)
    case 'hours':
      return hours(amount.h, style)
    case 'minutes':
      return amount.min >= 120 ? hours(amount.min / 60, style) : of(style, 'min', amount.min, 0)
    case 'percent':
      return of(style, 'percent', amount.pct, amount.digits ?? 0)
    case 'load':
      return metric ? of(style, 'kpa', amount.kpa, 2) : of(style, 'psf', amount.kpa / 0.04788026, 1)
    case 'slope':
      return metric
        ? of(style, 'mm-per-m', amount.mmPerM, 1)
        : unit(style, 'in-per-ft', inchFigure(amount.mmPerM * 0.3048))
    case 'instant':
      return clockTime(amount.iso, style)
    case 'word':
      return style.phrases[`word.${amount.word}`] ?? amount.word
    case 'named':
      return namedText(amount.text, style)
    case 'quote':
      return amount.text
  }
}
