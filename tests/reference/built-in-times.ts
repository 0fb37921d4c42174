// What each built-in protocol should take, added up by hand: minutes, the step that is closed at the end of them, and
// why. The ranges in the comments of the trade are common practice, from memory, no source; values inside them are
// invented. Acts take no time in a rehearsal: the person answers at the cue.
//
// Cooling by itself goes by Newton's law in a room of 20 °C with k = 0.0112 a minute (computed for an open pot, not looked
// up), worked out by hand as ln((from - room) / (to - room)) / k:
//   100 to 40 °C 123.8   100 to 60 °C 61.9   95 to 60 °C 56.1   90 to 80 °C 13.8   90 to 40 °C 111.9
//   88 to 40 °C 109.3    85 to 40 °C 105.2   80 to 40 °C 98.1   100 to 60 °C in a room of 22 °C 64.2
// Drying is 12 h, overnight.

export type Piece = [minutes: number, closes: string, why: string]

const soak30: Piece = [30, 'soak', 'pre-soak: 30 min at the least']
const dry: Piece = [720, 'dry', 'dry: 12 h, overnight']

export const builtInTimes: Record<string, Piece[]> = {
  'level-immersion.yaml': [
    soak30,
    [10, 'hold', 'in at 35 °C, held 10 min'],
    [25, 'heat', '35 to 60 °C at 1 °C/min'],
    [30, 'heat-2', '60 to 90 °C at 1 °C/min'],
    [35, 'hold-3', 'held 30 to 45 min: 10, a turn, 25'],
    [111.9, 'cool', '90 to 40 °C'],
    dry
  ],
  'dip-gradient.yaml': [
    [30, 'alongside.yarn/soak', 'the soak is longer than the bath: 40 to 80 °C at 2 °C/min is 20'],
    [30, 'dip[5]/hold', 'five bands, 6 min each'],
    [10, 'wait', '10 min after all are in'],
    [10, 'heat', '80 to 90 °C at 1 °C/min'],
    [30, 'hold-2', 'held at 90 °C for 20 to 30 min: 20, acid, 10'],
    [111.9, 'cool', '90 to 40 °C'],
    dry
  ],
  'exit-gradient.yaml': [
    soak30,
    [20, 'heat', '40 to 80 °C at 2 °C/min'],
    [30, 'exit[5]/lift', 'whole for 6 min, then a band out every 6 min: five times 6'],
    [15, 'heat-3', 'the steamer, 40 to 100 °C at 4 °C/min'],
    [5, 'steam', 'full steam'],
    [15, 'check-2', 'the water is looked at 15 min after full steam'],
    [15, 'hold-2', 'steamed 30 min from full steam'],
    [123.8, 'cool', '100 to 40 °C'],
    dry
  ],
  'dip-cycles.yaml': [
    soak30,
    [20, 'heat', '40 to 80 °C at 2 °C/min'],
    [21, 'dips[1]/air', 'dip 5, drain 1, air 15'],
    [63, 'dips[4]/air', 'three times more'],
    [8, 'heat-2', '80 to 88 °C at 1 °C/min'],
    [20, 'hold', 'held 20 to 30 min'],
    [109.3, 'cool', '88 to 40 °C'],
    dry
  ],
  'low-water.yaml': [
    soak30,
    [10, 'hold', 'poured, left for 10 min'],
    [15, 'heat', 'fast: 25 to 85 °C at 4 °C/min'],
    [30, 'held[3]/check', 'held 30 min, the water looked at every 10'],
    [105.2, 'cool', '85 to 40 °C'],
    dry
  ],
  'hand-paint-steam.yaml': [
    [30, 'soak', 'acid soak: 30 min'],
    [15, 'wait', 'wrapped: 15 to 60 min'],
    [20, 'heat', 'the steamer, 20 to 100 °C at 4 °C/min'],
    [5, 'steam', 'full steam'],
    [15, 'check', 'the water is looked at 15 min after full steam'],
    [15, 'hold', 'steamed 30 to 45 min from full steam'],
    [240, 'cool', 'in its wrap, 4 h as the protocol expects'],
    dry
  ],
  'speckle.yaml': [
    soak30,
    [25, 'heat', '30 to 80 °C at 2 °C/min'],
    [5, 'hold', 'left 5 min'],
    [20, 'hold-2', 'held 20 to 30 min'],
    [98.1, 'cool', '80 to 40 °C'],
    dry
  ],
  'cold-pour.yaml': [
    soak30,
    [24, 'pours[3]/wait', 'three colours, 5 to 10 min each until it is clear there: 8'],
    [65, 'heat', '20 to 85 °C at 1 °C/min'],
    [30, 'hold', 'held at 85 to 90 °C for 30 min'],
    [105.2, 'cool', '85 to 40 °C'],
    dry
  ],
  'hot-pour.yaml': [
    soak30,
    [25, 'heat', '35 to 85 °C at 2 °C/min'],
    [18, 'pours[3]/wait', 'three colours, 5 to 10 min each until it is clear there: 6'],
    [30, 'hold', 'held at 85 to 90 °C for 30 min'],
    [105.2, 'cool', '85 to 40 °C'],
    dry
  ],
  'wound-cake.yaml': [
    [120, 'soak', 'a cake soaks for 2 h at the least'],
    [53, 'heat', '35 to 88 °C at 1 °C/min'],
    [50, 'turned[5]/turn', 'held 45 to 60 min, turned every 10'],
    [180, 'cool', 'the core cools 3 h at the least; the bath, 88 to 40 °C, is there after 109'],
    dry
  ],
  'striped-sections.yaml': [
    soak30,
    [58, 'heat', '30 to 88 °C at 1 °C/min'],
    [30, 'hold-2', 'held 30 min, places changed at half'],
    [109.3, 'cool', '88 to 40 °C'],
    dry
  ],
  'resist.yaml': [
    soak30,
    [10, 'hold', 'in at 35 °C, held 10 min, as for a level shade'],
    [25, 'heat', '35 to 60 °C at 1 °C/min'],
    [30, 'heat-2', '60 to 90 °C at 1 °C/min'],
    [30, 'hold-2', 'held 30 to 45 min'],
    [111.9, 'cool', '90 to 40 °C; opened only then'],
    dry
  ],
  'overdye.yaml': [
    [60, 'soak', 'wetted out fully: 1 to 12 h'],
    [10, 'hold', 'in at 30 °C, held 10 min'],
    [60, 'heat', 'a slow rise: 30 to 60 °C at 0.5 °C/min'],
    [56, 'heat-2', '60 to 88 °C at 0.5 °C/min'],
    [30, 'hold-2', 'held 30 to 45 min'],
    [109.3, 'cool', '88 to 40 °C'],
    dry
  ],
  'dilution-series.yaml': [
    soak30,
    [61.8, 'heat', 'the jars cool from 30 to 28.2 °C in the 17 min of filling; then to 90 °C at 1 °C/min'],
    [20, 'hold', 'half of the time'],
    [20, 'hold-2', 'the other half'],
    [111.9, 'cool', '90 to 40 °C'],
    dry
  ],
  'strike-series.yaml': [
    soak30,
    [20, 'heat', '40 to 80 °C at 2 °C/min'],
    [2, 'T2', 'tabs are drawn at 2,'],
    [3, 'T5', '5,'],
    [5, 'T10', '10,'],
    [10, 'T20', '20,'],
    [20, 'T40', '40'],
    [40, 'T80', 'and 80 min after all are in'],
    dry
  ],
  'sun-jar.yaml': [
    soak30,
    [2880, 'wait', '1 to 3 days in the sun: 2'],
    [65, 'heat', '20 to 85 °C at 1 °C/min'],
    [30, 'hold', 'a proper heat fix: 30 min'],
    [105.2, 'cool', '85 to 40 °C'],
    dry
  ],
  'oven.yaml': [
    soak30,
    [55, 'rise', '30 to 85 °C at 1 °C/min'],
    [25, 'check', 'looked at half-way'],
    [20, 'hold-2', '45 to 60 min after the goods have reached 85 °C'],
    [105.2, 'cool', '85 to 40 °C'],
    dry
  ],
  'microwave.yaml': [
    [30, 'soak', 'acid soak: 30 min'],
    [4, 'bursts[1]/wait', 'heat 2 min, rest 2 to 3 min'],
    [8, 'bursts[3]/wait', 'three or four times'],
    [10, 'hold', 'left standing'],
    [105.2, 'cool', '85 to 40 °C'],
    dry
  ],
  'scour-wool.yaml': [[5, 'heat', '40 to 50 °C at 2 °C/min'], [30, 'hold', 'wool at 50 to 60 °C for 30 min'], dry],
  'scour-cellulose.yaml': [
    [32.5, 'heat', '30 to 95 °C at 2 °C/min'],
    [120, 'hold-2', 'a simmer of 2 h'],
    [56.1, 'cool', '95 to 60 °C'],
    dry
  ],
  'alum-mordant.yaml': [
    [60, 'soak', 'wetted out'],
    [45, 'heat', 'a rise of 45 min: 35 to 80 °C at 1 °C/min'],
    [60, 'hold', 'held for 60 min'],
    [480, 'cool', 'cooled overnight: 8 h; 80 to 30 °C is there after 160 min']
  ],
  'natural-dye.yaml': [
    [720, 'wait', 'the stuff soaks for 12 h'],
    [30, 'simmer-up', '20 to 80 °C at 2 °C/min'],
    [45, 'simmered', 'simmered 30 to 60 min'],
    [98.1, 'cool', '80 to 40 °C'],
    [40, 'rise', 'entered tepid; a rise of about 45 min: 40 to 80 °C at 1 °C/min'],
    [45, 'dyed', 'held 45 to 60 min'],
    [480, 'cool-2', 'cooled overnight: 8 h'],
    dry
  ],
  'reactive-exhaust.yaml': [
    soak30,
    [30, 'alongside.goods/repeat[3]/turn', 'salt and dye: 30 min, turning'],
    [5, 'heat', '30 to 35 °C at 1 °C/min'],
    [10, 'S2', 'soda in two portions 10 min apart'],
    [35, 'hold-3', '45 to 60 min from the first soda'],
    [16.7, 'heat-3', '50 to 100 °C at 3 °C/min'],
    [10, 'hold-4', 'soaped at the boil, 10 min'],
    [61.9, 'cool', '100 to 60 °C'],
    dry
  ],
  'reactive-batch.yaml': [
    [15, 'soak', 'soda soak: 15 min'],
    [720, 'batched', 'batched 12 to 24 h'],
    [16.7, 'heat', '50 to 100 °C at 3 °C/min'],
    [10, 'hold', 'soaped at the boil, 10 min'],
    [64.2, 'cool', '100 to 60 °C in a room of 22 °C'],
    dry
  ],
  'reactive-low-water.yaml': [
    soak30,
    [15, 'wait', 'left to run 15 to 60 min'],
    [60, 'wait-2', '60 min from the soda'],
    [16.7, 'heat', '50 to 100 °C at 3 °C/min'],
    [10, 'hold', 'soaped at the boil, 10 min'],
    [64.2, 'cool', '100 to 60 °C in a room of 22 °C'],
    dry
  ],
  'indigo-dip.yaml': [
    [60, 'soak', 'wetted out: 1 h'],
    [18, 'dips[1]/air', 'dip 1 to 5 min: 3; air 10 to 20 min: 15'],
    [54, 'dips[4]/air', 'three times more'],
    [30, 'air', 'the last airing is long'],
    [10, 'hold', 'sour'],
    dry
  ],
  'lab-dip-exhaust.yaml': [
    soak30,
    [10, 'cold', '10 min at 23 °C (published)'],
    [37, 'rise-60', '23 to 60 °C at 1 °C/min (published)'],
    [10, 'at-60', '10 min (published)'],
    [30, 'rise-90', '60 to 90 °C at 1 °C/min (published)'],
    [30, 'at-90', '30 min (published)'],
    [13.8, 'cool', '90 to 80 °C'],
    dry
  ],
  'lab-dip-boil.yaml': [
    soak30,
    [10, 'wetted', '40 °C for 10 min'],
    [58, 'rise', '40 to 98 °C at 1 °C/min'],
    [45, 'top', 'held 45 min'],
    [19, 'cooled', '98 to 60 °C at 2 °C/min'],
    dry
  ]
}
