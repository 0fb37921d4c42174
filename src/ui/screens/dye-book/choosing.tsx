// Several batches chosen by a tap each, to be laid side by side.
import { COMPARE_LEAST, COMPARE_MOST } from '../../../core/record/compare.ts'
import type { Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import { compareRoute, repeatRoute } from './compare/routes.ts'

type Props = { kitchen: Kitchen; chosen: readonly string[]; close: () => void }

export function Choosing({ kitchen, chosen, close }: Props): preact.JSX.Element {
  const count = chosen.length
  return (
    <div class="book-choosing">
      <p role="status">
        {count === 0
          ? 'Tap the batches.'
          : `${count} chosen.${count > COMPARE_MOST ? ` Side by side go ${COMPARE_MOST} at most.` : ''}`}
      </p>
      <Pad
        look="solid"
        disabled={count < COMPARE_LEAST || count > COMPARE_MOST}
        onPress={() => kitchen.go(compareRoute(chosen))}
      >
        Side by side
      </Pad>
      <Pad disabled={count < COMPARE_LEAST} onPress={() => kitchen.go(repeatRoute(chosen))}>
        How well they repeat
      </Pad>
      <Pad onPress={close}>Leave choosing</Pad>
    </div>
  )
}
