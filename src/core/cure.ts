/** When a floor may be grouted, walked on, loaded and wetted: the sheet's waits at the floor's own temperature. */
import { fine, type Outcome, refuse } from '../problem.ts'
import { aging, checkedHistory, extremesC, type History } from './age.ts'

/** A wait of the sheet [h]: ordinary, and over an impervious base under large tile. */
export type SheetWait = { readonly h: number; readonly longestH: number }

export type CureLimits = {
  /** Below it nothing is answered [C]. */
  readonly coldC: number
  /** The material's own least temperature, or practice's where its sheet has none [C]. */
  readonly minC: number
  readonly maxC: number | null
  /** Below it the night's low matters and is asked for [C]. */
  readonly slowC: number
  /** Water freezes at it [C], looked for over the first `freezeHours`. */
  readonly freezeC: number
  readonly freezeHours: number
  /** The range of Q = activation energy / gas constant [K]. */
  readonly activationLowK: number
  readonly activationHighK: number
}

export type CureInput<W extends string> = {
  readonly waits: Readonly<Record<W, SheetWait>>
  /** Only cement is lengthened by equivalent age; the others keep to their sheet. */
  readonly setting: 'cement' | 'rapid' | 'epoxy' | 'drying'
  readonly referenceC: number
  /** The slab's temperature counts, not the air's. */
  readonly history: History
  /** Large tile over a membrane, old tile or another base that takes no water. */
  readonly longest: boolean
  readonly limits: CureLimits
}

/** Hours from setting (or from grouting, for a grout's waits): the sheet's own and the range at this temperature. */
export type WaitAt = { readonly sheetH: number; readonly lowH: number; readonly highH: number }

export type CureWarning =
  | { readonly code: 'below-material-minimum'; readonly valueC: number; readonly minC: number }
  | { readonly code: 'above-material-maximum'; readonly valueC: number; readonly maxC: number }
  /** Rapid, epoxy or drying material off its reference: only its sheet can say. */
  | { readonly code: 'sheet-only'; readonly valueC: number }
  | { readonly code: 'longest-wait' }

export type Cure<W extends string> = {
  readonly waits: Readonly<Record<W, WaitAt>>
  /** Was a wait lengthened beyond its sheet? */
  readonly lengthened: boolean
  /** Ask for the night's low in the same reply. */
  readonly askNightLow: boolean
  readonly warnings: readonly CureWarning[]
}

/** A sheet's waits at the slab's temperatures. [h]
 *  The sheet's wait at its reference is a floor. For cement cold lengthens it by equivalent age over the range of Q
 *  (the low end is the lesser Q); heat never shortens it. Other materials keep to their sheet.
 *  @problem below-minimum-temperature  anything below coldC; fact `why` is `freeze` where it freezes within freezeHours
 *  @problem out-of-range  a temperature outside CURE_TEMPERATURE    @problem missing  no temperature
 *  @source ASTM C1074 (form of equivalent age); 40 F: ACI terminology of cold weather
 *  @example 24 h at 70 F, Q 4000 to 5000 K: 33 to 36 h at 58 F, 41 to 47 h at 50 F */
export function cure<W extends string>(input: CureInput<W>): Outcome<Cure<W>> {
  const history = checkedHistory(input.history)
  if (!history.ok) return history
  const { limits } = input
  const cold = refusedForCold(history.value, limits)
  if (cold !== null) return cold
  const waits = {} as Record<W, WaitAt>
  const waitAt = waitsAt(input)
  for (const [name, wait] of Object.entries(input.waits) as [W, SheetWait][]) waits[name] = waitAt(wait)
  const lengthened = (Object.values(waits) as WaitAt[]).some((w) => w.highH > w.sheetH + 1e-9)
  const { lowC } = extremesC(history.value)
  return fine({
    waits,
    lengthened,
    askNightLow: history.value.kind === 'constant' && lowC < limits.slowC,
    warnings: warningsOf(input),
  })
}

function refusedForCold(history: History, limits: CureLimits): ReturnType<typeof refuse> | null {
  const tolerance = 0.05
  const first = extremesC(history, limits.freezeHours).lowC
  const { lowC } = extremesC(history)
  if (first <= limits.freezeC)
    return refuse('below-minimum-temperature', { value: first, min: limits.coldC, why: 'freeze' })
  if (lowC < limits.coldC - tolerance)
    return refuse('below-minimum-temperature', { value: lowC, min: limits.coldC, why: 'cold' })
  return null
}

/** How each wait of the material reads at these temperatures. */
function waitsAt<W extends string>({ setting, history, referenceC, limits, longest }: CureInput<W>) {
  const least = aging(history, referenceC, limits.activationLowK)
  const most = aging(history, referenceC, limits.activationHighK)
  return (wait: SheetWait): WaitAt => {
    const sheetH = longest ? wait.longestH : wait.h
    if (setting !== 'cement') return { sheetH, lowH: sheetH, highH: sheetH }
    return { sheetH, lowH: Math.max(sheetH, least(sheetH)), highH: Math.max(sheetH, most(sheetH)) }
  }
}

function warningsOf<W extends string>({ history, limits, setting, longest }: CureInput<W>): CureWarning[] {
  const { lowC, highC } = extremesC(history)
  const warnings: CureWarning[] = []
  if (lowC < limits.minC - 0.05) warnings.push({ code: 'below-material-minimum', valueC: lowC, minC: limits.minC })
  if (limits.maxC !== null && highC > limits.maxC + 0.05)
    warnings.push({ code: 'above-material-maximum', valueC: highC, maxC: limits.maxC })
  if (setting !== 'cement' && lowC < limits.slowC) warnings.push({ code: 'sheet-only', valueC: lowC })
  if (longest) warnings.push({ code: 'longest-wait' })
  return warnings
}
