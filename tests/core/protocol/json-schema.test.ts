import { describe, expect, it } from 'vitest'
import { protocolJsonSchema } from '../../../src/core/protocol/json-schema.ts'
import { stepWords } from '../../../src/core/protocol/model.ts'
import { shippedSchema } from './judge.ts'

describe('the JSON Schema', () => {
  it('that is shipped is the one the code makes; run npm run schema after a change', () => {
    expect(shippedSchema).toEqual(JSON.parse(JSON.stringify(protocolJsonSchema())))
  })

  it('tells an editor what each step word is for', () => {
    const { properties } = shippedSchema.$defs.step.anyOf[1]
    expect(Object.keys(properties)).toEqual(expect.arrayContaining([...stepWords, 'until', 'for each']))
    for (const word of stepWords) {
      const { $ref, description } = properties[word]
      const about = description ?? shippedSchema.$defs[String($ref).replace('#/$defs/', '')]?.description
      expect(about, word).toMatch(/\w{3}/)
    }
  })
})
