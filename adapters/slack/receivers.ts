/** The two ways that Slack reaches the bot: a socket that we open, or signed HTTP requests. */
import type { HTTPReceiver, Logger, SocketModeReceiver } from '@slack/bolt'
import { brief, type Log } from '../logging.ts'
import { type Bolt, onceOptions } from './bolt.ts'
import { SLACK_NAME } from './channel.ts'

export type SocketOptions = {
  readonly appToken: string
  readonly apiUrl: string | undefined
  /** Repeats the opening while Slack is not reached. */
  readonly patiently: <T>(what: string, task: () => Promise<T>) => Promise<T>
  readonly onUp: () => void
  readonly onDown: () => void
}

/** Bolt's receiver takes up a lost connection by itself, but lets some errors of that escape: here it goes on, or says why not. */
export function socketReceiver(bolt: Bolt, options: SocketOptions, logger: Logger, log: Log): SocketModeReceiver {
  const { appToken, apiUrl, patiently } = options
  const receiver = new bolt.SocketModeReceiver({
    appToken,
    logger,
    installerOptions: { clientOptions: onceOptions(apiUrl, logger) },
  })
  const { client } = receiver
  const open = client.start.bind(client)
  let first = true
  client.start = async () => {
    try {
      return await patiently('SLACK_APP_TOKEN', open)
    } catch (error) {
      if (first) throw error
      log.error({ platform: SLACK_NAME, error: brief(error) }, 'the connection is not taken up again')
      return new Promise(() => {})
    } finally {
      first = false
    }
  }
  client.on('connected', options.onUp)
  client.on('close', options.onDown)
  return receiver
}

export type HttpOptions = {
  readonly signingSecret: string
  readonly port: number
  readonly health: () => { readonly status: number; readonly body: string }
}

/** Events, commands and buttons at `/slack/events`, the health page beside them. */
export const httpReceiver = (bolt: Bolt, options: HttpOptions, logger: Logger): HTTPReceiver =>
  new bolt.HTTPReceiver({
    signingSecret: options.signingSecret,
    port: options.port,
    logger,
    customRoutes: [
      {
        path: '/healthz',
        method: ['GET', 'HEAD'],
        handler: (_request, response) => {
          const { status, body } = options.health()
          response.writeHead(status, { 'content-type': 'application/json' }).end(body)
        },
      },
    ],
  })
