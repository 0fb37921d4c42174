// What a dyer is shown beside a result on demand: how it came about and where that comes from.

/** A sum may have several lines. */
export type About = { formula: string; source: string }

const definition = 'a definition'
const proportion = 'proportion'
const practice = 'common practice, no source'
const textbooks = 'the usual formula of laboratory dyeing texts'
const equilibria =
  "equilibria of acetic, citric and carbonic acid with Davies' activity coefficients; constants after Goldberg, Kishore & " +
  'Lennen 2002 (from memory) and Plummer & Busenberg 1982; agrees with PHREEQC 3.8.9 (USGS)'

/** By the name of the function that works it out. */
export const about = {
  bathPh: { formula: 'the pH at which all charges in the bath balance; without goods', source: equilibria },
  acidFor: { formula: 'the amount at which the bath has that pH; without goods', source: equilibria },
  boilingPointC: {
    formula: 'pressure at the altitude; temperature at which water boils under it',
    source: 'US Standard Atmosphere 1976; IAPWS-IF97, region 4'
  },
  stockFor: { formula: 'dye g = goods g × % owf ÷ 100\nstock mL = goods g × % owf ÷ % w/v', source: textbooks },
  depthOf: { formula: '% owf = stock mL × % w/v ÷ goods g', source: textbooks },
  makeUpStock: { formula: 'powder g = % w/v × mL ÷ 100, made up to the mL', source: definition },
  dilute: { formula: 'C1 × V1 = C2 × V2', source: 'what is dissolved stays' },
  mixParts: { formula: 'of each dye: its parts ÷ all parts of the depth', source: proportion },
  waterFor: {
    formula: 'liquor mL = ratio × goods g\nwater mL = liquor - stock - acid - water in the goods, where it is counted',
    source: textbooks
  },
  carriedML: { formula: 'carried mL = wet g - dry g', source: '1 g of water taken as 1 mL' },
  ratioOf: { formula: 'ratio = liquor mL ÷ goods g', source: definition },
  acidDose: {
    formula: 'acid g = goods g × % owf ÷ 100\nmL = g × 100 ÷ % w/v, or g × 100 ÷ (% w/w × g/mL)',
    source: definition
  },
  citricForAcetic: {
    formula: 'as many protons given off at that pH; activities left out',
    source: 'mass action; constants after Goldberg, Kishore & Lennen 2002 (from memory)'
  },
  saltFor: { formula: 'g = goods g × % owf ÷ 100\ng/L = % owf × 10 ÷ ratio', source: proportion },
  smallDose: { formula: 'error % = doubt of the syringe ÷ mL × 100', source: practice },
  dilutionSeries: { formula: 'each depth is the one before ÷ the factor', source: practice },
  scaleRecipe: {
    formula: 'by the goods: × new g ÷ old g\nby the litre: × new liquor ÷ old liquor',
    source: 'proportion; that ratio and pH change the uptake: Golob et al., Text. Res. J. 74 (2004) 587'
  },
  dryG: { formula: 'dry g = g ÷ (1 + regain ÷ 100)', source: 'a definition (ASTM D2118)' },
  conditionedG: { formula: 'g = dry g × (1 + regain ÷ 100)', source: 'a definition (ASTM D2118)' },
  regainPercent: { formula: 'regain % = (g - dry g) ÷ dry g × 100', source: 'a definition (ASTM D2118)' },
  contentOfRegain: { formula: 'content % = regain ÷ (100 + regain) × 100', source: 'a definition (ASTM D2118)' },
  regainOfContent: { formula: 'regain % = content ÷ (100 - content) × 100', source: 'a definition (ASTM D2118)' },
  rampMin: { formula: 'min = difference in °C ÷ °C/min', source: definition },
  rampPowerKW: {
    formula: 'kW = (4.186 × L + 1.4 × kg wool + pot kJ/K) × °C/min ÷ 60',
    source: 'heat capacities of water, and of wool (from memory)'
  },
  rampRate: {
    formula: '°C/min = kW × 60 ÷ (4.186 × L + 1.4 × kg wool + pot kJ/K)',
    source: 'heat capacities of water, and of wool (from memory)'
  },
  timeToTemperature: {
    formula:
      'T = end + (start - end) × e^(-rate × min), with start, end and rate fitted to the readings\nthe 95 % interval is that of the profile likelihood',
    source: "Newton's law of heating and cooling; least squares, held against SciPy"
  },
  exhaustionFromReadings: {
    formula: '% = 100 × (1 - reading now × mL now ÷ (reading at the start × mL at the start))',
    source: 'Beer-Lambert law; the dye stays'
  },
  exhaustionFromLadder: { formula: '% = 100 - the cup it looks like, to about one rung', source: practice },
  diffusedFraction: {
    formula: "Crank's series for a fibre in a stirred bath; a model, not a law",
    source: 'Crank, The Mathematics of Diffusion, 2nd ed. 1975, ch. 5 (from memory)'
  },
  longerHold: {
    formula: 'longer min = hold min × (rate as meant ÷ rate at the boil - 1)',
    source:
      "Arrhenius' law; 75 kJ/mol for an acid dye in nylon, 107 for lac on wool (Wei et al., J. Chemistry 2013, 546839); " +
      'a model, not a law'
  },
  rateAt: { formula: 'k = k0 × e^(Ea ÷ R × (1 ÷ T0 - 1 ÷ T))', source: "Arrhenius' law" },
  halfTimeMin: { formula: 'min = ln 2 ÷ k', source: 'first-order kinetics; a model, not a law' },
  exhaustionAfter: {
    formula: '% = end % × (1 - e^-(k added up over the time))',
    source: 'first-order kinetics; a model, not a law'
  }
} as const satisfies Record<string, About>
