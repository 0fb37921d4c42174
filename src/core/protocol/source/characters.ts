// Characters that show nothing, or make text show as something else than it is.

// C0 and C1 controls but tab and line ends, bidirectional marks and overrides, invisible joiners that spoof names,
// line separators, noncharacters. (Unicode Technical Report 36 on visual spoofing; list from memory.)
const forbidden =
  '\\u0000-\\u0008\\u000B\\u000C\\u000E-\\u001F\\u007F-\\u009F\\u061C\\u200B\\u200E\\u200F\\u2028-\\u202E\\u2060-\\u206F\\uFEFF\\uFFF9-\\uFFFB\\uFFFE\\uFFFF'

/** A text on one line that shows as what it is; as source, so that the JSON Schema carries it too. */
export const onOneLine = new RegExp(`^[^${forbidden}\\t\\n\\r]*$`, 'u')
/** The same with line ends. */
export const onSeveralLines = new RegExp(`^[^${forbidden}]*$`, 'u')

const oneForbidden = new RegExp(`[${forbidden}]|[\\uD800-\\uDFFF]`, 'u')

/** Where the first forbidden character stands; -1: none. */
export function forbiddenAt(text: string): number {
  return text.search(oneForbidden)
}

/** "U+202E" */
export function nameOfCharacter(text: string, at: number): string {
  return `U+${(text.codePointAt(at) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`
}
