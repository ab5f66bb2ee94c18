/** Wood joists asked about: deflection and bending, whichever governs; never a pass from deflection alone. */
import { cautionsFor } from '../../cautions.ts'
import {
  type JoistFloor,
  type JoistVerdict,
  judgeJoists,
  longestSpanMm,
  lumberFor,
  PSF_KPA,
  USUAL_DEAD_KPA,
  USUAL_LIVE_KPA,
} from '../../core/substrate/joists.ts'
import type { SaidJoists } from '../../language/rule-joists.ts'
import { type Amount, count, load, number, type Phrase, percent, quote, room, say, small, word } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import type { LumberBook } from '../../rules/book.ts'
import type { Brief, Source, Told } from '../topic.ts'

const TILE_LIMIT = 360
const STONE_LIMIT = 720
/** What joists are figured as where nobody read the stamp; it decides nothing. */
const IF_UNKNOWN = { species: 'spf', grade: '2' }

export function joistsTold(brief: Brief): Outcome<Told> {
  const said = brief.heard.rules.measures.joists as SaidJoists
  const { lumber } = brief.settings
  const section = lumber.sections.find((s) => s.nominal === said.nominal)
  if (!section) return refuse('unknown-material', { said: said.nominal })
  if (said.species === 'other' || said.grade === 'other') return fine(askSomeone(brief))
  // "ok for tile?" hangs on the span; "how far do they span?" asks for it.
  const { stances } = brief.heard.rules
  const judges = stances.includes('may') && !stances.includes('ask')
  if (said.spacingMm === null || (said.spanMm === null && judges)) return refuse('question', { question: 'joist-span' })
  const wood = { species: said.species ?? IF_UNKNOWN.species, grade: said.grade ?? IF_UNKNOWN.grade }
  const found = lumberFor(lumber.species, wood.species, wood.grade)
  if (!found.ok) return fine(askSomeone(brief))
  const stone =
    brief.heard.rules.conditions['material']?.includes('stone') === true || brief.facts.tile?.kind === 'stone'
  const floor: Omit<JoistFloor, 'spanMm'> = {
    section,
    lumber: found.value,
    spacingMm: said.spacingMm,
    liveKpa: said.livePsf === null ? USUAL_LIVE_KPA : said.livePsf * PSF_KPA,
    deadKpa: said.deadPsf === null ? USUAL_DEAD_KPA : said.deadPsf * PSF_KPA,
    limit: brief.heard.rules.figures.ratio ?? (stone ? STONE_LIMIT : TILE_LIMIT),
  }
  const sure = said.species !== null && said.grade !== null
  const of = { wood, sure, stone, said }
  const asked = { ...floor, spanMm: said.spanMm ?? Math.round(longestSpanMm(floor).spanMm) }
  const judged = judgeJoists(asked)
  if (!judged.ok) return judged
  return fine(said.spanMm === null ? tellLongest(brief, floor, of) : tell(brief, asked, judged.value, of))
}

type Case = {
  readonly wood: { readonly species: string; readonly grade: string }
  /** The species and grade were read off the stamp. */
  readonly sure: boolean
  readonly stone: boolean
  readonly said: SaidJoists
}

function verdictKey(book: LumberBook, verdict: JoistVerdict, { wood, sure }: Case): string {
  if (!sure) return 'depends-if'
  const { stiffEnough, strongEnough } = verdict
  if (stiffEnough && strongEnough)
    return book.species.find((s) => s.species === wood.species)?.confirmed ? 'yes' : 'depends-unconfirmed'
  return stiffEnough ? 'no-bending' : strongEnough ? 'no-deflection' : 'no-both'
}

/** To the inch, as the printed tables do; they are regenerated that way. */
const wholeInches = (mm: number): number => Math.round(mm / 25.4) * 25.4

/** 19.2 in is no sixteenth: told as it is marked on a tape. */
export const spacingPhrase = (mm: number, metric: boolean): Amount | Phrase =>
  metric ? small(mm) : say('joists.spacing', { spacing: number(mm / 25.4, 1) })

/** No span told: the longest that holds. */
function tellLongest(brief: Brief, floor: Omit<JoistFloor, 'spanMm'>, of: Case): Told {
  const { lumber } = brief.settings
  const longest = longestSpanMm(floor)
  const confirmed = lumber.species.find((s) => s.species === of.wood.species)?.confirmed === true
  return {
    topic: 'substrate',
    answer: say(`joists.${of.sure ? (confirmed ? 'span' : 'span-unconfirmed') : 'span-if'}`, {
      size: quote(of.said.nominal),
      spacing: spacingPhrase(floor.spacingMm, brief.metric),
      span: room(wholeInches(longest.spanMm)),
      governs: say(`joists.${longest.governs}`),
      lumber: lumberPhrase(of),
    }),
    details: [say('joists.not-here')],
    assumed: loadsAssumed(floor, of.said),
    warnings: structure(brief),
    sources: sourcesOf(lumber, of.wood.species),
    values: { deflection_limit: floor.limit, max_span_m: longest.spanMm / 1000 },
  }
}

const lumberPhrase = ({ wood }: Case): Phrase =>
  say('joists.lumber', { species: word(`species-${wood.species}`), grade: quote(wood.grade) })

const loadsAssumed = (floor: Omit<JoistFloor, 'spanMm'>, { livePsf, deadPsf }: SaidJoists): Phrase[] =>
  livePsf !== null && deadPsf !== null
    ? []
    : [say('joists.loads', { live: load(floor.liveKpa), dead: load(floor.deadKpa) })]

function tell(brief: Brief, floor: JoistFloor, verdict: JoistVerdict, of: Case): Told {
  const longest = longestSpanMm(floor)
  const args: Record<string, Amount | Phrase> = {
    ratio: count(Math.round(verdict.ratio)),
    limit: count(floor.limit),
    bending: percent(verdict.bendingRatio * 100),
    kind: say(of.stone ? 'joists.kind-stone' : 'joists.kind-tile'),
    lumber: lumberPhrase(of),
  }
  return {
    topic: 'substrate',
    answer: say(`joists.${verdictKey(brief.settings.lumber, verdict, of)}`, args),
    details: [
      say('joists.longest', {
        size: quote(of.said.nominal),
        spacing: spacingPhrase(floor.spacingMm, brief.metric),
        span: room(wholeInches(longest.spanMm)),
        governs: say(`joists.${longest.governs}`),
        asked: room(floor.spanMm),
      }),
      say('joists.not-here'),
    ],
    assumed: loadsAssumed(floor, of.said),
    warnings: structure(brief),
    sources: sourcesOf(brief.settings.lumber, of.wood.species),
    working: [
      say('joists.work-deflection', { sag: small(verdict.deflectionMm) }),
      say('joists.work-bending', { stress: number(verdict.stressMpa, 2), allowed: number(verdict.allowedMpa, 2) }),
    ],
    values: {
      deflection_mm: verdict.deflectionMm,
      deflection_ratio: verdict.ratio,
      deflection_limit: floor.limit,
      bending_ratio: verdict.bendingRatio,
      max_span_m: longest.spanMm / 1000,
    },
  }
}

function sourcesOf(book: LumberBook, species: string): Source[] {
  const found = book.species.find((s) => s.species === species)
  return [{ text: 'IRC Table R301.7' }, { text: found?.source ?? book.note }]
}

const askSomeone = (brief: Brief): Told => ({
  topic: 'substrate',
  answer: say('joists.ask-someone'),
  details: [say('joists.not-here')],
  warnings: structure(brief),
  sources: [{ text: 'IRC Table R301.7' }],
})

const structure = (brief: Brief): readonly Phrase[] =>
  cautionsFor(brief.settings.cautions, ['structure'], 'substrate', { ...brief, people: brief.memory.people }).warnings
