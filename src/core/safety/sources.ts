// Where the cautions come from, named once. "From memory" means that nobody looked it up for this table.
export const sources = {
  scald:
    'Moritz & Henriques, Studies of thermal injury, Am. J. Pathol. 23 (1947) 695-720, figures seen in secondary tables',
  practice: 'common practice, no source',
  memory: 'from memory',
  fire: 'NFPA and fire-service advice on cooking safety',
  hse: 'HSE, Dyes and dyeing (textiles pages), and HSE information sheet 5',
  craft: 'CPSC Publication 5015, Art and Craft Safety Guide',
  acetic: 'ICSC 0363, Acetic acid; CLP Annex VI index 607-002-00-6, band edges from memory',
  citric: 'ICSC 0704, Citric acid; classification from memory',
  hydros: 'HSE, sodium dithionite (hydros) in dyeing',
  microwave: 'FDA, Risk of burns from eruptions of hot water overheated in microwave ovens (2007)',
  metals: 'US EPA leaflet on mordants; from memory',
  waste: 'Leaflets after US EPA advice; Cornell water quality pages; local rules come first',
  spills: 'ICSC 0363 and 0704, spillage disposal',
  protocol: 'the protocol'
} as const
