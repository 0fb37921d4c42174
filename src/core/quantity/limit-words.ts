/** "at least 20 min" leaves the upper end open, "at most 3 min" the lower. */
export type Limit = 'exact' | 'least' | 'most'

const least = /^(?:at least|no less than|not less than|≥|>=) ?/i
const most = /^(?:at most|no more than|not more than|up to|≤|<=) ?/i

export function splitLimit(text: string): { limit: Limit; text: string } {
  if (least.test(text)) return { limit: 'least', text: text.replace(least, '') }
  if (most.test(text)) return { limit: 'most', text: text.replace(most, '') }
  return { limit: 'exact', text }
}
