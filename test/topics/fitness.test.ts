/** Whole messages about rules and troubles through `answer`: the verdict first, the source, cautions once. */
import { expect, test } from 'vitest'
import cautions from '../../config/cautions.json' with { type: 'json' }
import { replyText } from '../../src/speak.ts'
import { RULE_CASES } from '../rules/corpus.ts'
import { ask, Crew } from '../support/crew.ts'

const verdictOf = (answer: string): string | null => /^(Yes|No|Depends)\b/.exec(answer)?.[1]?.toLowerCase() ?? null

test.each(RULE_CASES)('$say', ({ say, verdict }) => {
  const reply = ask(say)
  expect(reply.ok, reply.answer).toBe(true)
  expect(verdictOf(reply.answer)).toBe(verdict)
  expect(reply.sources.length).toBeGreaterThan(0)
})

test.each([
  { say: 'how much mortar contact under tile on a hallway floor', key: 'min_contact_pct', value: 80 },
  { say: 'coverage on shower walls?', key: 'min_contact_pct', value: 95 },
  { say: 'how flat for 18x18', key: 'max_variation_mm', value: 3.175 },
  { say: 'max offset for 8x48', key: 'max_offset_pct', value: 33 },
  { say: 'lippage allowed with a 3/16 joint', key: 'max_lippage_mm', value: 0.79375 },
  { say: 'how often do expansion joints go in outside', key: 'movement_spacing_m', value: 3.6576 },
  { say: 'what dcof for a mudroom floor', key: 'min_dcof', value: 0.42 },
  { say: 'how much slope in a shower pan', key: 'slope_mm_per_m', value: 20.833333 },
  { say: 'what deflection for stone floor', key: 'deflection_limit', value: 720 },
  { say: 'least bed of thinset under tile?', key: 'min_bed_mm', value: 2.38125 },
])('$say gives $key $value', ({ say, key, value }) => {
  expect(ask(say).values[key]).toBeCloseTo(value, 5)
})

test('a reported source says so, and one from memory too', () => {
  expect(ask('is 80 percent ok in a shower').sources[0]).toBe('ANSI A108.5 s. 2.2.3, as reported')
  expect(ask('what dcof for a mudroom floor').sources[0]).toContain('from memory')
})

test('the kind of rule is told', () => {
  expect(replyText(ask('half offset on 8x48'))).toContain('a standard')
  expect(replyText(ask('unmodified under a membrane?'))).toContain('data sheet')
})

test('a condition that is missing is asked for, and its answer settles the question', () => {
  const crew = new Crew()
  const first = crew.say('is 85% coverage ok')
  expect(first.answer).toMatch(/^Depends.*\?$/)
  expect(crew.say('shower').answer).toMatch(/^No/)
  expect(crew.say('and in the hallway?').answer).toMatch(/^Yes/)
})

test('the tile of the job settles a question that names none, and that is said', () => {
  const crew = new Crew()
  crew.say('10x13 shop floor, 18x18 tile, 3/16 joint')
  const reply = crew.say('is 3/16 in 10 ft flat enough')
  expect(reply.answer).toMatch(/^No/)
  expect(reply.assumed.join(' ')).toContain('18 in x 18 in')
})

test('a question about a rule leaves the job as it was', () => {
  const crew = new Crew()
  crew.say('10x13 shop floor, 18x18 tile, 3/16 joint')
  const before = crew.memory.facts
  crew.say('slab is out 3/16 in 10 ft, ok for 24x48?')
  expect(crew.memory.facts).toEqual(before)
})

test('a caution comes in full once a day and person, then as its tag; asbestos always in full', () => {
  const crew = new Crew()
  const full = 'Wet mortar and grout are caustic'
  expect(crew.say('can i add water to stiff thinset').warnings.join(' ')).toContain(full)
  expect(crew.say('can i add water to stiff thinset').warnings).toEqual(['Wet cement burns.'])
  expect(crew.say('can i add water to stiff thinset', { person: 'helper' }).warnings.join(' ')).toContain(full)
  const tomorrow = { now: '2026-03-11T08:00:00-05:00' }
  expect(crew.say('can i add water to stiff thinset', tomorrow).warnings.join(' ')).toContain(full)
  for (let round = 0; round < 2; round += 1)
    expect(crew.say('can i grind off the old cutback').warnings.join(' ')).toContain('only a laboratory')
})

test('the verdict comes before the caution', () => {
  const text = replyText(ask('can i grind off the old cutback'))
  expect(text.indexOf('No.')).toBe(0)
  expect(text.indexOf('Asbestos first')).toBeGreaterThan(0)
})

test('the gravest cautions are always in full', () => {
  const always = cautions.filter((c) => c.always).map((c) => c.id)
  for (const id of ['asbestos', 'lead', 'epoxy', 'solvent', 'acid', 'post-tension', 'structure', 'gas', 'electric'])
    expect(always).toContain(id)
})

test.each([
  ['my thinset is skinning over before i get the tile down', 'Stop'],
  ['grout dried blotchy', 'Go on'],
  ['it froze last night and we set yesterday', 'Lift it'],
  ['tile sounds hollow what now', 'Stop'],
  ['ridges still showing on the back of the tile i pulled', 'Lift it'],
  ['white powder coming up on the grout', 'Go on'],
  ['wall tiles keep sliding down', 'Stop'],
  ['found a crack in the slab running under the next row', 'Stop'],
  ['thinset still soft after 2 days', 'Stop'],
  ['they used premixed bucket adhesive under 24x24 porcelain', 'Lift it'],
])('%s: %s', (say, action) => {
  const reply = ask(say)
  expect(reply.topic).toBe('trouble')
  expect(reply.answer.startsWith(action)).toBe(true)
  expect(reply.details.some((line) => line.startsWith('To tell:'))).toBe(true)
})

test('British and Australian rules where the country is named', () => {
  expect(ask('how often movement joints inside in the uk').values['movement_spacing_m']).toBe(10)
  expect(ask('how flat must the floor be in the uk').assumed).toContain('United Kingdom rules')
  expect(ask('how much coverage on a kitchen floor in australia').values['min_contact_pct']).toBe(90)
})

test('a message that asks for a sum is no rule question', () => {
  for (const say of [
    '12x14 kitchen, 12x24 tile, 1/8 joint, third offset, how many',
    '10x13 shop floor, 18x18 tile, 3/16 joint',
  ])
    expect(ask(say).topic).toBe('tile')
  expect(ask('62F in celsius').topic).toBe('convert')
  expect(ask('whats a bag cover w 1/2 trowel if i backbutter').topic).toBe('mortar')
})
