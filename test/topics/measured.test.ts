/** What was measured, told in a message and judged. Sources beside the values. */
import { expect, test } from 'vitest'
import { replyText } from '../../src/speak.ts'
import { ask, Crew } from '../support/crew.ts'

const IN = 25.4

test('joists that pass in deflection and fail in bending are told so — references 13.7', () => {
  const reply = ask('2x10 joists 16 oc, 15 ft span, spf no 2, ok for tile?')
  expect(reply.answer).toMatch(/^No: it fails in bending/)
  expect(reply.values['deflection_mm']).toBeCloseTo(0.439 * IN, 1)
  expect(Math.round(reply.values['deflection_ratio'] as number)).toBe(410)
  expect(reply.values['bending_ratio']).toBeCloseTo(1262 / 1107, 2)
  expect(reply.values['deflection_limit']).toBe(360)
  expect(reply.warnings.join(' ')).toContain('licensed designer')
})

test.each([
  // 2x10 SPF at 16 in, 20 psf dead spans 14-1: references 8.4.
  ['2x10 spf #2 joists at 16 oc spanning 14 ft ok for tile?', /^Yes/],
  ['2x10 spf #2 joists at 16 oc spanning 14 ft 3 in ok for tile?', /^No/],
  ['2x10 spf #2 joists at 16 oc spanning 14 ft ok for marble?', /^No/],
  ['are 2x10s at 16 oc over 14 ft ok for porcelain', /^Depends/],
  ['2x10 southern pine no 2 joists 16 oc 12 ft span tile ok', /^Depends/],
  ['2x8 doug fir no 2 joists 16 oc 8 ft span ok for tile', /^Depends/],
  ['2x10 spf no 3 joists 16 oc 12 ft span for tile ok?', /^Depends/],
] as const)('%s', (say, verdict) => expect(ask(say).answer).toMatch(verdict))

test('an unknown species gets no verdict and no plain yes or no', () => {
  for (const say of ['2x12 joists 12 oc 8 ft span fine for tile?', 'my 2x6 joists 24 oc 12 ft span good for tile?'])
    expect(ask(say).answer).toMatch(/^Depends/)
})

test('a span that was left out is asked for, and the answer is used', () => {
  const crew = new Crew()
  expect(crew.say('2x10 spf no 2 joists 16 oc ok for tile?')).toMatchObject({
    ok: false,
    problem: { code: 'question' },
  })
  expect(crew.say('14 ft span').answer).toMatch(/^Yes/)
})

test.each([
  ['gaps 1/16 3/32 1/8 under a 10ft edge, 24x24 tile', /^Yes/, 1 / 8],
  ['gaps 1/16 3/16 1/8 under a 10 ft straightedge for 24x24', /^No/, 3 / 16],
  ['gaps 1/16, 3/16 and 1/8 under a 10 ft straightedge for 6x6', /^Yes/, 3 / 16],
  ['gaps 1/16 1/8 under a 6 ft level, 24x24', /^Depends/, 1 / 8],
] as const)('%s', (say, verdict, inches) => {
  const reply = ask(say)
  expect(reply.answer).toMatch(verdict)
  expect(reply.values['max_gap_mm']).toBeCloseTo(inches * IN, 6)
})

test('rows of heights: a single low point of 5 mm is found, with its place and its filler', () => {
  const rows = ['0 0 0 0 0 0 0', '0 0 0 0 0 0 0', '0 0 0 -5 0 0 0', '0 0 0 0 0 0 0', '0 0 0 0 0 0 0']
  const reply = ask(`heights in mm every 1 m, 600x600 tile:\n${rows.join('\n')}`)
  expect(reply.answer).toMatch(/^No/)
  expect(reply.values['max_gap_mm']).toBeCloseTo(5, 6)
  // By hand: a bilinear pit of 5 mm over four cells of 1 m² holds 5 x 4 / 4 = 5 l to level.
  expect(reply.values['fill_level_l']).toBeCloseTo(5, 6)
  expect(reply.values['area_m2']).toBeCloseTo(24, 9)
})

test('a sloping plane of heights is flat, and level takes the wedge', () => {
  const rows = [0, 1, 2, 3].map((y) => [0, 4, 8, 12].map((x) => x + y).join(' '))
  const reply = ask(`heights mm every 1 m, 600x600 tile\n${rows.join('\n')}`)
  expect(reply.answer).toMatch(/^Yes/)
  expect(reply.values['max_gap_mm']).toBeCloseTo(0, 6)
  expect(reply.values['fill_l']).toBeCloseTo(0, 6)
  // Highest reading 15, mean 7.5: 7.5 mm over 9 m².
  expect(reply.values['fill_level_l']).toBeCloseTo(67.5, 6)
})

test('rows without a spacing are asked about; ragged or wild rows are a problem, never a crash', () => {
  expect(ask('floor heights in 16ths\n0 1 2\n1 2 3\n2 3 4')).toMatchObject({ ok: false, problem: { code: 'question' } })
  for (const rows of ['0 1 2\n1 2', '1/0 2\n3 4', '9999999 1\n2 3', `${'1 2 3\n'.repeat(900)}`])
    expect(() => ask(`heights in mm every 1 ft\n${rows}`)).not.toThrow()
})

test('3-4-5 marks and diagonals', () => {
  expect(ask('3-4-5 check measures 5 ft').answer).toMatch(/^Square/)
  // By hand: cos = (60.25² - 36² - 48²) / (2 x 36 x 48) = 0.0087; 48 in x 0.0087 = 0.4175 in.
  expect(ask('3-4-5 measures 60 1/4 in').values['taper_mm']).toBeCloseTo(0.4175 * IN, 1)
  const reply = ask("diagonals 16'4 and 16'4, room 12' x 11'1")
  expect(reply.values['out_of_square_deg']).toBeCloseTo(0, 9)
  expect(ask('diagonals 16 ft and 16 ft 1 in')).toMatchObject({ ok: false, problem: { code: 'question' } })
})

test('three 2 x 2 in voids: 95.8 % by number, and each too large — references 13.13', () => {
  const reply = ask('three 2x2 voids on a 12x24 in the shower')
  expect(reply.values['contact_pct']).toBeCloseTo(95.83, 2)
  expect(reply.answer).toContain('3 voids are over 2 in²')
})

test.each([
  ['3 tiles lifted 85 90 88 percent, shower, pass?', /^No/, 87.6667],
  ['lifted 3 tiles 85 90 88 percent in the hallway, good?', /^Yes/, 87.6667],
  ['lifted two 85 and 90% in a bedroom, ok?', /^Not a check yet/, 87.5],
  ['pulled two tiles, 50 and 60 percent, bedroom', /^No, and stop/, 55],
  ['lifted 3: 85 90 88 percent good?', /^Depends/, 87.6667],
] as const)('%s', (say, verdict, average) => {
  const reply = ask(say)
  expect(reply.answer).toMatch(verdict)
  expect(reply.values['contact_pct']).toBeCloseTo(average, 3)
})

// ANSI A108.02-2017 s. 4.3.8, reported: three times the variation (references 4.6); 4.8 with warp.
test.each([
  ['tiles vary 1/16, what joint', 3 / 16],
  ['calipers read 17 15/16, 18, 17 31/32 on the tiles, least joint?', 3 / 16],
  ['rectified 24x24 in running bond, sizes vary 1/64, warp 1/32, smallest joint', 5 / 32],
] as const)('%s: %d in', (say, inches) => {
  expect(ask(say).values['min_joint_mm']).toBeCloseTo(inches * IN, 4)
})

test.each([
  ['tiles vary by 1/32, is 1/8 joint ok', /^Yes/],
  ['tiles vary by 1/16, is 1/8 joint ok', /^No/],
  ['1/4 x 1/4 trowel ok for 12x24', /^(No|Depends)/],
  ['3/8 notch enough for 24x24?', /^No/],
  ['1/2 x 1/2 trowel big enough for 18x18?', /^Yes/],
] as const)('%s', (say, verdict) => expect(ask(say).answer).toMatch(verdict))

test('lippage with measured warp, test holes, screed days', () => {
  expect(ask('1/8 joint with 1/32 warp how much lippage').values['max_lippage_mm']).toBeCloseTo(IN / 16, 6)
  // ASTM F2170, reported: references 6.20.
  expect(ask('how many rh holes for 3500 sf').values['test_holes']).toBe(6)
  expect(ask('how deep rh holes in a 4 inch slab').values['hole_depth_mm']).toBeCloseTo(1.6 * IN, 6)
  // NHBC 9.3.5 (2022): references 5.6.
  expect(ask('how long does a 60 mm anhydrite screed dry').values['slab_days']).toBe(80)
})

test('a check keeps to a few lines and names its source', () => {
  for (const say of [
    'tiles vary 1/16, what joint',
    'gaps 1/16 3/32 1/8 under a 10ft edge',
    'how many rh holes for 3500 sf',
  ]) {
    const reply = ask(say)
    expect(replyText(reply).split('\n').length).toBeLessThanOrEqual(8)
    expect(reply.sources.length).toBeGreaterThan(0)
  }
})

test.each([
  ['slab rh readings 72 74 75, ok to tile?', /^Yes/, 75],
  ['slab rh 3 readings 72 74 79, good to tile?', /^Depends/, 79],
  ['concrete rh probes read 72 84 79, can we tile', /^No/, 84],
] as const)('%s', (say, verdict, worst) => {
  const reply = ask(say)
  expect(reply.answer).toMatch(verdict)
  expect(reply.values['rh_pct']).toBe(worst)
})

test('test holes that were set are held against the area — references 6.20', () => {
  expect(ask('only did 2 rh tests on 1500 sf of slab, enough?').answer).toMatch(/^No, 2 are too few: 4 test holes/)
  expect(ask('set 6 rh probes in a 3500 sf slab, enough?').answer).toMatch(/^Yes, 6 are enough/)
})

test('an exterior movement joint by spacing and yearly range — references 4.17', () => {
  const wide = ask('how wide an expansion joint outside, 12 ft apart, 115 F range')
  expect(wide.values['movement_width_mm']).toBeCloseTo((9 / 16) * IN, 4)
  expect(ask('how wide is an exterior movement joint 8 ft apart').values['movement_width_mm']).toBeCloseTo(
    (3 / 8) * IN,
    4,
  )
})

test('tubes of sealant — references 13.15', () => {
  // 60 ft and a tenth over, 24.4 ft a tube of 300 ml at 1/4 x 1/4 in: 2.7, so 3.
  const reply = ask('how many tubes of caulk for 60 ft of joint 1/4 wide 1/4 deep')
  expect(reply.values['sealant_tubes']).toBe(3)
})
