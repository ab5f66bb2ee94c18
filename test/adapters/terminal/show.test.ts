/** A reply as lines of a terminal. */
import { expect, test } from 'vitest'
import { offersShown, shown } from '../../../adapters/terminal/show.ts'
import { replyOf } from '../../support/backing.ts'

const reply = replyOf({
  answer: '70 tiles',
  details: ['63 places'],
  warnings: ['Mind the dust.'],
  assumed: ['10 % spares', 'stacked'],
  sources: ['geometry'],
  files: [{ name: 'floor.svg', media_type: 'image/svg+xml', text: '<svg/>', plain: '####\n#  #\n####' }],
  offers: [
    { id: 'math', label: 'Workings', say: 'show the math' },
    { id: 'grout', label: 'Grout', say: 'and grout?' },
  ],
})

test('in a pipe: whole lines, no colours, no drawing, nothing to press', () => {
  const look = { width: null, colour: false }
  expect(shown(reply, look)).toEqual([
    '70 tiles',
    '63 places',
    'Caution: Mind the dust.',
    'Assumed: 10 % spares; stacked',
    'Sources: geometry',
  ])
  expect(offersShown(reply, 'Next:', look)).toEqual([])
})

test('on a terminal the floor is drawn under the counts, and what can follow is named', () => {
  const look = { width: 40, colour: false }
  expect(shown(reply, look).slice(0, 6)).toEqual([
    '70 tiles',
    '63 places',
    '####',
    '#  #',
    '####',
    'Caution: Mind the dust.',
  ])
  expect(offersShown(reply, 'Next:', look)).toEqual(['Next: show the math · and grout?'])
})

test('a drawing wider than the terminal is left out, not broken', () => {
  expect(shown(reply, { width: 3, colour: false }).join('\n')).not.toContain('#')
})

test('colours go round each line and change no text', () => {
  const lines = shown(reply, { width: 40, colour: true })
  expect(lines[0]).toBe('\u001b[1m70 tiles\u001b[0m')
  expect(lines.map((line) => line.replace(/\u001b\[\d*m/g, ''))).toEqual(shown(reply, { width: 40, colour: false }))
})

test('quoted control characters never reach the screen', () => {
  expect(shown(replyOf({ answer: 'a\u001b]0;title\u0007b' }), { width: 40, colour: true })[0]).toBe(
    '\u001b[1ma]0;titleb\u001b[0m',
  )
})
