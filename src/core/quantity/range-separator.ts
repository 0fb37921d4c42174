/** What stands between two ends of a range: 25..30, 25-30, 25–30, 25 to 30. A true minus sign never separates. */
const separator = /^ ?(?:\.{2,3}|[…–—-]| to ) ?/i

/** How many characters of range separator the text begins with; 0 for none. */
export function separatorLength(text: string): number {
  return separator.exec(text)?.[0].length ?? 0
}
