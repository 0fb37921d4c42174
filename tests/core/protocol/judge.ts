// ajv as an independent judge of the JSON Schema that is shipped.
import { readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { parseAllDocuments } from 'yaml'

export const shippedSchema = JSON.parse(
  readFileSync(new URL('../../../public/protocol.schema.json', import.meta.url), 'utf8')
)

const validate = new Ajv2020({ strict: true, strictTypes: false }).compile(shippedSchema)

/** Null: the text is no single YAML document, so that no schema ever sees it. */
export function schemaAllows(text: string): boolean | null {
  if (text.length > 100_000 || text.includes('[[[[[[[[') || text.includes('- - - - - ')) return null
  const documents = parseAllDocuments(text, { prettyErrors: false, logLevel: 'silent' })
  if ('empty' in documents || documents.length !== 1) return null
  const [document] = documents
  if (!document || document.errors.length > 0 || document.warnings.length > 0) return null
  return validate(document.toJS())
}
