/** A caution as it is shown. `say`: the whole of it, for its first use of the day; `short`: one line, from then on.
 * `source`: where it comes from; "from memory" and "common practice, no source" are said so. */
export type Caution = { id: string; title: string; say: string; short: string; source: string }

/** Closes every list of cautions. */
export const closingLine = "Follow the product's safety data sheet and local rules. This is not a safety assessment."

/** Has the dyer to read it in full, or is one line enough? `shownToday`: ids of the cautions already shown today. */
export function inFull(caution: Caution, shownToday: Iterable<string>): boolean {
  for (const id of shownToday) if (id === caution.id) return false
  return true
}
