/** Maturity of cement: how long a stretch of temperatures counts for at another temperature. */
import { fine, type Outcome, type Range, refuse, within } from '../problem.ts'

export const CURE_TEMPERATURE: Range = { field: 'temperature', unit: 'C', min: -40, max: 60 }
export const ACTIVATION: Range = { field: 'activation', unit: 'K', min: 1000, max: 10000 }

export type Step = { readonly h: number; readonly c: number }

/** The slab's temperatures from the moment of setting.
 *  `day-night`: a sine between the day's high at 15:00 and the night's low at 3:00 (common practice, no source);
 *  `startMinute` is the minute of the day it begins at, null where unknown: then the mean rate of a day holds.
 *  `list`: one temperature after another, the last one goes on. */
export type History =
  | { readonly kind: 'constant'; readonly c: number }
  | { readonly kind: 'day-night'; readonly dayC: number; readonly nightC: number; readonly startMinute: number | null }
  | { readonly kind: 'list'; readonly steps: readonly Step[] }

const KELVIN = 273.15
const DAY_H = 24
const WARMEST_H = 15
/** 21 C and 70 F are the same to a crew. */
const ALIKE_C = 0.2
/** Rates are taken at the middle of each of these parts of an hour. */
const PARTS = 2

/** How fast it hardens at a temperature against a reference. [1]
 *  exp(-Q (1/T - 1/Tr)), temperatures in kelvin.
 *  @param c, referenceC CURE_TEMPERATURE    @param activationK Q = activation energy / gas constant, ACTIVATION
 *  @source equivalent age of ASTM C1074    @example 10 C against 23 C, Q 5000: 0.4606 */
export const ageRate = (c: number, referenceC: number, activationK: number): number =>
  Math.exp(-activationK * (1 / (c + KELVIN) - 1 / (referenceC + KELVIN)))

/** Equivalent age of a row of temperatures. [h at the reference]
 *  @problem out-of-range    @source ASTM C1074
 *  @example 12 h at 15 C and 12 h at 25 C, Q 5000: 20.948 h at 23 C */
export function equivalentAgeH(steps: readonly Step[], referenceC: number, activationK: number): Outcome<number> {
  let age = 0
  for (const { h, c } of steps) {
    const checks = [within(CURE_TEMPERATURE, c), within({ field: 'hours', unit: 'h', min: 0, max: 100_000 }, h)]
    for (const check of checks) if (!check.ok) return check
    age += h * ageRate(c, referenceC, activationK)
  }
  return fine(age)
}

/** The other index of ASTM C1074, Nurse-Saul: sum of (T - datum) x time, never below 0. [C h]
 *  @problem out-of-range    @example 28 d at 15 C over a datum of -11 C: 728 C days */
export function maturityCH(steps: readonly Step[], datumC: number): Outcome<number> {
  let sum = 0
  for (const { h, c } of steps) {
    const inside = within(CURE_TEMPERATURE, c)
    if (!inside.ok) return inside
    sum += Math.max(0, c - datumC) * h
  }
  return fine(sum)
}

/** Lowest and highest of a history, over its first `hours` where given. [C]
 *  A day and night pair is taken to meet both its ends. */
export function extremesC(history: History, hours = Number.POSITIVE_INFINITY): { lowC: number; highC: number } {
  const seen: number[] = []
  if (history.kind === 'constant') seen.push(history.c)
  else if (history.kind === 'day-night') seen.push(history.dayC, history.nightC)
  else {
    let from = 0
    for (const { h, c } of history.steps) {
      if (from < hours || seen.length === 0) seen.push(c)
      from += h
    }
  }
  return { lowC: Math.min(...seen), highC: Math.max(...seen) }
}

/** @problem out-of-range  a temperature outside CURE_TEMPERATURE, an empty list, a step without length */
export function checkedHistory(history: History): Outcome<History> {
  const temperatures = history.kind === 'list' ? history.steps.map((s) => s.c) : Object.values(extremesC(history))
  if (temperatures.length === 0) return refuse('missing', { field: 'temperature' })
  for (const c of temperatures) {
    const inside = within(CURE_TEMPERATURE, c)
    if (!inside.ok) return inside
  }
  if (history.kind === 'list')
    for (const { h } of history.steps) {
      const inside = within({ field: 'hours', unit: 'h', min: 0.01, max: 10_000 }, h)
      if (!inside.ok) return inside
    }
  return fine(history)
}

/** The hours a history takes to reach an age, as a function of that age: made once for all waits of a material.
 *  Warmth above the reference counts as the reference: heat never shortens a wait, nor makes up for a cold night.
 *  @param history as checkedHistory lets through
 *  @source ASTM C1074; the cap is a rule of the trade: a sheet's wait is a floor */
export function aging(history: History, referenceC: number, activationK: number): (ageH: number) => number {
  const rate = (c: number) => (c >= referenceC - ALIKE_C ? 1 : ageRate(c, referenceC, activationK))
  if (history.kind === 'constant') {
    const constant = rate(history.c)
    return (ageH) => ageH / constant
  }
  if (history.kind === 'list') {
    const parts = history.steps.map(({ h, c }): Part => ({ h, rate: rate(c) }))
    return (ageH) => hoursOverParts(ageH, parts)
  }
  const { dayC, nightC, startMinute } = history
  const at = (hourOfDay: number) =>
    (dayC + nightC) / 2 + ((dayC - nightC) / 2) * Math.cos(((hourOfDay - WARMEST_H) / DAY_H) * 2 * Math.PI)
  const start = (startMinute ?? 0) / 60
  const parts = Array.from(
    { length: DAY_H * PARTS },
    (_, i): Part => ({ h: 1 / PARTS, rate: rate(at(start + (i + 0.5) / PARTS)) }),
  )
  const perDay = parts.reduce((sum, part) => sum + part.h * part.rate, 0)
  if (startMinute === null) return (ageH) => (ageH / perDay) * DAY_H
  return (ageH) => {
    const wholeDays = Math.floor(ageH / perDay)
    return wholeDays * DAY_H + hoursOverParts(ageH - wholeDays * perDay, parts)
  }
}

/** Hours until a history has aged as much as `ageH` at the reference, see aging. [h]
 *  @param ageH 0 or more
 *  @example 24 h at a constant 10 C against 23 C, Q 5000: 52.1 h */
export const hoursToAge = (ageH: number, history: History, referenceC: number, activationK: number): number =>
  aging(history, referenceC, activationK)(ageH)

type Part = { readonly h: number; readonly rate: number }

/** The last part goes on. */
function hoursOverParts(ageH: number, parts: readonly Part[]): number {
  let left = ageH
  let hours = 0
  for (const [i, part] of parts.entries()) {
    const gained = part.h * part.rate
    if (left <= gained || i === parts.length - 1) return hours + left / part.rate
    left -= gained
    hours += part.h
  }
  return hours
}
