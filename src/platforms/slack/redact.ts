/** Tokens of every kind, and addresses that anybody may post to who has them. */
const SECRET = /xox[a-z](?:\.xox[a-z])?-[\w-]+|xapp-[\w-]+|https:\/\/hooks\.slack\.com\/\S+/gu

/** Takes tokens and the given secrets out of a text that is to be logged. */
export const redactor =
  (secrets: readonly string[]) =>
  (text: string): string =>
    secrets
      .filter((secret) => secret.length > 0)
      .reduce((clean, secret) => clean.replaceAll(secret, '[secret]'), text.replace(SECRET, '[secret]'))
