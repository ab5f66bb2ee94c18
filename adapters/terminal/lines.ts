/** Lines of a stream as they come, the last one too if it has no end. */
import type { Readable } from 'node:stream'

const MOST_KEPT = 1_000_000

export async function* lines(input: Readable): AsyncGenerator<string> {
  let rest = ''
  input.setEncoding('utf8')
  for await (const chunk of input as AsyncIterable<string>) {
    rest += chunk
    const found = rest.split('\n')
    rest = found.pop() as string
    for (const line of found) yield line.replace(/\r$/, '')
    // A line without an end must not fill the memory: what is too long to answer is cut where it is refused anyway.
    if (rest.length > MOST_KEPT) rest = rest.slice(0, MOST_KEPT)
  }
  if (rest !== '') yield rest
}
