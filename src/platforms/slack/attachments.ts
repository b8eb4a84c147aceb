import type { WebClient } from '@slack/web-api'
import type { Paint } from '../../bot/platform.ts'
import type { File, Picture } from '../../bot/reply.ts'
import { limits } from './limits.ts'
import { clipped } from './message.ts'
import { patientFetch } from './patientFetch.ts'
import type { Attachments } from './recent.ts'

/** Where files are shared: a channel, or a thread in it. */
export interface Sharing {
  readonly client: WebClient
  readonly channel: string
  readonly thread?: string | undefined
  readonly paint: Paint
}

/** A file on its way. */
interface Parcel {
  readonly filename: string
  readonly title: string
  readonly alt?: string
  readonly bytes: Uint8Array<ArrayBuffer>
}

/**
 * Shares pictures as PNG with their description, and files, in one message; gives the ids of the files. Throws what Slack
 * refuses with, such as `not_in_channel`.
 */
export async function shareAttachments(
  { pictures, files }: Attachments,
  sharing: Sharing,
): Promise<readonly string[]> {
  const { client, channel, thread, paint } = sharing
  const parcels = [
    ...(await Promise.all(pictures.map((picture) => pictureParcel(picture, paint)))),
    ...files.map(fileParcel),
  ]
  const sent: { id: string; title: string }[] = []
  for (const parcel of parcels) sent.push({ id: await send(parcel, client), title: parcel.title })
  await client.apiCall('files.completeUploadExternal', {
    files: sent,
    channel_id: channel,
    ...(thread !== undefined && { thread_ts: thread }),
  })
  return sent.map(({ id }) => id)
}

/**
 * Gets an address, and puts the bytes there. By `apiCall`, since the parameter for a description is `alt_txt` and
 * `filesUploadV2` of @slack/web-api 8.2 sends `alt_text`; for images only, since Slack shares nothing that has one and is
 * no image (slackapi/python-slack-sdk issue 1818).
 */
async function send({ filename, alt, bytes }: Parcel, client: WebClient): Promise<string> {
  const described = alt === undefined ? {} : { alt_txt: clipped(alt, limits.altText) }
  const place = await client.apiCall('files.getUploadURLExternal', {
    filename,
    length: bytes.byteLength,
    ...described,
  })
  const { upload_url: url, file_id: id } = place as { upload_url?: string; file_id?: string }
  if (url === undefined || id === undefined) throw new Error('Slack gave no address to upload to')
  const response = await patientFetch(url, bytes, 'application/octet-stream')
  if (!response.ok) throw new Error(`the upload was answered with status ${response.status}`)
  await response.body?.cancel()
  return id
}

const pictureParcel = async ({ name, alt, scene }: Picture, paint: Paint): Promise<Parcel> => ({
  filename: `${name}.png`,
  title: name,
  alt,
  bytes: new Uint8Array(await paint(scene)),
})

const fileParcel = ({ name, content }: File): Parcel => ({
  filename: name,
  title: name,
  bytes: typeof content === 'string' ? new TextEncoder().encode(content) : new Uint8Array(content),
})
