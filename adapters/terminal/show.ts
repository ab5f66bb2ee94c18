/** A reply as lines of a terminal. Pure: the answer first and bold, cautions in yellow, sources dim. */
import type { Reply } from '../../src/reply.ts'
import { inert, widthOf, wrap } from './wrap.ts'

export type Look = {
  /** Columns to wrap at; null: no terminal, lines stay whole and floors are not drawn. */
  readonly width: number | null
  readonly colour: boolean
}

/** SGR parameters of ECMA-48: bold, faint, yellow. */
const STYLES = { plain: '', strong: '1', faint: '2', warn: '33' } as const
type Style = keyof typeof STYLES

const styled = (text: string, style: Style, { colour }: Look): string =>
  colour && style !== 'plain' && text !== '' ? `\u001b[${STYLES[style]}m${text}\u001b[0m` : text

export function paragraph(text: string, style: Style, look: Look): string[] {
  return inert(text)
    .split('\n')
    .flatMap((line) => wrap(line, look.width))
    .map((line) => styled(line, style, look))
}

/** Floors in plain characters, as far as they fit into the terminal. */
function drawings(reply: Reply, { width }: Look): string[] {
  if (width === null) return []
  return reply.files.flatMap(({ plain }) => {
    const lines = plain?.split('\n') ?? []
    return lines.some((line) => widthOf(line) > width) ? [] : lines
  })
}

export function shown(reply: Reply, look: Look): string[] {
  const { answer, details, warnings, assumed, sources, labels } = reply
  return [
    ...paragraph(answer, 'strong', look),
    ...details.flatMap((line) => paragraph(line, 'plain', look)),
    ...drawings(reply, look),
    ...warnings.flatMap((line) => paragraph(`${labels.warning} ${line}`, 'warn', look)),
    ...(assumed.length > 0 ? paragraph(`${labels.assumed} ${assumed.join('; ')}`, 'plain', look) : []),
    ...(sources.length > 0 ? paragraph(`${labels.sources} ${sources.join('; ')}`, 'faint', look) : []),
  ]
}

/** The messages that can follow, as they are typed; only where someone is there to type them. */
export const offersShown = (reply: Reply, label: string, look: Look): string[] =>
  reply.offers.length === 0 || look.width === null
    ? []
    : paragraph(`${label} ${reply.offers.map((offer) => offer.say).join(' · ')}`, 'faint', look)
