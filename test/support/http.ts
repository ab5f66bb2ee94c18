/** What both loopback servers need: a body read whole, a port of its own, failures to order. */
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'

export async function readBody(request: IncomingMessage): Promise<Buffer> {
  const chunks: Buffer[] = []
  for await (const chunk of request) chunks.push(chunk as Buffer)
  return Buffer.concat(chunks)
}

/** multipart/form-data by the platform's own parser. */
export const readForm = (body: Buffer, contentType: string): Promise<FormData> =>
  new Response(new Uint8Array(body), { headers: { 'content-type': contentType } }).formData()

/** A failure to give instead of an answer, once for each `times`. */
export type Failure = {
  readonly match: RegExp
  times: number
  readonly status: number
  readonly headers?: Record<string, string>
  readonly body: string
  /** ms to wait before answering; the client may give up first. */
  readonly delayMs?: number
  /** Cut the connection instead of answering. */
  readonly cut?: boolean
}

export async function failed(failures: Failure[], what: string, response: ServerResponse): Promise<boolean> {
  const failure = failures.find((one) => one.times > 0 && one.match.test(what))
  if (!failure) return false
  failure.times -= 1
  if (failure.delayMs) await new Promise((resolve) => setTimeout(resolve, failure.delayMs))
  if (failure.cut) response.destroy()
  else response.writeHead(failure.status, failure.headers ?? {}).end(failure.body)
  return true
}

export const json = (
  response: ServerResponse,
  body: unknown,
  status = 200,
  headers: Record<string, string> = {},
): void => {
  response.writeHead(status, { 'content-type': 'application/json', ...headers }).end(JSON.stringify(body))
}

/** Listens on loopback; port 0 takes a free one. */
export async function listen(
  handler: (request: IncomingMessage, response: ServerResponse) => Promise<void>,
  port = 0,
): Promise<{ server: Server; port: number }> {
  const server = createServer((request, response) => {
    handler(request, response).catch((error: unknown) => {
      response.writeHead(599).end(String(error))
    })
  })
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject)
    server.listen(port, '127.0.0.1', resolve)
  })
  return { server, port: (server.address() as AddressInfo).port }
}

export const shut = (server: Server): Promise<void> =>
  new Promise((resolve) => {
    server.close(() => resolve())
    server.closeAllConnections()
  })

export async function freePort(): Promise<number> {
  const { server, port } = await listen(async () => {})
  await shut(server)
  return port
}
