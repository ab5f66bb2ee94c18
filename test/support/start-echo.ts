/** `npm start` with an answerer that echoes: for tests of starting and stopping, before and apart from the real one. */
import path from 'node:path'
import { main } from '../../adapters/start.ts'
import { replyOf, testBacking } from './backing.ts'

await main({
  load: async () =>
    testBacking({
      answer: async (message) => {
        const ms = Number(/slow (\d+)/.exec(message.text)?.[1] ?? 0)
        process.stdout.write(`${JSON.stringify({ msg: 'begun' })}\n`)
        await new Promise((resolve) => setTimeout(resolve, ms))
        return replyOf({ answer: `heard: ${message.text}` })
      },
    }),
  shardProgram: path.join(import.meta.dirname, 'shard-echo.ts'),
})
