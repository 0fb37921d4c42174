// Every kind of problem a protocol's text can have. The code is what programs look at; the words are for the writer.
import { type QuantityProblemCode, quantityProblemCodes } from '../quantity/index.ts'

/** Problems of the file itself, before it is read as a protocol. */
const sourceProblems = {
  'empty-file': 'There is nothing in the file.',
  'too-large': 'The file has more bytes, lines or signs than a protocol can need.',
  'nested-too-deep': 'Lists and fields lie more than 24 deep in each other.',
  'forbidden-character': 'A control character, or one that turns the direction of writing.',
  'not-yaml': 'The text is not YAML.',
  'tab-indent': 'A line is indented with tabs.',
  'many-documents': 'The file holds more than one document.',
  anchor: 'An anchor or alias: every value is written where it stands.',
  tag: 'A type tag: the fields say what a value is.',
  'duplicate-key': 'The same field is given twice.'
} as const

/** Problems of shape: which fields stand where, and what kind of value they hold. The JSON Schema finds these too. */
const structureProblems = {
  'unknown-field': 'A field that does not belong there.',
  'missing-field': 'A field that must be there is not.',
  'wrong-kind': 'A value of another kind: a list where one value belongs, a number where words belong.',
  'unknown-value': 'One of a few words is wanted, and another stands there.',
  'bad-name': 'An id or a name with signs that are not allowed in it.',
  'too-long-text': 'A text longer than a screen or a card can show.',
  'out-of-limits': 'A number or a list outside the limits of its field.',
  'unknown-word': 'A step with a word that names no step.',
  'many-words': 'Two step words in one item of the list.',
  'no-word': 'An item of the list that is no step.'
} as const

/** Problems of sense: each part is well-formed, and the whole does not work. */
const senseProblems = {
  'unknown-material': 'An amount is of something that `materials` does not list.',
  'unknown-input': 'A name in braces, or a count, that is no input and no item of a loop.',
  'unknown-moment': 'A moment that no step marks.',
  'moment-may-not-come': 'A moment that comes only in one answer, one branch of an until, or an otherwise.',
  'moment-comes-later': 'A wait for a moment that can only come after it.',
  'duplicate-id': 'Two steps, materials or inputs of one name.',
  'shares-over-whole': 'The shares of a material come to more than the whole.',
  'share-of-nothing': 'A share of a material whose whole amount is not given.',
  'rest-unclear': 'The rest of a material is taken more than once, or inside a loop or an answer.',
  'liquor-missing': 'Grams for a litre, or a bath to fill, where the liquor is not given.',
  'no-band': 'A depth or item of a loop where there is no such loop around the step.',
  'items-missing': 'A for each without items.',
  'items-backwards': 'A for each that counts from a higher number to a lower one.',
  'item-unknown': 'An amount for an item that the loop does not have, or none for one it has.',
  'nothing-to-wait-for': 'A wait with neither a time nor a condition.',
  'two-times': 'A wait with two lengths of time.',
  'least-over-most': 'A least that lies above its most.',
  'gap-backwards': 'A gap whose end comes before its beginning.',
  'away-with-heat-on': 'A wait away from the stove while the heat is on.',
  'cool-with-heat-on': 'A cooling while the heat is on.',
  'heat-left-on': 'A way through the protocol at whose end the heat is on.',
  'default-outside': 'A default that the limits or the choices of its own input refuse.',
  'too-many-steps': 'More than 500 steps written, or more than 2,000 once loops are written out.',
  'lasts-too-long': 'A protocol that takes more than 60 days.'
} as const

const own = { ...sourceProblems, ...structureProblems, ...senseProblems }

export type OwnProblemCode = keyof typeof own
export type ProblemCode = OwnProblemCode | QuantityProblemCode

/** What a code means, in one line; null where the code is of a quantity and says it itself. */
export function meaningOf(code: ProblemCode): string | null {
  return code in own ? own[code as OwnProblemCode] : null
}

export const problemCodes: readonly ProblemCode[] = [...(Object.keys(own) as OwnProblemCode[]), ...quantityProblemCodes]

/** Is it found before anything is read as a protocol? */
export function isOfSource(code: ProblemCode): boolean {
  return code in sourceProblems
}

/** Does the JSON Schema find it too? Everything else only the reader can tell. */
export function isStructural(code: ProblemCode): boolean {
  return code in structureProblems
}
