import helmet from '@fastify/helmet'
import rateLimit from '@fastify/rate-limit'
import files from '@fastify/static'
import Fastify, { type FastifyInstance, type FastifyRequest } from 'fastify'
import type { Logger } from '../../bot/log.ts'
import { browserIn, newBrowser } from './browserCookie.ts'
import { type Came, guard, isLink } from './guard.ts'
import { limits } from './limits.ts'

/** Where the room is opened, and to whom. */
export interface ServerOptions {
  /** The address to listen at; only 127.0.0.1 keeps it to this machine. */
  readonly host: string
  /** Host names that the room goes by, beside this machine's own. */
  readonly names: readonly string[]
  /** The folder with the page. */
  readonly page: string
}

declare module 'fastify' {
  interface FastifyRequest {
    /** The random number of the browser that asks. */
    browser: string
  }
}

/** A server that gives out the page, and lets in nothing but the page. Routes are added by whoever makes it. */
export async function createServer(options: ServerOptions, log: Logger): Promise<FastifyInstance> {
  const server = Fastify({
    bodyLimit: limits.bodyBytes,
    // Longer than any path of the room with a whole line in it.
    routerOptions: { maxParamLength: 200 },
    forceCloseConnections: true,
    requestTimeout: 60_000,
  })
  server.removeContentTypeParser('text/plain')
  server.decorateRequest('browser', '')
  server.setErrorHandler((error: { statusCode?: number; message: string }, _request, reply) => {
    const status = error.statusCode ?? 500
    if (status >= 500) log.error({ err: error }, 'a request to the room failed')
    return reply.code(status).send({ error: status < 500 ? error.message : 'something went wrong here' })
  })
  server.setNotFoundHandler((_request, reply) => reply.code(404).send({ error: 'there is no such page' }))
  const turned = guard(options.names, !['127.0.0.1', '::1', 'localhost'].includes(options.host))
  server.addHook('onRequest', async (request, reply) => {
    const why = turned(cameFrom(request))
    if (why === undefined) return
    log.warn({ why, host: request.headers.host, origin: request.headers.origin }, 'a request was turned away')
    return reply.code(403).send({ error: 'only the page of this room may ask this' })
  })
  server.addHook('onRequest', async (request, reply) => {
    const known = browserIn(request.headers.cookie)
    if (known !== undefined) request.browser = known
    else {
      const { browser, header } = newBrowser()
      request.browser = browser
      reply.header('set-cookie', header)
    }
  })
  await server.register(helmet, HEADERS)
  await server.register(rateLimit, { max: limits.requestsPerMinute, timeWindow: '1 minute' })
  await server.register(files, {
    root: options.page,
    prefix: '/',
    index: ['index.html'],
    cacheControl: false,
    setHeaders: (reply) => reply.setHeader('cache-control', 'no-cache'),
    allowedPath: (path) => /^\/(?:[a-zA-Z]+\.(?:js|css|svg|html))?$/u.test(path),
  })
  return server
}

const cameFrom = ({ method, headers }: FastifyRequest): Came => ({
  method,
  host: headers.host,
  origin: headers.origin,
  site: isLink(method, oneOf(headers['sec-fetch-mode'])) ? undefined : oneOf(headers['sec-fetch-site']),
})

const oneOf = (header: string | string[] | undefined): string | undefined =>
  Array.isArray(header) ? header[0] : header

/** The page may load only what lies beside it, run only its own script, and stand in no other page's frame. */
const HEADERS = {
  contentSecurityPolicy: {
    useDefaults: false,
    directives: {
      defaultSrc: ["'none'"],
      scriptSrc: ["'self'"],
      styleSrc: ["'self'"],
      imgSrc: ["'self'"],
      connectSrc: ["'self'"],
      formAction: ["'self'"],
      baseUri: ["'none'"],
      frameAncestors: ["'none'"],
      requireTrustedTypesFor: ["'script'"],
      trustedTypes: ["'none'"],
    },
  },
  // Within a house there is no certificate, so the page comes by plain http.
  strictTransportSecurity: false,
  referrerPolicy: { policy: 'same-origin' },
} as const
