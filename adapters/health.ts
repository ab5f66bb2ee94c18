/** The health page: which adapters are connected. */
import { createServer } from 'node:http'
import type { Adapter } from './contract.ts'

export type Page = { readonly status: number; readonly body: string }

/** 200 while all adapters are connected, else 503; the body names each. */
export function healthPage(adapters: readonly Pick<Adapter, 'name' | 'status'>[]): Page {
  const states = Object.fromEntries(adapters.map((adapter) => [adapter.name, adapter.status()]))
  const ok = adapters.length > 0 && Object.values(states).every((state) => state === 'connected')
  return { status: ok ? 200 : 503, body: JSON.stringify({ ok, adapters: states }) }
}

/** Serves the page at `/healthz` and nothing else. Gives back how to stop. */
export async function serveHealth(host: string, port: number, page: () => Page): Promise<() => Promise<void>> {
  const server = createServer((request, response) => {
    const found = /^\/healthz\/?(\?|$)/.test(request.url ?? '') && ['GET', 'HEAD'].includes(request.method ?? '')
    const { status, body } = found ? page() : { status: 404, body: '{}' }
    response.writeHead(status, { 'content-type': 'application/json' }).end(request.method === 'HEAD' ? '' : body)
  })
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject)
    server.listen(port, host, resolve)
  })
  return () =>
    new Promise((resolve) => {
      server.close(() => resolve())
      server.closeAllConnections()
    })
}
