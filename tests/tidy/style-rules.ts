// src/ui/tokens.css is the only place that names colours, and the only one that names the sizes and faces of type.
import type { File } from './tree.ts'

const place = 'src/ui/tokens.css'

const colour = /#[0-9a-f]{3,8}\b|\b(rgba?|hsla?|hwb|lab|lch|oklab|oklch)\(/i

/** A face or an absolute size of type that comes from no token. What is relative to the text around it (em, %) may stand. */
const ownType =
  /^\s*(font-family\s*:(?!\s*(var\(|inherit))|font(-size)?\s*:(?!.*var\(--).*\d(px|rem|pt|mm|cm|v[wh]|vmin|vmax|cq\w+)\b)/

const linesOf = (text: string): string[] =>
  text.replace(/\/\*[\s\S]*?\*\//g, (comment) => comment.replace(/[^\n]/g, ' ')).split('\n')

export const styleComplaints = ({ path, text }: File): string[] => {
  if (!path.startsWith('src/ui/') || path === place) return []
  if (path.endsWith('.css')) {
    return linesOf(text).flatMap((line, index) => {
      // An id selector looks like a colour; a colour stands behind a colon.
      const value = line.slice(line.indexOf(':') + 1)
      if (line.includes(':') && colour.test(value)) return [`${path}:${index + 1} names a colour: ${place} does`]
      return ownType.test(line) ? [`${path}:${index + 1} names a size or face of type: ${place} does`] : []
    })
  }
  if (!path.endsWith('.tsx')) return []
  return linesOf(text).flatMap((line, index) =>
    /['"`]#[0-9a-f]{3,8}['"`]|['"`](rgba?|hsla?|oklch|oklab)\(/i.test(line)
      ? [`${path}:${index + 1} names a colour: ${place} does`]
      : []
  )
}
