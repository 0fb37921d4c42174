// Lengths of time in words, put into figures before they are read. The first that fits is taken.
const words: [RegExp, string][] = [
  [/\b(?:an|one) hour and a half\b/gi, '90 min'],
  [/\b(?:a|one) day and a half\b/gi, '36 h'],
  [/\bthree[ -]quarters of an hour\b/gi, '45 min'],
  [/\b(?:a )?quarter of an hour\b/gi, '15 min'],
  [/\b(?:half an|a half|half) hour\b/gi, '30 min'],
  [/\b(?:half a|a half) minute\b/gi, '30 s'],
  [/\b(?:half a|a half) day\b/gi, '12 h'],
  [/\b(?:an|a|one) (?=(?:second|minute|hour|day|week)\b)/gi, '1 ']
]

export function durationInFigures(text: string): string {
  return words.reduce((soFar, [pattern, figures]) => soFar.replace(pattern, figures), text)
}
