/** The prompt: line editing by Node's readline, history over restarts, Ctrl-D and Ctrl-C as a shell has them. */
import { createInterface } from 'node:readline'
import { brief, type Log } from '../logging.ts'
import type { Source } from './connect.ts'
import { MOST_LINES, openHistory } from './history.ts'

export type PromptOptions = {
  readonly input: NodeJS.ReadableStream
  readonly output: NodeJS.WritableStream
  /** Where the history is kept. */
  readonly file: string
  /** What the first Ctrl-C on an empty line says. */
  readonly leaveHint: string
  readonly log: Log
}

export function openPrompt({ input, output, file, leaveHint, log }: PromptOptions): Source {
  const history = openHistory(file, (error) => log.warn({ error: brief(error) }, 'the history is not kept'))
  const prompt = createInterface({
    input,
    output,
    terminal: true,
    prompt: '> ',
    history: [...history.lines],
    historySize: MOST_LINES,
    removeHistoryDuplicates: true,
  })
  let closed = false
  let warned = false
  prompt.on('line', (line) => {
    warned = false
    history.add(line)
  })
  prompt.on('close', () => {
    closed = true
  })
  // A line half typed is thrown away; on an empty line the second one leaves.
  prompt.on('SIGINT', () => {
    if (prompt.line !== '') {
      prompt.write(null, { ctrl: true, name: 'e' })
      prompt.write(null, { ctrl: true, name: 'u' })
      return
    }
    if (warned) return prompt.close()
    warned = true
    output.write(`\n${leaveHint}\n`)
    prompt.prompt()
  })
  return {
    async *lines() {
      prompt.prompt()
      for await (const line of prompt) {
        yield line
        if (closed) break
        prompt.prompt()
      }
      output.write('\n')
    },
    interject(text) {
      if (closed) return
      output.write(`\r\u001b[K${text}\n`)
      prompt.prompt(true)
    },
    close: () => {
      if (!closed) prompt.close()
    },
  }
}
