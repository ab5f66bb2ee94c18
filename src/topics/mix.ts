/** Mixing: water for any part of a bag, slake, pot life, how much to mix for the next stretch. */
import { batch, openTimeMin, potLifeMin, waterL } from '../core/mix.ts'

import type { GroutName } from '../facts.ts'
import { area, mass, minutes, named, number, type Phrase, say, temperature, volume } from '../phrase.ts'
import { hotRule, potLifeInput } from '../practice.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import { type Grout, type Leveller, type Mortar, materialOf, usualPack } from '../settings.ts'
import { bedFor } from './mortar-coverage.ts'
import { airC, temperaturesOf } from './site.ts'
import { groutOf, knownTile, mortarOf, packPhrase } from './stuff.ts'
import { type Brief, sourceOf, type Told } from './topic.ts'

type Powder = Mortar | Grout | Leveller

function powderOf(brief: Brief): Outcome<Powder> {
  if (brief.has('leveller')) {
    const leveller = materialOf(brief.settings, 'leveller', 'leveller')
    return leveller ? fine(leveller) : refuse('unknown-material', { said: 'leveller' })
  }
  const groutNamed = brief.facts.grout
  if (
    (brief.has('grout') ||
      (brief.memory.talk?.topic === 'grout' && brief.heard.has('water')) ||
      (groutNamed !== undefined && !brief.has('mortar'))) &&
    !(brief.has('mortar') && groutNamed === undefined)
  ) {
    const grout = groutOf(brief, groutNamed ?? ('sanded' satisfies GroutName))
    return grout.ok ? fine(grout.value.grout) : grout
  }
  const mortar = mortarOf(brief, knownTile(brief.facts))
  return mortar.ok ? fine(mortar.value.mortar) : mortar
}

/** How much powder is meant: a weight, or bags or parts of one. [kg] */
function powderKg(brief: Brief, material: Powder, assumed: Phrase[]): { readonly kg: number; readonly bags: number } {
  const { facts } = brief
  if (facts.powderKg !== undefined) return { kg: facts.powderKg, bags: 1 }
  const own = brief.heard.facts
  // "per bag", after half a bag: one.
  const perBag =
    brief.heard.has('bag', 'kit') && (own.bagsToMix ?? own.haveBags ?? own.usedBags ?? own.bagKg) === undefined
  const bags = perBag ? 1 : (facts.bagsToMix ?? facts.haveBags ?? facts.usedBags ?? bagsOfTalk(brief, material) ?? 1)
  const pack =
    facts.bagKg !== undefined
      ? { name: '', kg: facts.bagKg }
      : usualPack(material, brief.metric ? 'metric' : 'imperial')
  if (facts.bagKg === undefined) assumed.push(say('assumed.bag', { bag: packPhrase(pack) }))
  return { kg: bags * pack.kg, bags }
}

/** "how much water for that", after an answer in bags. */
function bagsOfTalk({ heard, memory: { talk } }: Brief, material: Powder): number | null {
  if (talk === null || talk.topic === 'mix' || !heard.has('water') || heard.has('bag', 'kit', 'powder')) return null
  const bags = talk.values[material.kind === 'grout' ? 'grout_bags' : 'mortar_bags']
  return typeof bags === 'number' && bags > 0 ? bags : null
}

const mixCaution = say('mix.never-water')

export function mix(brief: Brief): Outcome<Told> {
  const found = powderOf(brief)
  if (!found.ok) return found
  const material = found.value
  const { all, told } = temperaturesOf(brief)
  const temp = airC(all) ?? material.referenceC
  const life = potLife(brief, material, temp)
  if (!life.ok) return life
  const open =
    brief.has('open-time') && material.kind === 'mortar'
      ? openTimeMin(material.openTimeMin, { c: temp, sunOrWind: brief.has('sun', 'wind') }, hotRule(brief.settings))
      : null
  if (open && !open.ok) return open
  const common = {
    topic: 'mix' as const,
    warnings: [mixCaution, say('mix.sheet')],
    sources: [{ text: material.source }],
    offers: ['math'],
    assumed: told,
  }
  const slake = material.slakeMin
  const base = {
    slake_min: slake?.usual,
    pot_life_min: life.value?.usual,
    pot_life_min_low: life.value?.low,
    pot_life_min_high: life.value?.high,
  }
  if (brief.has('slake') && !brief.has('water'))
    return fine({
      ...common,
      answer: slake
        ? say('mix.slake', { usual: minutes(slake.usual) })
        : say('mix.no-slake', { material: named(material.name) }),
      details: [say('mix.remix')],
      values: base,
    })
  if (open?.ok)
    return fine({
      ...common,
      answer: say('mix.open-time', { low: minutes(open.value.low), high: minutes(open.value.high) }),
      details: [say('mix.touch')],
      values: base,
    })
  const spreads = brief.heard.has('mix-verb', 'spread-verb') && !brief.heard.has('pot-life', 'how-long')
  const lifeAsked =
    (!spreads && (brief.has('pot-life') || (brief.has('bucket') && brief.has('how-long')))) ||
    brief.heard.has('mixed-verb')
  if (lifeAsked && !brief.has('water')) return potLifeAnswer(brief, material, temp, life.value, common, base)
  if (brief.has('mix-verb', 'spread-verb') && !brief.has('water') && material.kind === 'mortar')
    return batchAnswer(brief, material, life.value?.usual ?? 60, common, base)
  return waterAnswer(brief, material, life.value, common, base)
}

function potLife(
  brief: Brief,
  material: Powder,
  c: number,
): Outcome<{ low: number; usual: number; high: number } | null> {
  const input = potLifeInput(brief.settings, material)
  return input ? potLifeMin(input, c) : fine(null)
}

type Common = Required<Pick<Told, 'topic' | 'warnings' | 'sources' | 'offers' | 'assumed'>>
type Base = NonNullable<Told['values']>
type Life = { low: number; usual: number; high: number } | null

function potLifeAnswer(
  brief: Brief,
  material: Powder,
  c: number,
  life: Life,
  common: Common,
  base: Base,
): Outcome<Told> {
  if (!life) return fine({ ...common, answer: say('mix.no-pot-life', { material: named(material.name) }) })
  const hot = c > brief.settings.practice.mix.hotC.value
  const told = say('mix.pot-life', {
    usual: minutes(Math.round(life.usual / 5) * 5),
    temperature: temperature(c),
    low: minutes(Math.round(life.low / 5) * 5),
    high: minutes(Math.round(life.high / 5) * 5),
  })
  const aged = agedMin(brief)
  return fine({
    ...common,
    answer: aged === null ? told : say(`mix.aged-${ageOf(aged, life)}`, { age: minutes(Math.round(aged)) }),
    details: [...(aged === null ? [] : [told]), say('mix.restir'), ...(hot ? [say('mix.hot')] : [])],
    working: [
      say('mix.work-life', {
        sheet: minutes(material.potLifeMin?.usual ?? 0),
        reference: temperature(material.referenceC),
        temperature: temperature(c),
        usual: minutes(Math.round(life.usual)),
      }),
    ],
    assumed: [...common.assumed, say('cure.assumed-material', { material: named(material.name) })],
    values: base,
  })
}

/** "mixed 40 min ago, still ok?" [min] */
function agedMin({ heard }: Brief): number | null {
  const [h] = heard.durationsH
  return heard.has('ago') && h !== undefined ? h * 60 : null
}

const ageOf = (min: number, life: { low: number; high: number }): 'good' | 'look' | 'gone' =>
  min <= life.low ? 'good' : min <= life.high ? 'look' : 'gone'

function waterAnswer(brief: Brief, material: Powder, life: Life, common: Common, base: Base): Outcome<Told> {
  const assumed: Phrase[] = []
  const { kg, bags } = powderKg(brief, material, assumed)
  if (material.waterLPerKg === null)
    return fine({
      ...common,
      answer: say('mix.no-water', { material: named(material.name) }),
      values: { ...base, mix_powder_kg: kg },
    })
  const water = waterL(kg, material.waterLPerKg)
  if (!water.ok) return water
  const w = water.value
  return fine({
    ...common,
    answer: say('mix.water', { usual: volume(w.usual), low: volume(w.low), high: volume(w.high), powder: mass(kg) }),
    details: [
      ...(bags > 1 ? [say('mix.per-bag', { bags: number(bags, 2), each: volume(w.usual / bags) })] : []),
      material.slakeMin ? say('mix.order', { slake: minutes(material.slakeMin.usual) }) : say('mix.order-no-slake'),
      ...(life ? [say('mix.life-line', { usual: minutes(life.usual) })] : []),
      ...(material.kind === 'grout' ? [say('grout.same-water')] : []),
    ],
    assumed: [...assumed, ...common.assumed, say('cure.assumed-material', { material: named(material.name) })],
    working: [
      say('mix.work-water', {
        kg: number(kg, 2),
        perKg: number(material.waterLPerKg.usual, 3),
        litres: number(w.usual, 2),
      }),
    ],
    values: { ...base, mix_powder_kg: kg, mix_water_l: w.usual, mix_water_l_low: w.low, mix_water_l_high: w.high },
    // The next question of water is of the same stuff.
    ...(material.kind === 'grout' ? { learned: { grout: brief.facts.grout ?? 'sanded' } } : {}),
  })
}

/** Left to do where nothing was said of it: the pot life decides then. [m2] */
const MUCH_LEFT_M2 = 10_000
const MORE_THAN_A_BATCH = 1.05

function batchAnswer(brief: Brief, material: Mortar, lifeMin: number, common: Common, base: Base): Outcome<Told> {
  const assumed: Phrase[] = []
  const bed = bedFor(brief, assumed)
  if (!bed.ok) return bed
  const { defaults } = brief.settings
  const paceM2PerH = brief.facts.paceM2PerH ?? defaults.paceM2PerH
  if (brief.facts.paceM2PerH === undefined) assumed.push(say('mix.assumed-pace', { area: area(paceM2PerH) }))
  const weather = { c: airC(temperaturesOf(brief).all) ?? material.referenceC, sunOrWind: brief.has('sun', 'wind') }
  const open = openTimeMin(material.openTimeMin, weather, hotRule(brief.settings))
  if (!open.ok) return open
  const next = batch({
    areaLeftM2: brief.facts.leftM2 ?? brief.facts.areaM2 ?? MUCH_LEFT_M2,
    paceM2PerH,
    potLifeMin: lifeMin,
    openTimeMin: open.value.usual,
    consumptionLPerM2: bed.value,
    yieldLPerKg: (1 + (material.waterLPerKg?.usual ?? 0)) / material.wetKgPerL,
    waterLPerKg: material.waterLPerKg,
  })
  if (!next.ok) return next
  const b = next.value
  const spread = say('mix.spread', { area: area(b.spreadM2 ?? b.areaM2), minutes: minutes(open.value.usual) })
  const mixed = say('mix.batch', {
    powder: mass(b.powderKg),
    water: volume(b.waterL?.usual ?? 0),
    area: area(b.areaM2),
  })
  // "mix for 130 sf", which is more than a bucket: what all of it takes, too.
  const wholeM2 = brief.heard.facts.areaM2 ?? 0
  const more = wholeM2 > b.areaM2 * MORE_THAN_A_BATCH
  const whole = say('mix.whole', {
    area: area(wholeM2),
    powder: mass((b.powderKg * wholeM2) / b.areaM2),
    water: volume(((b.waterL?.usual ?? 0) * wholeM2) / b.areaM2),
  })
  const spreadFirst = brief.heard.has('spread-verb') && !brief.heard.has('mix-verb')
  return fine({
    ...common,
    answer: spreadFirst ? spread : mixed,
    details: [...(more ? [whole] : []), spreadFirst ? mixed : spread, say('mix.touch')],
    assumed: [...assumed, ...common.assumed],
    values: { ...base, mix_powder_kg: b.powderKg, mix_water_l: b.waterL?.usual },
    sources: [...(common.sources ?? []), sourceOf(brief.settings.practice.mix.hotC)],
  })
}
