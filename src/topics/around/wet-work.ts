/** Waterproofing of a wet area: faces, litres by coats, band at every change of plane. */
import { membraneLitres, wetFaces } from '../../core/shower/waterproofing.ts'
import type { Facts } from '../../facts.ts'
import { area, count, hours, named, number, type Phrase, run, say, small, volume } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { materialOf, usualPack } from '../../settings.ts'
import { floorSum } from '../floors.ts'
import { type Brief, sourceOf, type Told } from '../topic.ts'
import { aboutMembrane } from './about.ts'
import { figureNear, lengthNear } from './read.ts'

const USUAL_CURB = { heightMm: 114.3, widthMm: 114.3 }
const USUAL_NICHE = { widthMm: 304.8, heightMm: 609.6, depthMm: 88.9 }

export function wetWork(brief: Brief): Outcome<Told> {
  const assumed: Phrase[] = []
  const { around, settings } = { around: brief.settings.around, settings: brief.settings }
  const floor = floorSum(brief.facts)
  if (!floor.ok) return floor
  if (!floor.value) {
    const about = brief.heard.has('how-much', 'bucket') ? null : aboutMembrane(brief)
    return about ? fine(about) : refuse('question', { question: 'area' })
  }
  const membrane = materialOf(settings, 'coating', 'liquid-membrane')
  if (!membrane) return refuse('unknown-material', { said: 'liquid-membrane' })
  const coatsSaid = figureNear(brief.heard, ['none'], 'coat')?.n
  const coats =
    coatsSaid !== undefined && Number.isInteger(coatsSaid) && coatsSaid >= 1 && coatsSaid <= 5
      ? coatsSaid
      : membrane.coats
  const faces = facesOf(brief, floor.value, assumed)
  if (!faces.ok) return faces
  const wet = faces.value
  const litres = membraneLitres(wet.totalM2, membrane.coatLPerM2.usual, coats, around.shower.allowancePct.value)
  if (!litres.ok) return litres
  const pack = usualPack(membrane, brief.metric ? 'metric' : 'imperial')
  const pails = Math.ceil(litres.value / (pack.kg / membrane.wetKgPerL) - 1e-9)
  return fine({
    topic: 'shower',
    answer: say('shower.membrane', {
      litres: volume(litres.value),
      pails: count(pails),
      pail: named(pack.name),
      area: area(wet.totalM2),
      coats: count(coats),
    }),
    details: [
      ...(wet.planeChangesM > 0
        ? [
            say('shower.band', {
              run: run(wet.planeChangesM * 1000),
              inside: count(wet.insideCorners),
              outside: count(wet.outsideCorners),
            }),
          ]
        : []),
      ...wet.ledges,
      say('shower.recoat', { hours: hours(membrane.recoatH), tile: hours(membrane.waits.tile.h) }),
      say('shower.soft-joints'),
    ],
    assumed,
    warnings: [say('shower.code'), say('shower.film')],
    sources: [{ text: membrane.source }, sourceOf(around.shower.seamLapMm)],
    working: [
      say('shower.work-membrane', {
        area: number(wet.totalM2, 2),
        film: number(membrane.coatLPerM2.usual, 2),
        coats: count(coats),
        litres: number(litres.value, 1),
      }),
    ],
    values: { area_m2: wet.totalM2, membrane_l: litres.value, seam_tape_m: wet.planeChangesM || undefined },
    offers: ['math', 'keep'],
  })
}

type Wet = {
  readonly totalM2: number
  readonly planeChangesM: number
  readonly insideCorners: number
  readonly outsideCorners: number
  readonly ledges: Phrase[]
}

/** A bare area is taken as it is; a shower by its sides has a floor, three walls, and what stands in it. */
function facesOf(brief: Brief, floor: { areaM2: number; perimeterM: number }, assumed: Phrase[]): Outcome<Wet> {
  const h = brief.heard
  const floorOnly = h.has('floor', 'pan') && !h.has('wall', 'high')
  if (!floor.perimeterM || (brief.facts.surface === 'wall' && !h.has('shower')))
    return fine({ totalM2: floor.areaM2, planeChangesM: 0, insideCorners: 0, outsideCorners: 0, ledges: [] })
  if (floorOnly)
    return fine({
      totalM2: floor.areaM2,
      planeChangesM: floor.perimeterM,
      insideCorners: 4,
      outsideCorners: 0,
      ledges: [],
    })
  const { shower: s } = brief.settings.around
  const high = lengthNear(h, brief.metric, 'high', 'wall')
  const wallHeightMm = high === null ? s.wallHeightMm.value : high < 300 ? high * 12 : high
  if (high === null) assumed.push(say('shower.assumed-height', { height: { is: 'room', mm: wallHeightMm } }))
  assumed.push(say('shower.assumed-alcove'))
  // An alcove: its longest side is open.
  const openMm = longestSide(brief.facts) ?? floor.perimeterM * 250
  const worked = wetFaces(
    {
      floorM2: floor.areaM2,
      wallRunMm: floor.perimeterM * 1000 - openMm,
      wallHeightMm,
      corners: 2,
      ...(h.has('curb') ? { curb: { lengthMm: openMm, ...USUAL_CURB } } : {}),
      ...(h.has('niche') ? { niches: [USUAL_NICHE] } : {}),
      ...(h.has('bench') ? { bench: { lengthMm: openMm, depthMm: 380, heightMm: 450 } } : {}),
    },
    s.slopeMmPerM.value,
  )
  if (!worked.ok) return worked
  const ledges = worked.value.ledgeFallsMm.map(({ what, fallMm }) =>
    say(`shower.ledge-${what}`, { fall: small(fallMm) }),
  )
  return fine({ ...worked.value, ledges })
}

function longestSide(facts: Facts): number | null {
  const piece = facts.rooms?.[0]?.pieces[0]
  return piece ? Math.max(piece.lengthMm, piece.widthMm) : null
}
