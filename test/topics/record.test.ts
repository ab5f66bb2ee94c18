/** Sign-off and change order, from message to page: what stands on it, against sums worked out beside it. */
import { describe, expect, test } from 'vitest'
import type { Reply } from '../../src/reply.ts'
import { replyText } from '../../src/speak.ts'
import { Crew } from '../support/crew.ts'

const SHOP = '10x13 shop floor, 18x18 tile, 3/16 joint, 8 a box'
const SF = 0.09290304

/** Says each line on its own day and hour. */
function days(...said: readonly (readonly [now: string, text: string, person?: string])[]): {
  crew: Crew
  reply: Reply
} {
  const crew = new Crew()
  const replies = said.map(([now, text, person]) => crew.say(text, { now, ...(person ? { person } : {}) }))
  return { crew, reply: replies.at(-1)! }
}
const page = (reply: Reply): string => {
  const file = reply.files.find(({ media_type }) => media_type === 'image/svg+xml')
  return [...(file?.text ?? '').matchAll(/<text [^>]*>([^<]*)</g)]
    .map((m) => m[1]!)
    .join('\n')
    .replaceAll('&#39;', "'")
}
const csv = (reply: Reply): string => reply.files.find(({ media_type }) => media_type === 'text/csv')?.text ?? ''

const MON = '2026-03-09T08:00:00-05:00'
const TUE = '2026-03-10T09:30:00-05:00'
const WED = '2026-03-11T16:00:00-05:00'

describe('sign-off', () => {
  const { reply } = days(
    [MON, 'call it bakery'],
    [MON, SHOP],
    [MON, '1/2 notch'],
    [MON, 'RH 74', 'Ana'],
    [TUE, 'used 3 bags on 100 sf'],
    [TUE, 'set 40 tiles so far'],
    [TUE, 'broke 2 tiles'],
    [TUE, 'lifted one, 85% coverage', 'Ben'],
    [TUE, 'owner says she wants the half offset anyway', 'Ben'],
    [WED, 'set at 2pm, when can we walk on it'],
    [WED, 'sign-off'],
  )

  test('is a page and a table, and the same in words', () => {
    expect(reply.files.map((f) => f.name)).toEqual(['job-record.svg', 'record.csv'])
    expect(reply.files[0]?.alt).toMatch(/3 readings, lines to sign/)
    expect(replyText(reply)).toMatch(/85% coverage/)
  })

  test('names the job, room, tile, joint, counts, what was used against the plan', () => {
    const words = page(reply)
    expect(words).toMatch(/Job record, bakery/)
    for (const word of ["shop floor 10' x 13'", '130 sf', '18x18', '3/16 in', '40 tiles set', '2 tiles broken'])
      expect(words).toContain(word)
    expect(words).toMatch(/Tiles 18x18\n70\n/)
    expect(words).toMatch(/Boxes 18x18\n9\n/)
    // 100 sf on 3 bags
    expect(words).toMatch(/Mortar bags\n\d+\n3\n33 sf a bag/)
  })

  test('every reading stands there with who and the whole date, waits and lines to sign below', () => {
    const words = page(reply)
    expect(words).toMatch(/RH 74\nAna\nMar 9, 2026, 8:00 AM/)
    expect(words).toMatch(/lifted one, 85% coverage\nBen\nMar 10, 2026, 9:30 AM/)
    expect(words).toMatch(/Walk on it from Mar \d+, 2026/)
    expect(words).toMatch(/Cautions\nWet cement burns/)
    expect(words).toMatch(/For the crew.*\nDate\nFor the owner.*\nDate/)
    expect(words).not.toMatch(/today|yesterday/)
    expect(csv(reply)).not.toMatch(/today|yesterday/)
  })

  test('a photo is named on the page, its place stands in the table', () => {
    const crew = new Crew()
    crew.say(SHOP)
    crew.say('lot 4471', { photos: [{ id: 'F1', name: 'label.jpg', url: 'https://files.example/F1' }] })
    const signed = crew.say('sign off')
    expect(page(signed)).toMatch(/lot 4471 \(photo label\.jpg\)/)
    expect(csv(signed)).toMatch(/photo label\.jpg,https:\/\/files\.example\/F1/)
  })

  test('rooms tiled otherwise stand with their own tile; nothing set leaves lines to fill in', () => {
    const { reply: two } = days(
      [MON, SHOP],
      [MON, '8x12 mudroom, 8x48 plank, 1/8 joint, third offset'],
      [MON, 'sign-off'],
    )
    expect(page(two)).toMatch(/mudroom 8' x 12'\n96 sf\n8x48\n1\/8 in\n1\/3 offset/)
    expect(page(two)).toMatch(/Walk on it from: _+/)
  })

  test('of an empty job it is an empty page, and no failure', () => {
    const empty = new Crew().say('sign-off')
    expect(empty.ok).toBe(true)
    expect(page(empty)).toMatch(/For the owner/)
  })

  test('in Spanish', () => {
    const { reply: firmada } = days(
      [MON, 'piso de 4 x 5 m, loseta 60x60 cm, junta 3 mm'],
      [TUE, 'lote 4471', 'Luz'],
      [WED, 'acta de entrega'],
    )
    expect(page(firmada)).toMatch(/Registro de obra/)
    expect(page(firmada)).toMatch(/lote 4471\nLuz\n10 mar 2026/)
    expect(page(firmada)).toMatch(/Por el dueño: nombre y firma/)
  })
})

describe('change order', () => {
  const start = [
    [MON, SHOP],
    [MON, 'mark this as quote'],
    [TUE, 'add the closet 3x4', 'Ben'],
    [WED, 'make it 24x24', 'Ana'],
  ] as const

  test('since a point that was marked: quantities by tile size, who changed what, page and table', () => {
    const { reply } = days(...start, [WED, 'change order since quote'])
    expect(reply.answer).toMatch(/Since “quote”: Area 130 sf to 142 sf \(\+12 sf\)/)
    expect(reply.answer).toMatch(/Tiles 18x18 70 to 0 \(-70\)/)
    expect(reply.values['area_m2']).toBeCloseTo(142 * SF, 6)
    expect(replyText(reply)).toMatch(/Ben, yesterday.*closet/)
    expect(reply.files.map((f) => f.name)).toEqual(['change-order.svg', 'change-order.csv'])
    expect(page(reply)).toMatch(/Against “quote” \(Mar 9, 2026, 8:00 AM\)/)
    expect(page(reply)).toMatch(/Area\n130 sf\n142 sf\n\+12 sf/)
    expect(csv(reply)).toMatch(/^What,Then,Now,Difference\r\nArea,12\.08,13\.19,1\.11\r\n/)
  })

  test('since a day: as the job stood when it began', () => {
    const { reply } = days(...start, [WED, 'change order since tuesday'])
    expect(reply.answer).toMatch(/Area 130 sf to 142 sf/)
    expect(reply.answer).toMatch(/Tiles 18x18 70 to 0/)
    const { reply: later } = days(...start, [WED, 'change order since yesterday at 11am'])
    expect(later.answer).not.toMatch(/Area/)
    // 142 sf of 18 in tile before the change of tile.
    expect(later.answer).toMatch(/Tiles 18x18 76 to 0/)
  })

  test('since a tile: as it stood while that tile was the job’s', () => {
    const { reply } = days(...start, [WED, 'change order since the 18x18'])
    expect(reply.answer).toMatch(/^Since the 18x18: /)
    expect(reply.answer).not.toMatch(/Area/)
    expect(reply.answer).toMatch(/Tiles 18x18 76 to 0/)
    expect(replyText(reply)).toMatch(/24x24 \(before: .*18x18/)
  })

  test('since the start, and since a time before the job began: as it first stood', () => {
    const { reply } = days(...start, [WED, 'change order since the start'])
    expect(reply.answer).toMatch(/^Since the start \(Monday 8 AM\): Area 130 sf to 142 sf/)
    expect(days(...start, [WED, 'change order since last friday']).reply.answer).toMatch(/^Since the start/)
    expect(days(...start, [WED, 'difference since this morning']).reply.answer).not.toMatch(/Area/)
  })

  test('the last point where none is named; one nobody marked is said', () => {
    const { reply } = days(...start, [WED, 'change order'])
    expect(reply.answer).toMatch(/^Since “quote”/)
    const { reply: other } = days(...start, [WED, 'change order since the drawing'])
    expect(other.answer).toMatch(/No point is called “drawing” here\. There is: quote/)
    expect(days([MON, SHOP], [MON, 'change order']).reply.answer).toMatch(/No point is marked/)
  })

  test('what was undone is no change', () => {
    const { reply } = days(
      [MON, SHOP],
      [MON, 'mark this as quote'],
      [TUE, 'add the closet 3x4'],
      [TUE, 'undo'],
      [WED, 'change order since quote'],
    )
    expect(reply.answer).toBe('No quantity has changed since “quote”.')
    expect(reply.files).toEqual([])
  })

  test('in Spanish, by a point and by a day', () => {
    const lines = [
      [MON, 'piso de 4 x 5 m, loseta 60x60 cm, junta 3 mm'],
      [MON, 'marca esto como presupuesto'],
      [TUE, 'agrega el baño de 2 x 2 m'],
    ] as const
    expect(days(...lines, [WED, 'orden de cambio desde presupuesto']).reply.answer).toMatch(/Área de 20 m² a 24 m²/)
    expect(days(...lines, [WED, 'orden de cambio desde el martes']).reply.answer).toMatch(/Área de 20 m² a 24 m²/)
  })
})
