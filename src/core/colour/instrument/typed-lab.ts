// L*, a* and b* as somebody typed them from an instrument.
import { type Answer, refuse } from '../../chemistry/answer.ts'
import { allOutside, unknownWord } from '../../chemistry/limits.ts'
import type { Lab } from '../lab.ts'
import { type White, whites } from '../white.ts'

/** L* 0 to 100, a* and b* -150 to 150, with the light and observer the instrument was set to. */
export function typedLab(typed: Lab & { white: White }): Answer<{ lab: Lab; white: White }> {
  const { l, a, b, white } = typed
  const word = unknownWord(white, 'white', 'the light and observer', whites)
  const problems = allOutside([
    [l, { field: 'l', name: 'L*', unit: '', least: 0, most: 100 }],
    [a, { field: 'a', name: 'a*', unit: '', least: -150, most: 150 }],
    [b, { field: 'b', name: 'b*', unit: '', least: -150, most: 150 }]
  ])
  if (word) problems.push(word)
  return problems.length > 0 ? refuse(...problems) : { lab: { l, a, b }, white }
}
