/** Titles with the same key are one title: case, spaces around it and the way an accent is written make no other. */
export function titleKey(title: string): string {
  return title.trim().normalize('NFC').toLowerCase()
}
