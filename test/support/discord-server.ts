/** A Discord on loopback that speaks the real protocols as far as a bot sees them: the gateway (HELLO, IDENTIFY, READY,
 *  RESUME with replay, heartbeats, RECONNECT, INVALID_SESSION), interactions and REST with multipart uploads. Request bodies
 *  are checked against the published schema. Payload shapes: Discord developer documentation, API v10 (from memory). */
import type { IncomingMessage, ServerResponse } from 'node:http'
import { type WebSocket, WebSocketServer } from 'ws'
import { messageProblems, schemaProblems } from './discord-schema.ts'
import { type Failure, failed, json, listen, readBody, readForm, shut } from './http.ts'

export const APP = '900000000000000001'
export const BOT_USER = '900000000000000001'
export const GUILD = '800000000000000001'
export const CHANNEL = '700000000000000001'
export const THREAD = '700000000000000002'
export const ASKER = '600000000000000001'
export const TOKEN = 'OTAwMDAwMDAwMDAwMDAwMDAx.loopback.token'

export type Request = {
  readonly method: string
  readonly path: string
  readonly body: Record<string, unknown>
  readonly files: { name: string; bytes: Buffer }[]
  readonly at: number
}

export type DiscordServer = Awaited<ReturnType<typeof startDiscordServer>>

type Session = {
  id: string
  seq: number
  socket: WebSocket | null
  sent: { s: number; frame: string }[]
  shard: [number, number]
}

async function parse(request: IncomingMessage): Promise<Pick<Request, 'body' | 'files'>> {
  const raw = await readBody(request)
  const type = request.headers['content-type'] ?? ''
  if (!type.includes('multipart')) return { body: raw.length ? JSON.parse(raw.toString()) : {}, files: [] }
  const form = await readForm(raw, type)
  const files: Request['files'] = []
  for (const [, value] of form)
    if (typeof value !== 'string') files.push({ name: value.name, bytes: Buffer.from(await value.arrayBuffer()) })
  return { body: JSON.parse(String(form.get('payload_json') ?? '{}')), files }
}

const CALLBACKS: Readonly<Record<number, string>> = {
  5: 'CreateMessageInteractionCallbackRequest',
  8: 'ApplicationCommandAutocompleteCallbackRequest',
  9: 'ModalInteractionCallbackRequest',
}

export async function startDiscordServer(options: { port?: number; heartbeatMs?: number } = {}) {
  const requests: Request[] = []
  const refused: string[] = []
  const failures: Failure[] = []
  const sessions = new Map<string, Session>()
  const nonces = new Map<string, string>()
  const callbacks = new Map<string, { at: number; type: number; data: Record<string, unknown> }>()
  const gateway = { identifies: 0, resumes: 0, heartbeats: 0, intents: 0 }
  let commands: unknown[] = []
  let base = ''
  let snowflake = 1_000_000_000_000_000_000n
  const nextId = () => String(++snowflake)

  const refuse = (response: ServerResponse, what: string, problems: string[]): void => {
    refused.push(`${what}: ${problems.join('; ')}`)
    json(response, { code: 50035, message: 'Invalid Form Body', errors: {} }, 400)
  }

  type Handler = (request: Request, response: ServerResponse, params: string[]) => void
  const created = (request: Request, response: ServerResponse): void => {
    const { nonce, enforce_nonce, content } = request.body
    const key = `${request.path} ${String(nonce)}`
    // An enforced nonce seen before gives the message back that it made, and makes none.
    const id = (enforce_nonce === true && nonces.get(key)) || nextId()
    if (nonces.get(key) !== id) requests.push(request)
    if (enforce_nonce === true) nonces.set(key, id)
    json(response, { id, channel_id: CHANNEL, content, type: 0 })
  }
  const routes: [string, RegExp, Handler][] = [
    [
      'GET',
      /^\/gateway\/bot$/,
      (_, response) =>
        json(response, {
          url: base.replace('http', 'ws'),
          shards: 1,
          session_start_limit: { total: 1000, remaining: 999, reset_after: 0, max_concurrency: 1 },
        }),
    ],
    ['GET', /^\/applications\/\d+\/commands$/, (_, response) => json(response, commands)],
    [
      'PUT',
      /^\/applications\/\d+\/commands$/,
      (request, response) => {
        const list = request.body as unknown as unknown[]
        const problems = list.flatMap((one) => schemaProblems('ApplicationCommandUpdateRequest', one))
        if (problems.length > 0) return refuse(response, 'commands', problems)
        requests.push(request)
        commands = list.map((one) => ({
          id: nextId(),
          application_id: APP,
          version: nextId(),
          nsfw: false,
          ...(one as object),
        }))
        json(response, commands)
      },
    ],
    [
      'GET',
      /^\/channels\/(\d+)$/,
      (request, response, [id]) => {
        requests.push(request)
        json(
          response,
          id === THREAD ? { id, type: 11, parent_id: CHANNEL, guild_id: GUILD } : { id, type: 0, guild_id: GUILD },
        )
      },
    ],
    [
      'POST',
      /^\/channels\/(\d+)\/messages$/,
      (request, response) => {
        const problems = messageProblems(request.body)
        return problems.length > 0 ? refuse(response, 'message', problems) : created(request, response)
      },
    ],
    [
      'POST',
      /^\/interactions\/(\d+)\/([^/]+)\/callback$/,
      (request, response, [id]) => {
        const type = Number(request.body['type'])
        const problems = schemaProblems(CALLBACKS[type] ?? `callback of type ${type}`, request.body)
        if (problems.length > 0) return refuse(response, 'callback', problems)
        if (callbacks.has(id!))
          return json(response, { code: 40060, message: 'Interaction has already been acknowledged.' }, 400)
        callbacks.set(id!, { at: request.at, type, data: (request.body['data'] ?? {}) as Record<string, unknown> })
        response.writeHead(204).end()
      },
    ],
    [
      'PATCH',
      /^\/webhooks\/(\d+)\/([^/]+)\/messages\/@original$/,
      (request, response) => {
        const problems = messageProblems(request.body, 'IncomingWebhookUpdateRequestPartial')
        return problems.length > 0 ? refuse(response, 'edit', problems) : created(request, response)
      },
    ],
    [
      'DELETE',
      /^\/webhooks\/(\d+)\/([^/]+)\/messages\/@original$/,
      (request, response) => {
        requests.push(request)
        response.writeHead(204).end()
      },
    ],
  ]

  const handle = async (incoming: IncomingMessage, response: ServerResponse): Promise<void> => {
    const path = new URL(incoming.url ?? '/', 'http://loopback').pathname.replace(/^\/api\/v10/, '')
    const method = incoming.method ?? 'GET'
    const at = performance.now()
    const parsed = await parse(incoming)
    const open = path.startsWith('/webhooks/') || path.startsWith('/interactions/')
    if (!open && incoming.headers.authorization !== `Bot ${TOKEN}`) {
      refused.push(`${method} ${path}: 401`)
      return json(response, { message: '401: Unauthorized', code: 0 }, 401)
    }
    if (await failed(failures, `${method} ${path}`, response)) return
    for (const [verb, pattern, handler] of routes) {
      const match = verb === method ? pattern.exec(path) : null
      if (match) return handler({ method, path, at, ...parsed }, response, match.slice(1))
    }
    refused.push(`${method} ${path}: 404`)
    json(response, { message: '404: Not Found', code: 0 }, 404)
  }

  const { server, port } = await listen(handle, options.port)
  base = `http://127.0.0.1:${port}`

  const send = (session: Session, t: string, d: unknown): void => {
    const s = ++session.seq
    const frame = JSON.stringify({ op: 0, t, s, d })
    session.sent.push({ s, frame })
    if (session.socket?.readyState === 1) session.socket.send(frame)
  }

  const ready = (session: Session): void => {
    const user = {
      id: BOT_USER,
      username: 'kneepad',
      discriminator: '0000',
      bot: true,
      avatar: null,
      global_name: null,
    }
    send(session, 'READY', {
      v: 10,
      user,
      guilds: [{ id: GUILD, unavailable: true }],
      session_id: session.id,
      resume_gateway_url: base.replace('http', 'ws'),
      shard: session.shard,
      application: { id: APP, flags: 0 },
      private_channels: [],
    })
    send(session, 'GUILD_CREATE', {
      id: GUILD,
      name: 'crew',
      owner_id: ASKER,
      unavailable: false,
      member_count: 2,
      roles: [],
      emojis: [],
      stickers: [],
      features: [],
      members: [],
      presences: [],
      voice_states: [],
      stage_instances: [],
      guild_scheduled_events: [],
      soundboard_sounds: [],
      threads: [
        {
          id: THREAD,
          type: 11,
          guild_id: GUILD,
          parent_id: CHANNEL,
          name: 'thread',
          thread_metadata: { archived: false },
        },
      ],
      channels: [{ id: CHANNEL, type: 0, guild_id: GUILD, name: 'floor', position: 0, permission_overwrites: [] }],
    })
  }

  const wss = new WebSocketServer({ server })
  wss.on('connection', (socket) => {
    let session: Session | undefined
    socket.on('error', () => {})
    socket.on('message', (data) => {
      const { op, d } = JSON.parse(String(data)) as { op: number; d: Record<string, unknown> }
      if (op === 1) {
        gateway.heartbeats += 1
        socket.send(JSON.stringify({ op: 11 }))
      } else if (op === 2) {
        if (d['token'] !== TOKEN) return socket.close(4004, 'Authentication failed.')
        gateway.identifies += 1
        gateway.intents = Number(d['intents'])
        session = { id: nextId(), seq: 0, socket, sent: [], shard: (d['shard'] ?? [0, 1]) as [number, number] }
        sessions.set(session.id, session)
        ready(session)
      } else if (op === 6) {
        gateway.resumes += 1
        session = sessions.get(String(d['session_id']))
        if (!session) return socket.send(JSON.stringify({ op: 9, d: false }))
        session.socket = socket
        for (const { s, frame } of session.sent) if (s > Number(d['seq'])) socket.send(frame)
        send(session, 'RESUMED', {})
      }
      return undefined
    })
    socket.send(JSON.stringify({ op: 10, d: { heartbeat_interval: options.heartbeatMs ?? 45_000 } }))
  })

  const live = (): Session => {
    const session = [...sessions.values()].at(-1)
    if (!session) throw new Error('no session')
    return session
  }
  const dispatch = (t: string, d: unknown): void => send(live(), t, d)
  const asker = { id: ASKER, username: 'asker', discriminator: '0', avatar: null, global_name: 'Asker', bot: false }
  const bot = { id: BOT_USER, username: 'kneepad', discriminator: '0', avatar: null, global_name: null, bot: true }

  const message = (content: string, over: Record<string, unknown> = {}) => ({
    id: nextId(),
    type: 0,
    channel_id: CHANNEL,
    guild_id: GUILD,
    author: asker,
    member: { nick: null, roles: [], joined_at: '2026-01-01T00:00:00Z', deaf: false, mute: false, flags: 0 },
    content,
    timestamp: '2026-11-24T12:00:00.000000+00:00',
    edited_timestamp: null,
    tts: false,
    mention_everyone: false,
    mentions: content.includes(BOT_USER) ? [bot] : [],
    mention_roles: [],
    attachments: [],
    embeds: [],
    pinned: false,
    ...over,
  })

  /** A file as it comes with a message. */
  const attachment = (filename: string, content_type = 'image/jpeg') => {
    const id = nextId()
    const url = `https://cdn.example/attachments/${CHANNEL}/${id}/${filename}`
    return { id, filename, content_type, size: 1024, url, proxy_url: url }
  }

  const direct = (content: string, over: Record<string, unknown> = {}) => {
    const { guild_id, member, ...rest } = message(content)
    return { ...rest, channel_id: '700000000000000009', channel_type: 1, ...over }
  }

  const interaction = (type: number, data: unknown, over: Record<string, unknown> = {}) => ({
    id: nextId(),
    application_id: APP,
    type,
    token: `token-${nextId()}`,
    version: 1,
    guild_id: GUILD,
    channel_id: CHANNEL,
    channel: { id: CHANNEL, type: 0, name: 'floor', guild_id: GUILD },
    member: {
      user: asker,
      nick: null,
      roles: [],
      joined_at: '2026-01-01T00:00:00Z',
      deaf: false,
      mute: false,
      flags: 0,
      permissions: '0',
    },
    locale: 'en-US',
    guild_locale: 'en-US',
    app_permissions: '0',
    entitlements: [],
    authorizing_integration_owners: {},
    attachment_size_limit: 10_485_760,
    context: 0,
    data,
    ...over,
  })
  const command = (text: string, type = 2, over: Record<string, unknown> = {}) =>
    interaction(
      type,
      {
        id: nextId(),
        name: 'kneepad',
        type: 1,
        options: [{ name: 'message', type: 3, value: text, focused: type === 4 }],
      },
      over,
    )
  const press = (custom_id: string, over: Record<string, unknown> = {}) =>
    interaction(3, { custom_id, component_type: 2 }, { message: message('answer', { author: bot }), ...over })

  const sockets = () => [...sessions.values()].flatMap((session) => (session.socket ? [session.socket] : []))

  return {
    port,
    apiUrl: `${base}/api`,
    requests,
    refused,
    failures,
    callbacks,
    gateway,
    sessions,
    nextId,
    commands: () => commands,
    setCommands: (list: unknown[]) => {
      commands = list
    },
    posts: () => requests.filter((one) => /messages/.test(one.path) && one.method !== 'DELETE'),
    message,
    attachment,
    direct,
    interaction,
    command,
    press,
    dispatch,
    say: (content: string, over: Record<string, unknown> = {}) => {
      const made = message(content, over)
      dispatch('MESSAGE_CREATE', made)
      return made
    },
    interact: <T extends object>(made: T): T => {
      dispatch('INTERACTION_CREATE', made)
      return made
    },
    /** Asks for a reconnect, as Discord does before it takes a server away. */
    reconnect: () => {
      for (const socket of sockets()) socket.send(JSON.stringify({ op: 7, d: null }))
    },
    invalidate: () => {
      for (const socket of sockets()) socket.send(JSON.stringify({ op: 9, d: false }))
    },
    /** Cuts the sockets without a goodbye. */
    drop: () => {
      for (const socket of sockets()) socket.terminate()
    },
    stop: async () => {
      for (const socket of wss.clients) socket.terminate()
      wss.close()
      await shut(server)
    },
  }
}
