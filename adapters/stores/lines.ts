/** Lines of a file that nobody vouches for: cut at line ends, of bounded length, and of sound text. */

/** A line that is no line of an export. */
export class BadLine extends Error {}

/** Far more than one entry or reply takes [bytes]. */
export const LONGEST_LINE = 8_000_000

const LINE_FEED = 0x0a

/** @throws BadLine for a line that is too long, or whose bytes are not UTF-8 */
export async function* boundedLines(chunks: AsyncIterable<Uint8Array>): AsyncGenerator<string> {
  const decoder = new TextDecoder('utf-8', { fatal: true })
  let pieces: Uint8Array[] = []
  let length = 0
  let number = 1
  const hold = (piece: Uint8Array) => {
    length += piece.length
    if (length > LONGEST_LINE)
      throw new BadLine(`line ${number} is longer than ${LONGEST_LINE} bytes: no line of an export is`)
    pieces.push(piece)
  }
  const line = () => {
    try {
      const text = decoder.decode(Buffer.concat(pieces))
      return text.endsWith('\r') ? text.slice(0, -1) : text
    } catch {
      throw new BadLine(`line ${number} is not UTF-8 text`)
    }
  }
  for await (const chunk of chunks) {
    let from = 0
    for (let end = chunk.indexOf(LINE_FEED); end >= 0; end = chunk.indexOf(LINE_FEED, from)) {
      hold(chunk.subarray(from, end))
      yield line()
      pieces = []
      length = 0
      number++
      from = end + 1
    }
    hold(chunk.subarray(from))
  }
  if (length > 0) yield line()
}
