/** Block Kit as published: https://docs.slack.dev/reference/block-kit (limits from memory of those pages).
 *  Written apart from adapters/slack/limits.ts, so that a wrong limit there is seen. */

type Json = Record<string, unknown>

const problems: string[] = []
const need = (truth: boolean, what: string) => {
  if (!truth) problems.push(what)
}

function text(value: unknown, max: number, where: string, plainOnly = false): void {
  const object = value as Json | undefined
  const body = object?.['text']
  need(object?.['type'] === 'plain_text' || (!plainOnly && object?.['type'] === 'mrkdwn'), `${where}: type`)
  need(typeof body === 'string' && body.length >= 1, `${where}: empty text`)
  need(typeof body === 'string' && body.length <= max, `${where}: longer than ${max}`)
}

function element(value: Json, where: string): void {
  need(typeof value['action_id'] === 'string' && value['action_id'].length <= 255, `${where}: action_id`)
  if (value['type'] === 'button') {
    text(value['text'], 75, `${where}: button text`, true)
    need(value['value'] === undefined || String(value['value']).length <= 2000, `${where}: button value`)
  } else if (value['type'] === 'plain_text_input') {
    if (value['placeholder']) text(value['placeholder'], 150, `${where}: placeholder`, true)
    need(Number(value['max_length'] ?? 1) <= 3000, `${where}: max_length`)
  } else problems.push(`${where}: element ${String(value['type'])}`)
}

const BLOCKS: Readonly<Record<string, (value: Json, elements: Json[], where: string) => void>> = {
  section: (value, _, where) => text(value['text'], 3000, where),
  header: (value, _, where) => text(value['text'], 150, where, true),
  divider: () => {},
  context: (_, elements, where) => {
    need(elements.length >= 1 && elements.length <= 10, `${where}: context elements`)
    for (const one of elements) text(one, 3000, `${where}: context`)
  },
  actions: (_, elements, where) => {
    need(elements.length >= 1 && elements.length <= 25, `${where}: action elements`)
    for (const one of elements) element(one, where)
    const ids = elements.map((one) => one['action_id'])
    need(new Set(ids).size === ids.length, `${where}: action_id twice`)
  },
  input: (value, _, where) => {
    text(value['label'], 2000, `${where}: label`, true)
    element(value['element'] as Json, where)
  },
}

function block(value: Json, where: string): void {
  need(value['block_id'] === undefined || String(value['block_id']).length <= 255, `${where}: block_id`)
  const elements = (value['elements'] ?? []) as Json[]
  const check = BLOCKS[String(value['type'])]
  if (check) check(value, elements, where)
  else problems.push(`${where}: block ${String(value['type'])}`)
}

const drained = (): string[] => problems.splice(0)

/** What Slack would refuse in these blocks; empty when it takes them. */
export function blockProblems(blocks: unknown, most = 50): string[] {
  if (!Array.isArray(blocks)) return ['blocks: not a list']
  need(blocks.length >= 1 && blocks.length <= most, `blocks: ${blocks.length}`)
  for (const [n, one] of blocks.entries()) block(one as Json, `block ${n}`)
  return drained()
}

export function viewProblems(view: unknown): string[] {
  const value = view as Json
  const found = blockProblems(value['blocks'], 100)
  if (value['type'] === 'modal') {
    text(value['title'], 24, 'title', true)
    if (value['submit']) text(value['submit'], 24, 'submit', true)
    if (value['close']) text(value['close'], 24, 'close', true)
    need(String(value['callback_id'] ?? '').length <= 255, 'callback_id')
  } else need(value['type'] === 'home', 'view type')
  need(String(value['private_metadata'] ?? '').length <= 3000, 'private_metadata')
  return [...found, ...drained()]
}
