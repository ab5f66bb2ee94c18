/** Readings called out in sloppy words, and the photos that come with them: what is kept, and how it stands against the rule. */
import { describe, expect, test } from 'vitest'
import { checkEntry } from '../../src/jobs/check.ts'
import { fold } from '../../src/jobs/fold.ts'
import { type ReadingBody, shownReadings } from '../../src/jobs/job.ts'
import { replyText } from '../../src/speak.ts'
import { Crew } from '../support/crew.ts'

const SHOP = 'shop floor 20x24, 18x18 tile, 3/16 joint, 8 a box'

type Called = readonly [said: string, what: string, value: number | null, says?: RegExp]
const READ: readonly Called[] = [
  // 18 in tile: 1/8 in over 10 ft, ANSI A108.02 as the rule book has it.
  ['flatness 3/16 in 10', 'flatness', null, /No\. 1\/8 in over 10'/],
  ['Flatness 1/16 in 10 ft by the oven', 'flatness', null, /Yes\. 1\/8 in over 10'/],
  ['flatness by the oven is 1/8 in 10 ft', 'flatness', null, /Yes\. 1\/8/],
  ['log hump 1/4 by the door', 'flatness', null],
  // 80 % dry and 95 % wet, ANSI A108.5 as config has it.
  ['lifted one, 85% coverage', 'contact', 85, /80 % at least/],
  ['lifted one 85 coverage', 'contact', 85],
  ['pulled one up 70 percent', 'contact', 70, /under the 80 %/],
  ['popped 2, 90 and 95% covered', 'contact', 90],
  ['contact check 92%', 'contact', 92],
  ['slab 58F by the door 64F by the oven', 'slab', 14.44],
  ['lot # 4471 on boxes 1-20, 4502 on the rest', 'lot', null],
  ['foreman says keep going', 'owner', null],
  ['levante 2, 85 y 92%', 'contact', 85],
  ['RH 78', 'moisture', 78, /Depends.*75 % to 80 % RH/],
  ['rh is 82% by the drain', 'moisture', 82],
  ['log moisture 82% RH at the door', 'moisture', 82],
  ['moisture 4.5%', 'moisture', 4.5],
  ['slab 58F', 'slab', 14.44],
  ['slab temp 61', 'slab', 16.11],
  ['shop was 61F', 'air', 16.11],
  ['lot 4471', 'lot', null],
  ['Dye lot 4471B shade 3', 'lot', null],
  ['owner says she wants the half offset anyway', 'owner', null],
  ["client ok'd the 1/16 lippage at the door", 'owner', null],
  ['GC signed off on the hump', 'owner', null],
  ['for the record: Maria said go ahead', 'note', null],
  ['planeza 5 mm en 3 m', 'flatness', null, /No\. 1\/8|No\. 3/],
  ['levanté una, 85% de cobertura', 'contact', 85, /80 % por lo menos/],
  ['humedad 78', 'moisture', 78],
  ['losa a 14 C', 'slab', 14],
  ['lote 4471', 'lot', null],
  ['la dueña dice que quiere la traba a la mitad de todos modos', 'owner', null],
  ['anota: María dijo que siga', 'note', null],
]

describe('readings', () => {
  test.each(READ.map(([said, what, value, says]) => ({ said, what, value, says })))('$said: $what', (called) => {
    const { said, what, value, says } = called
    const crew = new Crew()
    crew.say(SHOP)
    const reply = crew.say(said)
    // A temperature is kept by the job as well, which then answers.
    expect(what === 'slab' || what === 'air' ? ['job', 'log'] : ['log'], replyText(reply)).toContain(reply.topic)
    const reading = crew.memory.job.readings.at(-1)
    expect(reading?.what).toBe(what)
    // Kept as it was typed, capitals and all.
    expect(said).toContain(reading?.text)
    if (value === null) expect(reading?.value).toBeUndefined()
    else expect(reading?.value).toBeCloseTo(value, 1)
    if (says) expect(replyText(reply)).toMatch(says)
    for (const entry of crew.entries) expect(checkEntry(entry)).toEqual({ ok: true, value: 'known' })
  })

  test.each([
    'flatness 3/16 in 10 ok?',
    'moisture barrier for 130 sf',
    'flatness',
    'flatness 3/16 in 10 ok',
    'is 78 rh ok',
    'owner wants to know if half offset is ok',
    'lifted one, 85% coverage, good?',
    'slab is 58F, when can we grout',
    'set at 2pm, slab 58F',
    'used a lot of mud, 3 bags on 50 sf',
    'can one guy lift an 80 lb bag',
    'la losa a 14 C, cuando se puede emboquillar',
    'que humedad aguanta la losa',
  ])('%s is no reading', (said) => {
    const crew = new Crew()
    crew.say(SHOP)
    crew.say(said)
    expect(crew.memory.job.readings).toEqual([])
  })

  test('who said so is found by what was spoken of', () => {
    const crew = new Crew()
    crew.say(SHOP)
    crew.say('owner said no half offset', { person: 'Ben' })
    crew.say('lot 4471', { person: 'Ana' })
    expect(replyText(crew.say('who said no on the offset'))).toMatch(/^Ben, .*no half offset$/)
  })

  test('undo takes a reading back, and the history names it', () => {
    const crew = new Crew()
    crew.say(SHOP)
    crew.say('lot 4471', { person: 'U7' })
    expect(replyText(crew.say('who logged what'))).toMatch(/lot 4471/)
    crew.say('undo')
    expect(crew.memory.job.readings).toEqual([])
  })
})

const PHOTO = { id: 'F0AB', name: 'IMG_2041.jpg', url: 'https://files.example/F0AB' }
const OTHER = { id: 'F0CD', name: 'IMG_2042.jpg' }

describe('photos', () => {
  test('a reading keeps the photo that came with it; history and record name it', () => {
    const crew = new Crew()
    crew.say(SHOP)
    const reply = crew.say('lifted one, 85% coverage', { photos: [PHOTO] })
    expect(replyText(reply)).toMatch(/1 photo kept with it/)
    expect(crew.memory.job.readings.at(-1)).toMatchObject({ what: 'contact', value: 85, photos: [PHOTO] })
    expect(replyText(crew.say('history'))).toMatch(/85% coverage \(photo IMG_2041\.jpg\)/)
    expect(replyText(crew.say('sign-off'))).toMatch(/IMG_2041\.jpg/)
    for (const entry of crew.entries) expect(checkEntry(entry)).toEqual({ ok: true, value: 'known' })
  })

  test('without a word it is kept and asked about once; the next words of that person tell what it shows', () => {
    const crew = new Crew()
    crew.say(SHOP)
    expect(crew.say('', { photos: [PHOTO] }).answer).toMatch(/1 photo kept\. What does it show/)
    expect(crew.say('', { photos: [OTHER] }).answer).not.toMatch(/\?/)
    crew.say('lot 4471')
    const shown = shownReadings(crew.memory.job)
    expect(shown).toHaveLength(1)
    expect(shown[0]).toMatchObject({ what: 'lot', text: 'lot 4471', photos: [PHOTO, OTHER] })
    // Told once, it is not told again with the next reading.
    crew.say('lot 4472')
    expect(crew.memory.job.readings.at(-1)?.photos).toBeUndefined()
  })

  test('words that mean nothing by themselves are what a photo shows', () => {
    const crew = new Crew()
    crew.say(SHOP)
    const talk = crew.memory.talk
    crew.say('', { photos: [PHOTO] })
    expect(crew.say('crack by the back door').answer).toBe('On record: crack by the back door.')
    expect(shownReadings(crew.memory.job)).toMatchObject([
      { what: 'photo', text: 'crack by the back door', photos: [PHOTO] },
    ])
    // The question before goes on.
    expect(crew.memory.talk).toEqual(talk)
    expect(crew.say('and grout?').topic).toBe('grout')
  })

  test("another's words are not taken for it, nor is a question, and the photo stays", () => {
    const crew = new Crew()
    crew.say(SHOP)
    crew.say('', { photos: [PHOTO], person: 'helper' })
    crew.say('lot 4471', { person: 'lead' })
    expect(crew.memory.job.readings.at(-1)?.photos).toBeUndefined()
    const asked = new Crew()
    asked.say(SHOP)
    asked.say('', { photos: [PHOTO] })
    expect(asked.say('how much grout').topic).toBe('grout')
    expect(shownReadings(asked.memory.job)).toMatchObject([{ what: 'photo', text: '', photos: [PHOTO] }])
  })

  test('a photo with a question is kept beside the answer, also where the answer has to be asked for', () => {
    const crew = new Crew()
    expect(replyText(crew.say('10x13 shop floor, 18x18 tile', { photos: [PHOTO] }))).toMatch(/1 photo kept with this/)
    expect(crew.memory.job.readings).toMatchObject([{ what: 'photo', photos: [PHOTO] }])
    const empty = new Crew()
    expect(empty.say('how many tiles', { photos: [PHOTO] }).ok).toBe(false)
    expect(empty.memory.job.readings).toMatchObject([{ what: 'photo', text: 'how many tiles', photos: [PHOTO] }])
  })

  test('no photo, no words: as before', () => {
    expect(new Crew().say('').problem?.code).toBe('empty')
    expect(new Crew().say('', { photos: [] }).problem?.code).toBe('empty')
  })

  test('in Spanish', () => {
    const crew = new Crew()
    crew.say('piso de 4 x 5 m, loseta 60x60 cm')
    expect(crew.say('', { photos: [PHOTO] }).answer).toMatch(/^1 foto guardada\. ¿Qué muestra\?/)
  })
})

test('readings and uses that an older version wrote fold as they did', () => {
  const before = new Crew()
  before.say(SHOP)
  const entry = (kind: string, body: unknown, part: number) => ({
    ...{ at: '2026-07-31T16:30:00-05:00', person: 'lead', messageId: 'old', part, kind, version: 1, body },
  })
  const reading: ReadingBody = { what: 'contact', text: 'lifted one, 85%', value: 85 }
  const { job } = [
    entry('reading', reading, 0),
    entry('use', { stuff: 'tile', tiles: 40, total: true }, 1),
    entry('use', { stuff: 'tile', leftBoxes: 9 }, 2),
  ].reduce(fold, before.memory)
  expect(job.readings).toMatchObject([reading])
  expect(job.uses).toMatchObject([{ tiles: 40 }, { leftBoxes: 9 }])
  expect(checkEntry(entry('reading', { ...reading, photos: [PHOTO] }, 0)).ok).toBe(false)
})
