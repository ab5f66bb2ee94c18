/** `npm start` without tokens: as a pipe, and under a real pseudo-terminal. */
import { spawn, spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { PassThrough } from 'node:stream'
import { text } from 'node:stream/consumers'
import { afterEach, expect, test } from 'vitest'
import { createLog } from '../../../adapters/logging.ts'
import { connectTerminal } from '../../../adapters/terminal/connect.ts'
import { LOCALES } from '../../../src/language/all.ts'
import { replyOf, testBacking } from '../../support/backing.ts'
import { ask } from '../../support/crew.ts'
import { runProgram } from '../../support/process.ts'

const PROGRAM = path.join(import.meta.dirname, '../../../adapters/start.js')
const TYPIST = path.join(import.meta.dirname, '../../support/typist.py')
const ROOM = '10x13 shop floor, 18x18 tile, 3/16 joint'

const made: string[] = []
afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true })
})
function folder(): string {
  made.push(mkdtempSync(path.join(tmpdir(), 'kneepad-terminal-')))
  return made.at(-1)!
}
const envOf = (home: string, more: Record<string, string> = {}) => ({
  PATH: process.env['PATH'] ?? '',
  HOME: home,
  KNEEPAD_DATA: path.join(home, 'data'),
  TERM: 'xterm',
  ...more,
})

const pipe = (home: string, input: string, more: Record<string, string> = {}) =>
  spawnSync(process.execPath, [PROGRAM], { cwd: home, env: envOf(home, more), input, encoding: 'utf8' })

test('piped input is answered line by line, without prompt, hint or colours, and the job is kept', () => {
  const home = folder()
  const first = pipe(home, `${ROOM}\n\nand grout?`, { FORCE_COLOR: '1' })
  expect(first.status).toBe(0)
  expect(first.stderr).toBe('')
  expect(first.stdout.startsWith(`${ask(ROOM).answer}\n`)).toBe(true)
  expect(first.stdout).not.toContain('\u001b')
  expect(first.stdout.split('\n\n').filter((part) => part !== '')).toHaveLength(3)
  const second = pipe(home, 'and grout?\n')
  expect(second.stdout.split('\n')[0]).toMatch(/grout/)
  expect(second.stdout.split('\n')[0]).toBe(first.stdout.split('\n\n')[2]?.split('\n')[0])
})

test('a data folder that cannot be used is said plainly', () => {
  const home = folder()
  const done = pipe(home, ROOM, { KNEEPAD_DATA: '/dev/null/kneepad' })
  expect(done.status).toBe(1)
  expect(done.stdout).toBe('')
  expect(done.stderr).toContain('could not start')
})

test('a reader that goes away ends it quietly', async () => {
  const home = folder()
  const child = spawn(process.execPath, [PROGRAM], { cwd: home, env: envOf(home), stdio: ['pipe', 'pipe', 'pipe'] })
  let complaints = ''
  child.stderr.on('data', (chunk) => {
    complaints += chunk
  })
  child.stdin.on('error', () => {})
  child.stdout.once('data', () => child.stdout.destroy())
  const more = setInterval(() => child.stdin.write(`${ROOM}\n`), 20)
  const code = await new Promise((resolve) => child.on('close', resolve))
  clearInterval(more)
  expect(code).toBe(0)
  expect(complaints).toBe('')
})

test('SIGTERM ends it cleanly while it waits', async () => {
  const home = folder()
  const child = runProgram(PROGRAM, { KNEEPAD_DATA: path.join(home, 'data') }, home)
  // A first answer shows that it runs, and that it waits for the next line.
  child.type('oven')
  await expect.poll(() => child.lines.at(-1), { timeout: 60_000 }).toBe('')
  const said = child.lines.length
  child.kill('SIGTERM')
  expect(await child.ended).toEqual({ code: 0, signal: null })
  expect(child.lines).toHaveLength(said)
}, 90_000)

type Step = [wait: string, type: string] | [wait: string, signal: number, 'kill']

/** Types at a pseudo-terminal. @returns what the screen got, the exit code, and how many steps never had their turn */
function type(home: string, steps: Step[], more: Record<string, string> = {}, columns = 60) {
  const done = spawnSync('python3', [TYPIST], {
    cwd: home,
    env: envOf(home, more),
    input: JSON.stringify({ argv: [process.execPath, PROGRAM], columns, steps }),
    encoding: 'utf8',
  })
  const [, screen = '', code, left] = /^([\s\S]*)\n(-?\d+) (\d+)$/.exec(done.stdout) ?? []
  return { screen, code: Number(code), left: Number(left), error: done.stderr }
}

const UP = '\u001b[A'
const python = spawnSync('python3', ['-c', 'import pty']).status === 0

test.skipIf(!python)(
  'typed: a hint, line editing, wrapped and coloured answers, history over a restart, Ctrl-D',
  () => {
    const home = folder()
    const first = type(home, [
      ['> ', '10x13 shop flo\u007f\u007f\u007ffloor, 18x18 tile, 3/16 joint\r'],
      ['Source', '\u0004'],
    ])
    expect(first).toMatchObject({ code: 0, left: 0, error: '' })
    const { phrases } = LOCALES[0]!
    for (const name of ['hint', 'example-1', 'example-2', 'example-3', 'hint-leave'])
      expect(first.screen).toContain(phrases[`shell.${name}`])
    expect(first.screen).toContain(`\u001b[1m${ask(ROOM).answer}\u001b[0m`)
    const lines = first.screen.split('\r\n').map((line) => line.replace(/\u001b\[[\d;]*[A-Za-z]/g, ''))
    for (const line of lines.slice(lines.findIndex((one) => one.startsWith('70 tiles'))))
      expect(line.length).toBeLessThanOrEqual(60)
    const history = path.join(home, 'data', 'history')
    expect(readFileSync(history, 'utf8')).toBe(`${ROOM}\n`)
    expect(statSync(history).mode & 0o777).toBe(0o600)

    const second = type(home, [
      ['> ', UP],
      ['3/16 joint', '\r'],
      ['Source', '\u0004'],
    ])
    expect(second).toMatchObject({ code: 0, left: 0 })
    expect(second.screen).toContain(ask(ROOM).answer)
  },
)

test.skipIf(!python)('typed: Ctrl-C drops the line, then says how to leave, then leaves', () => {
  const home = folder()
  const { code, left, screen } = type(home, [
    ['> ', '10x13 shop'],
    ['10x13 shop', '\u0003'],
    ['> ', '\u0003'],
    ['again', 'water for half a bag\r'],
    ['Source', '\u0003'],
    ['again', '\u0003'],
  ])
  expect({ code, left }).toEqual({ code: 0, left: 0 })
  expect(screen).toContain(LOCALES[0]!.phrases['shell.interrupted'])
  expect(readFileSync(path.join(home, 'data', 'history'), 'utf8')).toBe('water for half a bag\n')
})

test.skipIf(!python)('typed: no colours with NO_COLOR or a dumb terminal; SIGTERM leaves the terminal in order', () => {
  for (const more of [{ NO_COLOR: '1' }, { TERM: 'dumb' }, { NO_COLOR: '1', FORCE_COLOR: '1' }] as Record<
    string,
    string
  >[]) {
    const home = folder()
    const { screen, code, left } = type(
      home,
      [
        ['> ', `${ROOM}\r`],
        ['Source', 15, 'kill'],
      ],
      more,
    )
    expect({ code, left }).toEqual({ code: 0, left: 0 })
    expect(screen).toContain(ask(ROOM).answer)
    expect(screen).not.toMatch(/\u001b\[[\d;]*m/)
    expect(existsSync(path.join(home, 'data', 'jobs.db'))).toBe(true)
  }
})

test('the examples of the hint are answered, in each language', () => {
  for (const { code, phrases } of LOCALES)
    for (const name of ['example-1', 'example-2', 'example-3']) {
      const reply = ask(phrases[`shell.${name}`]!)
      expect(reply.ok, `${code} ${name}: ${reply.answer}`).toBe(true)
      expect(reply.language).toBe(code)
    }
})

const SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 8 8"><rect width="8" height="8"/></svg>'
const FILES = [
  { name: 'floor.svg', media_type: 'image/svg+xml', text: SVG },
  { name: 'order.csv', media_type: 'text/csv', text: 'a,b\r\n' },
]

async function piped(
  data: string,
  messages: string,
  backing = testBacking({ answer: () => replyOf({ files: FILES }) }),
) {
  const [input, output] = [new PassThrough(), new PassThrough()]
  const said = text(output)
  input.end(messages)
  await connectTerminal(
    backing,
    createLog('silent', [], () => {}),
    { folder: data, env: {}, input, output },
  )
  output.end()
  return said
}

test('pictures are saved as SVG and PNG, tables as they are, and each path is printed; none is written over', async () => {
  const data = folder()
  const screen = await piped(data, 'a\nb\n')
  const paths = [...screen.matchAll(/^Saved: (.*)$/gm)].map((found) => found[1]!)
  expect(paths.map((one) => path.extname(one))).toEqual(['.svg', '.png', '.csv', '.svg', '.png', '.csv'])
  expect(new Set(paths).size).toBe(6)
  expect(readdirSync(path.join(data, 'files'))).toHaveLength(6)
  expect(readFileSync(paths[0]!, 'utf8')).toBe(SVG)
  expect([...readFileSync(paths[1]!).subarray(0, 4)]).toEqual([0x89, 0x50, 0x4e, 0x47])
})

test('an answer goes out though its files cannot be saved', async () => {
  const data = folder()
  writeFileSync(path.join(data, 'files'), 'in the way')
  const screen = await piped(data, 'a\n')
  expect(screen).toContain('12 boxes\n')
  expect(screen.match(/could not be saved/g)).toHaveLength(2)
})

test('what breaks becomes one plain sentence, and the next message is answered', async () => {
  let times = 0
  const backing = testBacking({
    answer: () => {
      if (times++ === 0) throw new Error('a bug')
      return replyOf()
    },
  })
  const screen = await piped(folder(), 'a\nb\n', backing)
  expect(screen).toBe(`${backing.words('en').failed}\n\n12 boxes\n\n`)
})
