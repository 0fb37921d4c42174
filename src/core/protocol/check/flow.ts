// What can only be seen by going through the whole: moments, heat, shares, gaps.

import type { Tried } from '../read/drafts.ts'
import type { Bearing } from '../read/header.ts'
import type { Steps } from '../read/steps.ts'
import type { Located } from '../source/located.ts'
import type { WrittenNode } from '../written.ts'
import { gapProblems } from './gaps.ts'
import { heatProblems } from './heat.ts'
import { liquorProblems } from './liquor.ts'
import { momentProblems } from './moments.ts'
import { shareProblems } from './shares.ts'

export function flowProblems(
  nodes: WrittenNode[],
  header: Bearing,
  names: ReadonlySet<string>,
  tried: Tried,
  steps: Steps,
  root: Located
): void {
  momentProblems(nodes, tried, steps)
  heatProblems(nodes, steps)
  shareProblems(nodes, header, tried, steps)
  liquorProblems(header, tried, steps)
  gapProblems(nodes, header.gaps, names, steps, root)
}
