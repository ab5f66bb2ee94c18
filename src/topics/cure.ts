/** Waits: when it may be grouted, walked on, loaded and wetted, as hours and as clock times. */
import type { History } from '../core/age.ts'
import { readyAt } from '../core/clock.ts'
import { type Cure, type WaitAt, cure as waitsAt } from '../core/cure.ts'
import type { SaidTemperature } from '../facts.ts'
import { hours, instant, named, type Phrase, say, temperature, word } from '../phrase.ts'
import { clockRules, cureLimits } from '../practice.ts'
import { fine, type Outcome } from '../problem.ts'
import type { Grout, Mortar, Wait } from '../settings.ts'
import { asksSomething } from './job/asks.ts'
import { momentTold } from './moment-told.ts'
import { temperaturesOf } from './site.ts'
import { groutOf, knownTile, mortarOf } from './stuff.ts'
import { type Brief, type Source, sourceOf, type Told } from './topic.ts'

const NAMES = ['grout', 'walk', 'heavy', 'water'] as const
type WaitName = (typeof NAMES)[number]

/** Temperatures as they were told: one, a day and night pair, or a list. Null where none was told. */
function historyOf(said: readonly SaidTemperature[], startMinute: number | null): History | null {
  const slab = said.filter((t) => t.of === 'slab')
  const air = said.filter((t) => t.of !== 'slab')
  const use = slab.length > 0 && !air.some((t) => t.of === 'low') ? slab : said
  if (use.length === 0) return null
  if (use.length === 1) return { kind: 'constant', c: use[0].c }
  const lowC = Math.min(...use.map((t) => t.c))
  const highC = Math.max(...use.map((t) => t.c))
  return { kind: 'day-night', dayC: highC, nightC: lowC, startMinute }
}

/** Which wait the message is about. */
function asked(brief: Brief, afterGrout: boolean): WaitName {
  // What this message names goes before what the talk asked for.
  for (const has of [brief.heard.has, brief.has]) {
    if (has('walk')) return 'walk'
    if (has('heavy')) return 'heavy'
    if (has('wet-use')) return 'water'
    if (has('grout') && !afterGrout) return 'grout'
  }
  return afterGrout ? 'walk' : 'grout'
}

type Stuff = {
  readonly material: Mortar | Grout
  readonly id: string
  readonly waits: Readonly<Partial<Record<WaitName, Wait>>>
}

function stuffOf(brief: Brief, afterGrout: boolean): Outcome<Stuff> {
  if (afterGrout) {
    const grout = groutOf(brief, brief.facts.grout ?? 'sanded')
    return grout.ok ? fine({ material: grout.value.grout, id: grout.value.id, waits: grout.value.grout.waits }) : grout
  }
  const mortar = mortarOf(brief, knownTile(brief.facts))
  return mortar.ok
    ? fine({ material: mortar.value.mortar, id: mortar.value.id, waits: mortar.value.mortar.waits })
    : mortar
}

/** Large tile over a base that takes no water dries longest. */
function isLongest(brief: Brief): boolean {
  const edge = knownTile(brief.facts)?.lengthMm ?? 0
  return brief.facts.impervious === true && (edge === 0 || edge >= brief.settings.practice.tile.largeEdgeMm.value)
}

export function cure(brief: Brief): Outcome<Told> {
  const afterGrout = isAfterGrout(brief)
  const stuff = stuffOf(brief, afterGrout)
  if (!stuff.ok) return stuff
  const { material, id, waits } = stuff.value
  const start = startOf(brief)
  const startMinute = start ? minuteOf(start) : null
  const { all: said, told } = temperaturesOf(brief)
  const assumed: Phrase[] = [...told]
  const history = historyOf(said, startMinute) ?? { kind: 'constant' as const, c: material.referenceC }
  if (said.length === 0)
    assumed.push(say('cure.assumed-temperature', { temperature: temperature(material.referenceC) }))
  assumed.push(say('cure.assumed-material', { material: named(material.name) }))
  const sheet = sheetWait(brief)
  const own = sheet ? { [asked(brief, afterGrout)]: { h: sheet.h, longestH: sheet.h } } : {}
  const worked = waitsAt({
    waits: { ...waits, ...own } as Record<WaitName, Wait>,
    setting: material.setting,
    referenceC: sheet?.c ?? material.referenceC,
    history,
    longest: isLongest(brief),
    limits: cureLimits(brief.settings, material),
  })
  if (!worked.ok) return worked
  return tell(brief, { afterGrout, id, material, start, cure: worked.value, assumed, said })
}

/** "24 hr wait at 70, its 50": the wait on the crew's own sheet and what it is for. */
function sheetWait({ facts, heard }: Brief): { readonly h: number; readonly c: number } | null {
  const c = facts.temperatures?.find((t) => t.of === 'reference')?.c
  const h = heard.durationsH[0]
  return c === undefined || h === undefined ? null : { h, c }
}

/** The waits count from grouting where that is what was done, or what is asked about: "how long does grout dry before walking". */
function isAfterGrout(brief: Brief): boolean {
  if (brief.has('set-verb')) return false
  return (
    brief.facts.done === 'grouted' ||
    (brief.has('grout', 'epoxy', 'sanded', 'unsanded') &&
      brief.has('walk', 'heavy', 'wet-use') &&
      !brief.has('mortar', 'tile'))
  )
}

/** When it was done, where the message or the talk tells. */
function startOf(brief: Brief): string | null {
  const { heard } = brief
  const before = brief.facts.when ?? null
  const moment = momentTold(
    brief,
    true,
    heard.has('set-verb', 'grouted-verb') && !heard.has('make-it', 'no-correction') ? null : before,
  )
  if (before === null || moment === null || heard.has('set-verb', 'grouted-verb')) return moment?.iso ?? before
  // "can we grout tomorrow at 8?": the hour asked about, not the setting's.
  const retold = heard.has('make-it', 'no-correction') || (heard.has('is') && !asksSomething(heard))
  if (!retold) return before
  // "it was 58 this morning", "it's 65 now": of the temperature, not of the setting.
  const tells = moment.clock || (moment.dated && brief.heard.facts.temperatures === undefined)
  return tells ? moment.iso : before
}

const minuteOf = (iso: string): number => {
  const [, h, m] = /T(\d\d):(\d\d)/.exec(iso) ?? []
  return Number(h) * 60 + Number(m)
}

type Worked = {
  readonly afterGrout: boolean
  readonly id: string
  readonly material: Mortar | Grout
  readonly start: string | null
  readonly cure: Cure<WaitName>
  readonly assumed: Phrase[]
  readonly said: readonly SaidTemperature[]
}

function tell(brief: Brief, w: Worked): Outcome<Told> {
  const names = NAMES.filter((n) => w.cure.waits[n] !== undefined)
  const first = asked(brief, w.afterGrout)
  const main: WaitName = names.includes(first) ? first : names[0]
  const values: Record<string, number | string> = {}
  const ends: Partial<Record<WaitName, string>> = {}
  for (const name of names) {
    const wait = w.cure.waits[name]
    values[`${name}_after_h`] = round(wait.highH)
    values[`${name}_after_h_low`] = round(wait.lowH)
    values[`${name}_after_h_high`] = round(wait.highH)
    if (w.start === null) continue
    const ready = readyAt(w.start, wait.highH, brief.zone, clockRules(brief.settings))
    if (!ready.ok) return ready
    ends[name] = ready.value.iso
    values[`${name}_at`] = ready.value.iso
  }
  const since = w.afterGrout ? 'grouting' : 'setting'
  const passed =
    ends[main] !== undefined &&
    Temporal.Instant.compare(Temporal.Instant.from(ends[main] as string), Temporal.Instant.from(brief.now)) <= 0
  return fine({
    topic: 'cure',
    answer: answerLine(main, w, ends[main], since, passed, brief),
    details: [
      ...(w.start !== null
        ? [say('cure.from', { start: instant(w.start), since: word(since), hours: waitText(w.cure.waits[main]) })]
        : []),
      ...names.filter((n) => n !== main).map((n) => otherLine(n, w.cure.waits[n], ends[n])),
      ...(w.cure.askNightLow && !w.said.some((t) => t.of === 'low') ? [say('cure.ask-night')] : []),
    ],
    assumed: w.assumed,
    warnings: [...w.cure.warnings.map((x) => warning(x)), say('cure.guide')],
    sources: sources(brief, w),
    working: workings(w, main),
    values,
    offers: ['math'],
    ...(w.start === null ? {} : { learned: { when: w.start } }),
  })
}

const round = (h: number): number => Math.round(h * 10) / 10
const waitText = (wait: WaitAt): Phrase =>
  wait.highH - wait.lowH < 0.75
    ? say('cure.hours', { high: hours(Math.ceil(wait.highH)) })
    : say('cure.hours-range', { low: hours(Math.round(wait.lowH)), high: hours(Math.ceil(wait.highH)) })

function answerLine(
  name: WaitName,
  w: Worked,
  end: string | undefined,
  since: string,
  passed: boolean,
  brief: Brief,
): Phrase {
  const act = word(`wait-${name}`)
  if (end === undefined) return say('cure.after', { act, hours: waitText(w.cure.waits[name]), since: word(since) })
  if (passed) return say('cure.passed', { act, at: instant(end) })
  return say(brief.has('can-we') ? 'cure.not-yet' : 'cure.at', { act, at: instant(end) })
}

const otherLine = (name: WaitName, wait: WaitAt, end: string | undefined): Phrase =>
  end === undefined
    ? say('cure.line', { act: word(`wait-${name}`), hours: waitText(wait) })
    : say('cure.line-at', { act: word(`wait-${name}`), at: instant(end) })

function warning(w: Cure<WaitName>['warnings'][number]): Phrase {
  switch (w.code) {
    case 'below-material-minimum':
      return say('cure.below-minimum', { value: temperature(w.valueC), min: temperature(w.minC) })
    case 'above-material-maximum':
      return say('cure.above-maximum', { value: temperature(w.valueC), max: temperature(w.maxC) })
    case 'sheet-only':
      return say('cure.sheet-only')
    case 'longest-wait':
      return say('cure.longest')
  }
}

function sources(brief: Brief, w: Worked): Source[] {
  return [{ text: w.material.source }, sourceOf(brief.settings.practice.cure.activationLowK)]
}

function workings(w: Worked, main: WaitName): Phrase[] {
  const wait = w.cure.waits[main]
  return [
    say('cure.work-sheet', {
      material: named(w.material.name),
      hours: hours(wait.sheetH),
      reference: temperature(w.material.referenceC),
      act: word(`wait-${main}`),
    }),
    ...w.said.map((t) =>
      say('cure.work-temperature', { temperature: temperature(t.c), of: word(`temperature-${t.of}`) }),
    ),
    ...(w.cure.lengthened
      ? [say('cure.work-age', { low: hours(Math.round(wait.lowH)), high: hours(Math.ceil(wait.highH)) })]
      : [say('cure.work-same')]),
  ]
}
