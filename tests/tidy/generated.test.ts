import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { protocolJsonSchema } from '../../src/core/protocol/json-schema.ts'
import { root } from './tree.ts'

it('the schema that editors are given is the one the program reads by (npm run schema writes it anew)', () => {
  const shipped = readFileSync(join(root, 'public/protocol.schema.json'), 'utf8')
  expect(JSON.parse(shipped)).toEqual(JSON.parse(JSON.stringify(protocolJsonSchema())))
})
