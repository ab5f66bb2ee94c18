/** Cautions by topic: in full the first time for a person and a day, then as their tags. */
import { expect, test } from 'vitest'
import { Crew } from '../support/crew.ts'

const CEMENT = 'Wet mortar and grout are caustic'

test('mortar brings the caution of wet cement once a day, then its tag', () => {
  const crew = new Crew()
  expect(crew.say('thinset for 130 sf, 1/2 notch').warnings.join(' ')).toContain(CEMENT)
  expect(crew.say('and for 60 sf').warnings).toContain('Wet cement burns.')
  expect(crew.say('thinset for 130 sf, 1/2 notch', { person: 'setter' }).warnings.join(' ')).toContain(CEMENT)
  expect(crew.say('thinset for 130 sf', { now: '2026-03-12T08:00:00-05:00' }).warnings.join(' ')).toContain(CEMENT)
})

test('each topic counts for itself', () => {
  const crew = new Crew()
  crew.say('thinset for 130 sf, 1/2 notch')
  expect(crew.say('grout for 130 sf of 18x18, 3/16 joint').warnings.join(' ')).toContain(CEMENT)
})

test('epoxy is cautioned in full every time', () => {
  const crew = new Crew()
  for (let round = 0; round < 2; round += 1)
    expect(crew.say('epoxy grout for 60 sf of 18x18, 1/8 joint').warnings.join(' ')).toContain('allergic for life')
})

test('the workings bring no caution anew', () => {
  const crew = new Crew()
  crew.say('thinset for 130 sf, 1/2 notch')
  expect(crew.say('show the math').warnings.join(' ')).not.toContain(CEMENT)
})

test('a zone decides when the day is over', () => {
  const crew = new Crew()
  const zone = 'America/Chicago'
  crew.say('thinset for 130 sf', { now: '2026-03-11T04:30:00Z', zone })
  // Half an hour later it is still 10 March in Chicago, and an hour after that it is not.
  expect(crew.say('thinset for 130 sf', { now: '2026-03-11T04:50:00Z', zone }).warnings).toContain('Wet cement burns.')
  expect(crew.say('thinset for 130 sf', { now: '2026-03-11T05:10:00Z', zone }).warnings.join(' ')).toContain(CEMENT)
})
