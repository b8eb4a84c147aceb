// Loaded into a process before its own code: nothing outside this machine ever answers, as behind a line that is cut.
import dns from 'node:dns'
import { syncBuiltinESMExports } from 'node:module'

const { lookup } = dns
dns.lookup = (name, ...rest) =>
  /^(?:localhost|[\d.]+|\[?::1\]?)$/u.test(name) ? lookup(name, ...rest) : undefined
syncBuiltinESMExports()
