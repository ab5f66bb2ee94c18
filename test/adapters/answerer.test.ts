/** The real answerer over a real store: what every platform stands on. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterEach, expect, test, vi } from 'vitest'
import { createAnswerer, STORE_FILE } from '../../adapters/answerer.ts'
import { reminderText } from '../../adapters/answerer-reminders.ts'
import { type Backing, WORDS } from '../../adapters/contract.ts'
import { createLog } from '../../adapters/logging.ts'
import { openStore } from '../../adapters/stores/open.ts'
import { workSafely } from '../../adapters/working.ts'
import { emptyMemory } from '../../src/jobs/memory.ts'
import type { Message } from '../../src/message.ts'
import { ask, tools } from '../support/crew.ts'

const CHANNEL = 'slack:TCREW0001:CFLOOR001'
const open: (() => Promise<void> | void)[] = []
afterEach(async () => {
  for (const close of open.splice(0).toReversed()) await close()
})

function folder(): string {
  const made = mkdtempSync(path.join(tmpdir(), 'kneepad-answerer-'))
  open.push(() => rmSync(made, { recursive: true, force: true }))
  return made
}

async function backing(dataFolder = folder()): Promise<{ backing: Backing; lines: string[] }> {
  const lines: string[] = []
  const log = createLog('info', [], (line) => void lines.push(line))
  const made = await createAnswerer({ dataFolder, databaseUrl: undefined, log })
  open.push(() => made.close())
  return { backing: made, lines }
}

let said = 0
const message = (text: string, over: Partial<Message> = {}): Message => ({
  text,
  id: `m${++said}`,
  person: 'UASKER001',
  now: '2026-03-10T16:30:00-05:00',
  zone: null,
  ...over,
})

test('a follow-up is answered after a restart, and a message that was answered is not answered again', async () => {
  const data = folder()
  const first = await backing(data)
  const asked = message('10x13 shop floor, 18x18 tile, 3/16 joint')
  const told = await first.backing.answerer.handle(CHANNEL, asked)
  expect(told?.values).toEqual(ask('10x13 shop floor, 18x18 tile, 3/16 joint').values)
  expect(await first.backing.answerer.handle(CHANNEL, asked)).toBeNull()
  await first.backing.close()
  const second = await backing(data)
  expect(await second.backing.answerer.handle(CHANNEL, asked)).toBeNull()
  const after = await second.backing.answerer.handle(CHANNEL, message('and grout?'))
  expect(after).toMatchObject({ ok: true, topic: 'grout' })
  expect(after?.values['grout_kg']).toBeCloseTo(told?.values['grout_kg'] as number, 9)
})

test('another channel knows nothing of it', async () => {
  const { answerer } = (await backing()).backing
  await answerer.handle(CHANNEL, message('10x13 shop floor, 18x18 tile'))
  expect(await answerer.handle('slack:TCREW0001:COTHER001', message('and grout?'))).toMatchObject({ ok: false })
})

test('a button shows the workings of the answer it stands under, though the channel has moved on', async () => {
  const { answerer } = (await backing()).backing
  const about = '10x13 shop floor, 18x18 tile, 3/16 joint'
  const told = await answerer.handle(CHANNEL, message(about))
  const offer = told?.offers.find((one) => one.id === 'math') ?? told?.offers[0]
  expect(offer).toBeDefined()
  await answerer.handle(CHANNEL, message('5x8 mudroom, 8x48 plank'))
  const pressed = await answerer.press(CHANNEL, { id: offer!.id, say: offer!.say, about }, message(offer!.say))
  expect(pressed).toMatchObject({ ok: true, topic: 'tile' })
  expect(pressed?.values['tile_count']).toBe(told?.values['tile_count'])
  const again = message(offer!.say)
  await answerer.press(CHANNEL, { id: offer!.id, say: offer!.say, about }, again)
  expect(await answerer.press(CHANNEL, { id: offer!.id, say: offer!.say, about }, again)).toBeNull()
})

test('a store that cannot be written still lets the answer out, and says so', async () => {
  const data = folder()
  mkdirSync(path.join(data, STORE_FILE))
  const { backing: broken, lines } = await backing(data)
  const reply = await broken.answerer.handle(CHANNEL, message('10x13 shop floor, 18x18 tile'))
  expect(reply).toMatchObject({ ok: true, topic: 'tile' })
  expect(reply?.warnings.at(-1)).toBe(tools.languages.locale('en').phrases['problem.not-kept'])
  expect(lines.join('')).toContain('an answer was not kept')
  await expect(broken.keep('a', '1')).rejects.toThrow()
})

test('what a button stands for is kept over a restart', async () => {
  const data = folder()
  const first = await backing(data)
  await first.backing.keep('buttons:x', '{"a":[1]}')
  await first.backing.close()
  const second = await backing(data)
  expect(await second.backing.recall('buttons:x')).toBe('{"a":[1]}')
  expect(await second.backing.recall('buttons:y')).toBeNull()
})

test('a channel is shown in the language and the units of its last message', async () => {
  const { answerer } = (await backing()).backing
  expect(await answerer.setup(CHANNEL)).toEqual({ language: 'en', units: 'feet and inches' })
  await answerer.handle(CHANNEL, message('piso de 3.5 x 4.2 m, loseta de 45x45 cm, junta de 5 mm'))
  expect(await answerer.setup(CHANNEL)).toEqual({ language: 'es', units: 'métrico' })
})

test('every language has every word, without a place that nothing fills', async () => {
  const { backing: made } = await backing()
  expect(made.languages[0]).toBe('en')
  for (const language of made.languages)
    for (const word of WORDS) expect(made.words(language)[word], `${language} ${word}`).toMatch(/\S/)
  expect(made.words('xx')).toEqual(made.words('en'))
})

test('every tile size on offer is read as a tile, every material has a name', async () => {
  const { choices } = (await backing()).backing
  expect(choices.sizes.length).toBeGreaterThan(10)
  for (const size of choices.sizes) {
    const { values } = ask(`10x13 shop floor, ${size} tile`)
    const [width, length] = size.replace(' cm', '').split('x').map(Number)
    const mm = size.endsWith('cm') ? 10 : 25.4
    expect(values['tile_length_mm'], size).toBeCloseTo(Math.max(width!, length!) * mm, 6)
    expect(values['tile_width_mm'], size).toBeCloseTo(Math.min(width!, length!) * mm, 6)
  }
  expect(choices.materials).toContain(tools.settings.materials['sanded-grout']?.name)
})

test('what a crew logged is offered at once to the other channels of its workspace, under buttons too, and to no other', async () => {
  const { answerer } = (await backing()).backing
  const NEXT = 'slack:TCREW0001:CNEXT0001'
  const mortar = 'mortar for 200 sf, 1/2 notch'
  const told = async (channel: string) => (await answerer.handle(channel, message(mortar)))?.details.join('\n')
  expect(await told(NEXT)).not.toContain('logged')
  await answerer.handle(CHANNEL, message('260 sf shop floor, 1/2 notch'))
  await answerer.handle(CHANNEL, message('used 6 bags on 192 sf'))
  expect(await told(NEXT)).toContain('32 sf a bag (6 bags logged)')
  const say = 'how many bags, 1/2 notch'
  const pressed = await answerer.press(NEXT, { id: 'mortar', say, about: '150 sf mudroom' }, message(say))
  expect(pressed?.details.join('\n')).toContain('32 sf a bag (6 bags logged)')
  expect(await told('slack:TOTHER001:CFLOOR001')).not.toContain('logged')
  await answerer.handle(CHANNEL, message('undo'))
  expect(await told(NEXT)).not.toContain('logged')
})

test('a picture becomes a PNG', async () => {
  const { backing: made } = await backing()
  const png = await made.picture(
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 8 8"><rect width="8" height="8"/></svg>',
  )
  expect([...png.slice(0, 4)]).toEqual([0x89, 0x50, 0x4e, 0x47])
  await expect(made.picture('no picture')).rejects.toThrow()
})

test('a reminder that is due goes to its channel, once', async () => {
  const data = folder()
  const store = await openStore<null>(
    { in: 'file', file: path.join(data, STORE_FILE) },
    { fold: () => null, emptyMemory: null },
  )
  const kept = await store.remind(CHANNEL, { id: 'r1', dueMs: Date.now() - 5000, body: { text: 'Time to grout.' } })
  expect(kept.ok).toBe(true)
  await store.close()
  const { backing: made } = await backing(data)
  const deliver = vi.fn(async () => 'sent' as const)
  const stop = made.remind!(deliver)
  await vi.waitFor(() => expect(deliver).toHaveBeenCalled(), 5000)
  await stop()
  expect(deliver.mock.calls).toEqual([[CHANNEL, 'Time to grout.', 'r1']])
})

test('a reminder that comes late says so in its language', () => {
  expect(reminderText({ text: 'Time to grout.' }, { late: true }, tools)).toBe('Late, I was away: Time to grout.')
  expect(reminderText({ text: 'Ya.', language: 'es' }, { late: true }, tools)).toBe('Va tarde, estuve apagado: Ya.')
})

test('a bug gives one plain sentence, its stack to the log, and nothing is kept of the message', () => {
  const bugs: unknown[] = []
  const broken = { ...tools, settings: { ...tools.settings, tiles: null as never, materials: null as never } }
  const { reply, entries } = workSafely(message('10x13 shop floor, 18x18 tile'), emptyMemory, broken, (bug) =>
    bugs.push(bug),
  )
  expect(bugs).toHaveLength(1)
  expect(reply).toMatchObject({ ok: false, values: {}, problem: { code: 'internal' } })
  expect(reply.answer).toBe(tools.languages.locale('en').phrases['problem.internal'])
  expect(entries).toEqual([])
})

test('a file that is no store is left as it lies', async () => {
  const data = folder()
  writeFileSync(path.join(data, STORE_FILE), 'not a database at all, but somebody’s notes\n'.repeat(200))
  const { backing: made } = await backing(data)
  const reply = await made.answerer.handle(CHANNEL, message('10x13 shop floor, 18x18 tile'))
  expect(reply?.ok).toBe(true)
  expect(reply?.warnings).toContain(tools.languages.locale('en').phrases['problem.not-kept'])
})
