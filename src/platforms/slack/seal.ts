import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto'

/** Encrypts what is kept, and refuses what was kept under another key or another name. */
export interface Seal {
  readonly close: (name: string, text: string) => string
  /** Throws an Error that says what to do when the key or the name is another, or the text was changed. */
  readonly open: (name: string, sealed: string) => string
}

const VERSION = 'v1'

/** 32 bytes, as AES-256 needs. */
const KEY_BYTES = 32

/** AES-256-GCM with a fresh nonce for each text (NIST SP 800-38D); the name is authenticated with it. */
export function createSeal(key: Buffer): Seal {
  if (key.length !== KEY_BYTES) throw new RangeError(`a key has ${KEY_BYTES} bytes, not ${key.length}`)
  return {
    close: (name, text) => {
      const nonce = randomBytes(12)
      const cipher = createCipheriv('aes-256-gcm', key, nonce).setAAD(Buffer.from(name))
      const sealed = Buffer.concat([cipher.update(text, 'utf8'), cipher.final()])
      return [
        VERSION,
        ...[nonce, cipher.getAuthTag(), sealed].map((part) => part.toString('base64url')),
      ].join('.')
    },
    open: (name, sealed) => {
      const [version, nonce = '', tag = '', text = ''] = sealed.split('.')
      if (version !== VERSION) throw new Error(`${name} is kept in a form that this version does not read`)
      try {
        const decipher = createDecipheriv('aes-256-gcm', key, Buffer.from(nonce, 'base64url'), {
          authTagLength: 16,
        })
          .setAAD(Buffer.from(name))
          .setAuthTag(Buffer.from(tag, 'base64url'))
        return decipher.update(Buffer.from(text, 'base64url'), undefined, 'utf8') + decipher.final('utf8')
      } catch (cause) {
        throw new Error(
          `cannot open ${name}: it was kept under another key, or was changed; set the key it was kept under, or install the app again`,
          { cause },
        )
      }
    },
  }
}

/** A key as 64 hexadecimal digits or as base64. Throws an Error that says how to make one. */
export function readKey(text: string): Buffer {
  const trimmed = text.trim()
  const key = /^[0-9a-f]{64}$/iu.test(trimmed) ? Buffer.from(trimmed, 'hex') : Buffer.from(trimmed, 'base64')
  if (key.length === KEY_BYTES) return key
  throw new Error(
    `the key has to be ${KEY_BYTES} bytes, as 64 hexadecimal digits or base64; make one with: openssl rand -hex 32`,
  )
}
