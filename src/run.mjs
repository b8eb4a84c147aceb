// What npm starts: takes the secrets that are in `.env` beside package.json, where there is one, into the environment, which goes
// before it, and launches the bot.
import { existsSync, statSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const file = fileURLToPath(new URL('../.env', import.meta.url))

function readSecrets() {
  if (!existsSync(file)) return
  try {
    process.loadEnvFile(file)
  } catch (error) {
    process.stderr.write(
      `battenbot cannot start:\n${file} cannot be read (${error.code ?? error.message}); it must be a file that you may read\n`,
    )
    process.exit(2)
  }
  // On Windows every file looks open to all, whoever may read it.
  if (process.platform !== 'win32' && (statSync(file).mode & 0o077) !== 0)
    process.stderr.write(
      `others on this machine may read the secrets in ${file}; keep them to yourself: chmod 600 .env\n`,
    )
}

readSecrets()
await import('./launch.mjs')
