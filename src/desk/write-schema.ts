// npm run schema: writes public/protocol.schema.json, which a test holds against the code.
import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { protocolJsonSchema } from '../core/protocol/json-schema.ts'

const file = fileURLToPath(new URL('../../public/protocol.schema.json', import.meta.url))
writeFileSync(file, `${JSON.stringify(protocolJsonSchema(), null, 1)}\n`)
console.log(`Wrote ${file}`)
