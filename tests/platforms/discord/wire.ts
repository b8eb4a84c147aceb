import type { IncomingMessage, ServerResponse } from 'node:http'

export type Json = Readonly<Record<string, unknown>>

/** One call as it came over the wire. */
export interface Call {
  readonly method: string
  /** Without the version and the query, such as `/interactions/1/token/callback`. */
  readonly path: string
  readonly query: URLSearchParams
  readonly authorization: string | undefined
  readonly body: Json | readonly Json[] | undefined
  readonly files: readonly WireFile[]
  readonly at: number
  /** What it was answered with. */
  readonly status: number
  readonly code: number | undefined
}

export interface WireFile {
  readonly part: string
  readonly name: string
  readonly type: string
  readonly bytes: Uint8Array
}

/** What a call is answered with; an empty answer has no type, as the real one has none. */
export interface Answered {
  readonly status: number
  readonly body?: unknown
  readonly headers?: Readonly<Record<string, string>>
}

/** An error as Discord words it. */
export const refusal = (status: number, code: number, message: string, errors?: unknown): Answered => ({
  status,
  body: { message, code, ...(errors !== undefined && { errors }) },
})

export async function bytesOf(request: IncomingMessage): Promise<Buffer> {
  const chunks: Buffer[] = []
  for await (const chunk of request) chunks.push(chunk as Buffer)
  return Buffer.concat(chunks)
}

/** JSON, or the JSON and the files of a multipart form. */
export async function readBody(
  type: string,
  bytes: Buffer,
): Promise<{ body: Call['body']; files: readonly WireFile[] }> {
  if (bytes.length === 0) return { body: undefined, files: [] }
  if (type.startsWith('application/json')) return { body: JSON.parse(bytes.toString('utf8')), files: [] }
  const form = await new Response(new Uint8Array(bytes), { headers: { 'content-type': type } }).formData()
  const files: WireFile[] = []
  for (const [part, value] of form.entries()) {
    if (typeof value === 'string') continue
    files.push({
      part,
      name: value.name,
      type: value.type,
      bytes: new Uint8Array(await value.arrayBuffer()),
    })
  }
  return { body: JSON.parse(String(form.get('payload_json'))), files }
}

export function send(response: ServerResponse, { status, body, headers = {} }: Answered): void {
  if (body === undefined) return void response.writeHead(status, headers).end()
  if (body instanceof Uint8Array)
    return void response
      .writeHead(status, { 'content-type': 'application/octet-stream', ...headers })
      .end(body)
  response.writeHead(status, { 'content-type': 'application/json', ...headers }).end(JSON.stringify(body))
}

/** Discord's ids hold the time they were made at: milliseconds since 2015, then 22 bits. */
const EPOCH = 1_420_070_400_000n
let increment = 0n

export function snowflake(at = Date.now()): string {
  increment = (increment + 1n) % 4096n
  return String(((BigInt(at) - EPOCH) << 22n) | increment)
}

/** When an id was made, in ms. */
export const timeOf = (id: string): number => Number((BigInt(id) >> 22n) + EPOCH)
