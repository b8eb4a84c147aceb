import fc from 'fast-check'

// The same cases every time, so that a change is to blame for what it breaks. BATTEN_SEED looks at others: any whole number.
fc.configureGlobal({ seed: Number(process.env.BATTEN_SEED ?? 1) })
