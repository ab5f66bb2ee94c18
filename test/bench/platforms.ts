/** Both adapters with their real libraries against loopback servers in the same process: from event to acknowledgement and to
 *  posted answer, 500 messages with 50 in flight, and the heap over 10,000 messages. The answerer only echoes, so this is the
 *  adapters' own share. Discord's REST client keeps to 50 requests a second, which bounds its answers; a second run without
 *  that bound shows what the adapter adds. */
import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import type { Adapter, Backing } from '../../adapters/contract.ts'
import { createDiscord } from '../../adapters/discord/connect.ts'
import { createLog } from '../../adapters/logging.ts'
import { createSlack } from '../../adapters/slack/connect.ts'
import { replyOf, testBacking, until } from '../support/backing.ts'
import { startDiscordServer, TOKEN } from '../support/discord-server.ts'
import { BOT, startSlackServer, TOKENS } from '../support/slack-server.ts'

const MESSAGES = 500
const IN_FLIGHT = 50
/** About what an answer with a layout takes [ms]. */
const WORK_MS = 10
const LONG_RUN = 10_000

/** Works so long on each answer, echoes and keeps nothing, so that the heap is the adapters'. */
const backingOf = (workMs: number): Backing => ({
  ...testBacking(),
  answerer: {
    handle: async (_, message) => {
      for (const end = performance.now() + workMs; performance.now() < end; );
      return replyOf({ answer: message.text, details: ['one', 'two'], assumed: ['three'] })
    },
    press: async () => null,
    setup: async () => ({ language: 'en', units: '' }),
  },
  keep: async () => {},
})
const silent = createLog('silent', [], () => {})

setFlagsFromString('--expose-gc')
const collect = runInNewContext('gc') as () => void
const heapMb = (): number => {
  collect()
  return process.memoryUsage().heapUsed / 2 ** 20
}

const quantile = (times: number[], q: number): string =>
  `${times.toSorted((a, b) => a - b)[Math.min(times.length - 1, Math.floor(q * times.length))]?.toFixed(0)} ms`
const line = (what: string, times: number[]): void =>
  console.log(`  ${what.padEnd(46)} p50 ${quantile(times, 0.5).padStart(8)}   p99 ${quantile(times, 0.99).padStart(8)}`)

/** Sends `count` messages with never more than 50 unanswered. `ask` resolves when its answer was posted. */
async function flood(count: number, ask: (n: number) => Promise<void>): Promise<void> {
  let next = 0
  const worker = async (): Promise<void> => {
    while (next < count) await ask(next++)
  }
  await Promise.all(Array.from({ length: IN_FLIGHT }, worker))
}

/** A server and how to ask it one thing: times from sending to acknowledgement and to answer. */
type Side = {
  readonly adapter: Adapter
  readonly ask: (n: number) => Promise<{ ack: number | null; answer: number }>
  readonly forget: () => void
  readonly stop: () => Promise<void>
}

async function slackSide(workMs = 0): Promise<Side> {
  const server = await startSlackServer()
  const options = { botToken: TOKENS.bot, mode: { is: 'socket' as const, appToken: TOKENS.app }, apiUrl: server.apiUrl }
  const adapter = createSlack(options, backingOf(workMs), silent)
  await adapter.start()
  const ask = async (n: number) => {
    const event = server.messageEvent(`<@${BOT.user}> ${n}`, { channel: `C${n % IN_FLIGHT}` })
    const envelope = server.pushEvent(event)
    const call = await until('an answer', () => server.calls.find((one) => one.args['thread_ts'] === event.ts), 60_000)
    server.calls.splice(server.calls.indexOf(call), 1)
    return { ack: envelope.acked === null ? null : envelope.acked - envelope.sent, answer: call.at - envelope.sent }
  }
  const forget = () => {
    server.envelopes.clear()
    server.calls.length = 0
  }
  return { adapter, ask, forget, stop: () => server.stop() }
}

async function discordSide(requestsPerSecond?: number, workMs = 0): Promise<Side> {
  const server = await startDiscordServer()
  const adapter = createDiscord(
    { token: TOKEN, apiUrl: server.apiUrl, ...(requestsPerSecond ? { requestsPerSecond } : {}) },
    backingOf(workMs),
    silent,
  )
  await adapter.start()
  const ask = async (n: number) => {
    const channel_id = `7${String(n % IN_FLIGHT).padStart(17, '0')}`
    const command = server.command(String(n), 2, { channel_id, channel: { id: channel_id, type: 0 } })
    const sent = performance.now()
    server.interact(command)
    const request = await until(
      'an answer',
      () => server.requests.find((one) => one.path.includes(command.token)),
      60_000,
    )
    server.requests.splice(server.requests.indexOf(request), 1)
    const callback = server.callbacks.get(command.id)
    return { ack: callback ? callback.at - sent : null, answer: request.at - sent }
  }
  const forget = () => {
    server.callbacks.clear()
    server.requests.length = 0
    for (const session of server.sessions.values()) session.sent.length = 0
  }
  return { adapter, ask, forget, stop: () => server.stop() }
}

async function latencies(name: string, side: Side): Promise<void> {
  await flood(100, async (n) => void (await side.ask(n)))
  const acks: number[] = []
  const answers: number[] = []
  await flood(MESSAGES, async (n) => {
    const { ack, answer } = await side.ask(n)
    if (ack !== null) acks.push(ack)
    answers.push(answer)
  })
  line(`${name}: acknowledged`, acks)
  line(`${name}: answered`, answers)
}

/** The heap at rest after each fifth of the long run: what discord.js sweeps every ten seconds is swept by then. */
async function memory(name: string, side: Side, restMs: number): Promise<void> {
  const heaps: number[] = []
  for (let done = 0; done < LONG_RUN; done += LONG_RUN / 5) {
    await flood(LONG_RUN / 5, async (n) => void (await side.ask(done + n)))
    side.forget()
    await new Promise((resolve) => setTimeout(resolve, restMs))
    heaps.push(heapMb())
  }
  console.log(`  ${name}: heap each 2,000 messages [MiB]`.padEnd(48), heaps.map((mb) => mb.toFixed(1)).join('  '))
}

async function close(side: Side): Promise<void> {
  await side.adapter.stop()
  await side.stop()
}

export default async function bench(): Promise<void> {
  const slack = await slackSide()
  await latencies('Slack', slack)
  await memory('Slack', slack, 100)
  await close(slack)
  const working = await slackSide(WORK_MS)
  await latencies(`Slack, ${WORK_MS} ms of work in each`, working)
  await close(working)
  const bounded = await discordSide()
  await latencies('Discord at 50 requests/s', bounded)
  await close(bounded)
  const free = await discordSide(100_000)
  await latencies('Discord without that bound', free)
  await memory('Discord', free, 10_500)
  await close(free)
  const busy = await discordSide(100_000, WORK_MS)
  await latencies(`Discord, ${WORK_MS} ms of work in each`, busy)
  await close(busy)
}
