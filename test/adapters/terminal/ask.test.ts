/** `npm run ask`, the real command: flags, exit codes, channels, files, durable memory, pipes. */
import { type SpawnSyncReturns, spawn, spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterEach, expect, test } from 'vitest'
import { listFiles } from '../../../adapters/terminal/ask-files.ts'
import { readFlags } from '../../../adapters/terminal/ask-flags.ts'
import { namesOnce } from '../../../adapters/terminal/save.ts'
import { replyOf } from '../../support/backing.ts'
import { NOW, tools } from '../../support/crew.ts'

const ROOT = path.join(import.meta.dirname, '../../..')
const scripts = (JSON.parse(readFileSync(path.join(ROOT, 'package.json'), 'utf8')) as { scripts: { ask: string } })
  .scripts
const PROGRAM = path.join(ROOT, scripts.ask.replace(/^node /, ''))
const ROOM = '10x13 shop floor, 18x18 tile, 3/16 joint'

const made: string[] = []
afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true })
})
function folder(): string {
  made.push(mkdtempSync(path.join(tmpdir(), 'kneepad-ask-')))
  return made.at(-1)!
}

const run = (args: string[], input = '', env: Record<string, string> = {}): SpawnSyncReturns<string> =>
  spawnSync(process.execPath, [PROGRAM, ...args], { input, encoding: 'utf8', env: { ...process.env, ...env } })

type Said = {
  ok: boolean
  topic: string
  language: string
  text: string
  values: Record<string, number | string>
  assumed: string[]
  warnings: string[]
  sources: string[]
  files: { name: string; media_type: string; text?: string; path?: string }[]
  problem: null | { code: string; message: string; at: [number, number] | null }
}
const objects = (done: SpawnSyncReturns<string>): Said[] =>
  done.stdout
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as Said)

test('the script is one plain node command', () => {
  expect(scripts.ask).toMatch(/^node [\w/.-]+\.js$/)
})

test('a message as words: one object with the keys of the contract, exit 0', () => {
  const done = run(['--json', '--now', NOW, ...ROOM.split(' ')])
  expect(done).toMatchObject({ status: 0, stderr: '' })
  const [said, ...more] = objects(done)
  expect(more).toEqual([])
  expect(Object.keys(said!)).toEqual([
    'ok',
    'topic',
    'language',
    'text',
    'values',
    'assumed',
    'warnings',
    'sources',
    'files',
    'problem',
  ])
  expect(said).toMatchObject({ ok: true, topic: 'tile', language: 'en', problem: null })
  // 10 ft x 13 ft by hand: 3.048 m x 3.9624 m.
  expect(said!.values['area_m2']).toBeCloseTo(3.048 * 3.9624, 9)
  expect(run(['--now', NOW, ROOM]).stdout).toBe(`${said!.text}\n`)
})

test('a message of several lines in one argument is one message', () => {
  const done = run(['--json', '10x13 shop floor\n18x18 tile\n3/16 joint'])
  expect(objects(done)).toHaveLength(1)
  expect(objects(done)[0]!.values['joint_mm']).toBeCloseTo(4.7625, 9)
})

test('what cannot be answered: ok false, no values, a problem, exit 1; the rest is answered all the same', () => {
  const done = run(['--json'], `0x12 floor\n\n${ROOM}\n`)
  expect(done.status).toBe(1)
  const [zero, empty, good] = objects(done)
  expect(zero).toMatchObject({ ok: false, values: {} })
  expect(empty).toMatchObject({ ok: false, values: {}, problem: { code: 'empty', at: null } })
  expect(empty!.problem!.message).not.toBe('')
  expect(good).toMatchObject({ ok: true })
  const [asked] = objects(run(['--json', 'room is 12.6 x 10.3, 18x18 tile']))
  expect(asked).toMatchObject({ ok: false, values: {}, problem: { code: 'question' } })
  expect(asked!.text).toContain(asked!.problem!.message)
  expect(run(['--json', '']).status).toBe(1)
  expect(objects(run(['--json', '']))).toHaveLength(1)
})

test.each([
  [['--wide'], '--wide'],
  [['--now', 'tomorrow', ROOM], 'ISO 8601'],
  [['--now', '2026-03-10T16:30:00', ROOM], 'ISO 8601'],
  [['--now', '2026-13-10T16:30:00-05:00', ROOM], 'ISO 8601'],
  [['--now', '', ROOM], '--now'],
  [['--now'], '--now'],
  [['--channel', '', ROOM], '--channel'],
  [['--json=1', ROOM], '--json'],
])('bad flags %j: exit 2, how they go, no answer', (args, names) => {
  const done = run(args)
  expect(done.status).toBe(2)
  expect(done.stdout).toBe('')
  expect(done.stderr).toContain(names)
  expect(done.stderr).toContain('usage:')
})

test('--now in its spellings', () => {
  const clock = (text: string) => {
    const read = readFlags(['--now', text])
    return read.ok ? read.value.clock : null
  }
  expect(clock(NOW)).toEqual({ now: NOW, zone: null })
  expect(clock('2026-03-10T16:30-05:00')).toEqual({ now: NOW, zone: null })
  expect(clock('2026-03-10T21:30:00Z')).toEqual({ now: '2026-03-10T21:30:00+00:00', zone: null })
  expect(clock('2026-03-10T16:30:00-05:00[America/Chicago]')).toEqual({ now: NOW, zone: 'America/Chicago' })
  expect(clock('2026-03-10T16:30:00-03:00[America/Chicago]')).toBeNull()
})

test('the clock and its offset are those of --now, never of TZ', () => {
  const at = (tz: string) =>
    objects(run(['--json', '--now', NOW, 'set at 2pm, 70F, when can we grout?'], '', { TZ: tz }))[0]!
  expect(at('Asia/Tokyo')).toEqual(at('America/Los_Angeles'))
  expect(at('UTC').values['grout_at']).toMatch(/-05:00$/)
})

test('a channel knows its own talk and no other; without a name it is always the same one', () => {
  const done = run(
    ['--json'],
    `#channel shop ${ROOM}\n#channel yard and grout?\n#channel shop and grout?\nand grout?\n#channel shop\n`,
  )
  const [room, yard, shop, here, empty] = objects(done)
  expect(room!.ok).toBe(true)
  expect(yard!.ok).toBe(false)
  expect(shop).toMatchObject({ ok: true, topic: 'grout' })
  expect(shop!.values['grout_kg']).toBeCloseTo(room!.values['grout_kg'] as number, 9)
  expect(here!.ok).toBe(false)
  expect(empty).toMatchObject({ problem: { code: 'empty' } })
  expect(
    objects(run(['--json', '--channel', 'shop'], `${ROOM}\n#channel shop and grout?`)).map((one) => one.ok),
  ).toEqual([true, true])
})

test('--data keeps the job over runs, the same text twice is two messages, and another channel stays apart', () => {
  const file = path.join(folder(), 'deep.db')
  expect(run(['--json', '--data', file, '--now', NOW, ROOM]).status).toBe(0)
  expect(run(['--json', '--data', file, '--now', NOW, ROOM]).status).toBe(0)
  expect(objects(run(['--json', '--data', file, '--now', NOW, 'and grout?']))[0]).toMatchObject({
    ok: true,
    topic: 'grout',
  })
  expect(run(['--json', '--data', file, '--channel', 'yard', 'and grout?']).status).toBe(1)
})

test('what was logged and the crew’s own words count in later runs on the file, and within a run', () => {
  const file = path.join(folder(), 'jobs.db')
  const log = '260 sf shop floor, 1/2 notch\nused 6 bags on 192 sf\nwhen we say "goop" we mean mortar\n'
  const next = 'start over\ngoop for 200 sf, 1/2 notch\n'
  expect(run(['--json', '--data', file, '--now', NOW], log).status).toBe(0)
  for (const done of [run(['--json', '--data', file, '--now', NOW], next), run(['--json', '--now', NOW], log + next)]) {
    expect(objects(done).at(-1)).toMatchObject({ ok: true, topic: 'mortar' })
    expect(objects(done).at(-1)!.text).toContain('32 sf a bag (6 bags logged)')
  }
})

test('--data: what was printed is kept, even when the process is killed at once', async () => {
  const file = path.join(folder(), 'jobs.db')
  const child = spawn(process.execPath, [PROGRAM, '--json', '--data', file], { stdio: ['pipe', 'pipe', 'inherit'] })
  child.stdin.write(`${ROOM}\n`)
  await new Promise((resolve) => child.stdout.once('data', resolve))
  child.kill('SIGKILL')
  await new Promise((resolve) => child.on('close', resolve))
  expect(objects(run(['--json', '--data', file, 'and grout?']))[0]).toMatchObject({ ok: true, topic: 'grout' })
})

test('--data that cannot be kept: the answer, a warning, and why on standard error', () => {
  const at = folder()
  mkdirSync(path.join(at, 'jobs.db'))
  const done = run(['--json', '--data', path.join(at, 'jobs.db'), ROOM])
  expect(done.status).toBe(0)
  expect(objects(done)[0]!.warnings).toContain(tools.languages.locale('en').phrases['problem.not-kept'])
  expect(done.stderr).toMatch(/^not kept \([a-z-]+\): /)
})

test('answers go out as they are made, not at the end', async () => {
  const child = spawn(process.execPath, [PROGRAM, '--json'], { stdio: ['pipe', 'pipe', 'inherit'] })
  for (let i = 0; i < 3; i++) {
    child.stdin.write(`${ROOM}\n`)
    const [line] = await new Promise<string[]>((resolve) =>
      child.stdout.once('data', (chunk) => resolve([String(chunk)])),
    )
    expect(JSON.parse(line!)).toMatchObject({ ok: true })
  }
  child.stdin.end()
  expect(await new Promise((resolve) => child.on('close', resolve))).toBe(0)
})

test('a reader that goes away ends it quietly', async () => {
  const child = spawn(process.execPath, [PROGRAM], { stdio: ['pipe', 'pipe', 'pipe'] })
  let complaints = ''
  child.stderr.on('data', (chunk) => {
    complaints += chunk
  })
  child.stdin.on('error', () => {})
  child.stdout.once('data', () => child.stdout.destroy())
  const more = setInterval(() => child.stdin.write(`${ROOM}\n`.repeat(50)), 20)
  const code = await new Promise((resolve) => child.on('close', resolve))
  clearInterval(more)
  expect(code).toBe(0)
  expect(complaints).toBe('')
})

test('odd input: Windows line ends, no last line end, bytes that are no text, a line of a million characters', () => {
  expect(objects(run(['--json'], `${ROOM}\r\nand grout?`)).map((one) => one.ok)).toEqual([true, true])
  const bytes = spawnSync(process.execPath, [PROGRAM, '--json'], {
    input: Buffer.from([0xff, 0xfe, 0x00, 0x0a]),
    encoding: 'utf8',
  })
  expect(objects(bytes as SpawnSyncReturns<string>)).toHaveLength(1)
  const long = run(['--json'], `${'9 '.repeat(600_000)}\n${ROOM}\n`)
  expect(objects(long).map((one) => one.problem?.code ?? 'fine')).toEqual(['too-long', 'fine'])
})

const SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 8 8"><rect width="8" height="8"/></svg>'
const drawn = replyOf({
  files: [
    { name: 'floor.svg', media_type: 'image/svg+xml', text: SVG, alt: 'a floor', plain: '##' },
    { name: 'order.csv', media_type: 'text/csv', text: 'a,b\r\n' },
  ],
})

test('files: text as it is, and with --out each picture as SVG and PNG by its path', async () => {
  const bare = await listFiles(drawn, tools, null, namesOnce())
  expect(bare.listed).toEqual([
    { name: 'floor.svg', media_type: 'image/svg+xml', text: SVG },
    { name: 'order.csv', media_type: 'text/csv', text: 'a,b\r\n' },
  ])
  const out = path.join(folder(), 'not', 'there yet')
  const nameOf = namesOnce()
  const { listed } = await listFiles(drawn, tools, out, nameOf)
  expect(listed).toEqual([
    { name: 'floor.svg', media_type: 'image/svg+xml', path: path.join(out, 'floor.svg') },
    { name: 'floor.png', media_type: 'image/png', path: path.join(out, 'floor.png') },
    { name: 'order.csv', media_type: 'text/csv', text: 'a,b\r\n' },
  ])
  expect(readFileSync(listed[0]!.path!, 'utf8')).toBe(SVG)
  expect([...readFileSync(listed[1]!.path!).subarray(0, 4)]).toEqual([0x89, 0x50, 0x4e, 0x47])
  expect((await listFiles(drawn, tools, out, nameOf)).listed.map((one) => one.name)).toEqual([
    'floor-2.svg',
    'floor-2.png',
    'order.csv',
  ])
})

test('--out that cannot be written: the picture as text, and a warning that says why', async () => {
  const at = path.join(folder(), 'file')
  writeFileSync(at, '')
  const { listed, warnings } = await listFiles(drawn, tools, at, namesOnce())
  expect(listed[0]).toEqual({ name: 'floor.svg', media_type: 'image/svg+xml', text: SVG })
  expect(warnings).toHaveLength(1)
})

test('a file name of a reply never leaves the folder', async () => {
  const out = folder()
  const evil = replyOf({ files: [{ name: '../../up.svg', media_type: 'image/svg+xml', text: SVG }] })
  expect((await listFiles(evil, tools, out, namesOnce())).listed[0]!.path).toBe(path.join(out, 'up.svg'))
})
