/** Readings as they are called out: "flatness 3/16 in 10", "lifted one, 85% coverage", "RH 78", "lot 4471", what the owner said. */
import type { ReadingBody, ReadingKind } from '../../jobs/job.ts'
import type { Concept } from '../../language/concepts.ts'
import type { Heard } from '../../language/heard.ts'
import type { Loose } from '../../language/singles.ts'
import { statesSite } from '../site.ts'

/** What asks in a reading; words like "coverage" name what was read. */
const ASKING: readonly Concept[] = ['how-many', 'how-much', 'when', 'how-long', 'can-we', 'enough', 'math', 'picture']
const MOST_TEXT = 200

/** "is" alone may tell: "flatness by the oven is 1/8 in 10"; so what asks is a question word, or whether it will do. */
const asks = (heard: Heard): boolean => {
  if (heard.has(...ASKING) || heard.plain.text.includes('?')) return true
  const { log } = heard.commands
  if (log.has('reading')) return false
  return !log.has('owner-word') && (log.has('good-enough') || heard.rules.stances.some((stance) => stance !== 'may'))
}

/** What a message reads off the floor, or null where it reads nothing or asks. */
export function readReading(heard: Heard): ReadingBody | null {
  const { log } = heard.commands
  const told = log.has('reading')
  if (heard.facts.rooms !== undefined || asks(heard)) return null
  const text = heard.typed.trim().slice(0, MOST_TEXT)
  const said = told ? noted(heard) : text
  const kind = kindOf(heard)
  if (kind === null) return told ? { what: 'note', text: said } : null
  const value = figureOf(kind, heard)
  return { what: kind, text: said, ...(value === null ? {} : { value }) }
}

/** What is to be noted, as it was typed: the message without the word that asks for it. */
function noted({ typed, plain, commands: { name } }: Heard): string {
  const at = name === null ? -1 : plain.text.lastIndexOf(name)
  const said = at < 0 ? typed : typed.slice(plain.origin[at])
  return said.trim().slice(0, MOST_TEXT)
}

function kindOf(heard: Heard): ReadingKind | null {
  const { log } = heard.commands
  const { facts } = heard
  const told = log.has('reading')
  const pct = percentIn(heard) !== null
  if (log.has('owner-word') && facts.areaM2 === undefined && (told || statesNoFloor(heard))) return 'owner'
  if (pct && (log.has('lifted') || log.has('contact-read') || (told && log.has('of-contact')))) return 'contact'
  if (log.has('of-lot') && !log.has('lot-gone') && !log.has('short') && (told || isLot(heard))) return 'lot'
  if (log.has('of-moisture') && facts.areaM2 === undefined && (told || heard.quantities.length > 0)) return 'moisture'
  if (told ? log.has('of-flatness') : log.has('flatness-read') && heard.quantities.length > 0) return 'flatness'
  const slab = facts.temperatures?.find(({ of }) => of === 'slab')
  return slab && (told || onlyTemperature(heard)) ? 'slab' : null
}

/** The least figure in percent, also where the sign was left out: "rh 78", "90 and 95% covered". */
function percentIn(heard: Heard): number | null {
  const { log } = heard.commands
  const bare =
    log.has('of-contact') || log.has('of-moisture') || log.has('lifted')
      ? heard.loose.filter(isShare).map(({ q }) => q.n)
      : []
  const said = [...heard.percents, ...bare].filter((n) => n <= 100)
  return said.length > 0 ? Math.min(...said) : null
}

/** "slab 58F", "shop was 61": what the site's temperature read, for the record. */
export function siteReading(heard: Heard): ReadingBody | null {
  if (!statesSite(heard)) return null
  const all = heard.facts.temperatures ?? []
  const read = all.find(({ of }) => of === 'slab') ?? all[0]
  const text = heard.typed.trim().slice(0, MOST_TEXT)
  return read ? { what: read.of === 'slab' ? 'slab' : 'air', text, value: read.c } : null
}

const LEAST_SHARE = 30
const isShare = ({ q }: Loose): boolean => q.dimension === 'none' && !q.token.fraction && q.n >= LEAST_SHARE

const statesNoFloor = ({ facts }: Heard): boolean => facts.tile === undefined || facts.tile.lengthMm <= 0

/** A lot has a number of its own, and nothing is counted that is left. */
const isLot = (heard: Heard): boolean =>
  /\d/.test(heard.plain.text) && statesNoFloor(heard) && !heard.commands.log.has('left') && !heard.has('bag', 'row')

const onlyTemperature = (heard: Heard): boolean =>
  heard.facts.when === undefined &&
  heard.facts.done === undefined &&
  !heard.has('set-verb', 'grout', 'walk', 'mortar', 'heated', 'mixed-verb', 'cure-word') &&
  statesNoFloor(heard)

function figureOf(kind: ReadingKind, heard: Heard): number | null {
  switch (kind) {
    case 'contact':
    case 'moisture':
      return percentIn(heard)
    case 'slab':
      return heard.facts.temperatures?.find(({ of }) => of === 'slab')?.c ?? null
    default:
      return null
  }
}
