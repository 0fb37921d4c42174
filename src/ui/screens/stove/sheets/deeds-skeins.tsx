import { useState } from 'preact/hooks'
import { showMass } from '../../../../core/quantity/show-mass.ts'
import { Pad } from '../../../parts/pad.tsx'
import { livePots, nameOf } from '../live.ts'
import type { Deed, DeedProps } from './deed.ts'

type TagsProps = DeedProps & { tags: string[]; onTags: (tags: string[]) => void; of?: DeedProps['pot'] }

function Tags({ kitchen, pot, tags, onTags, of = pot }: TagsProps): preact.JSX.Element {
  return (
    <div class="sheet-pads">
      {of.state.pot.skeins.map(({ tag, massG }) => {
        const on = tags.includes(tag)
        return (
          <Pad
            key={tag}
            kind="lesser"
            selected={on}
            onPress={() => onTags(on ? tags.filter((t) => t !== tag) : [...tags, tag])}
          >
            {tag}, {showMass(massG, kitchen.settings.value)}
          </Pad>
        )
      })}
    </div>
  )
}

function moving(type: 'PutSkeinsIn' | 'TakeSkeinsOut', say: string): Deed['Form'] {
  return function Moving(props: DeedProps) {
    const { pot, send, stage } = props
    const [tags, setTags] = useState(pot.state.pot.skeins.map((s) => s.tag))
    return (
      <>
        <Tags {...props} tags={tags} onTags={setTags} />
        <Pad
          kind="main"
          look="solid"
          layoutKey={type}
          disabled={tags.length === 0 || stage.busy.value}
          onPress={() => send({ type, tags })}
        >
          {nameOf(pot)}: {say}
        </Pad>
      </>
    )
  }
}

/** Both pots learn of it, each in its own record. */
function Swap(props: DeedProps): preact.JSX.Element {
  const { kitchen, pot, stage } = props
  const others = livePots(kitchen.pots.value).filter((p) => p.potId !== pot.potId)
  const [other, setOther] = useState(others[0] ?? null)
  const [gave, setGave] = useState<string[]>([])
  const [got, setGot] = useState<string[]>([])
  if (!other) return <p>No other pot is on.</p>
  const swap = async (): Promise<void> => {
    const mine = pot.state.pot.skeins.filter((s) => gave.includes(s.tag))
    const theirs = other.state.pot.skeins.filter((s) => got.includes(s.tag))
    const here = await stage.send(pot.potId, { type: 'SwapSkeins', withPotId: other.potId, gave, got: theirs })
    if (!here.ok) return
    const there = await stage.send(other.potId, { type: 'SwapSkeins', withPotId: pot.potId, gave: got, got: mine })
    if (there.ok) stage.close()
    else stage.said.value = { potId: pot.potId, say: `${nameOf(other)} did not take it: ${there.say}` }
  }
  return (
    <>
      <h3>From {nameOf(pot)}</h3>
      <Tags {...props} tags={gave} onTags={setGave} />
      <h3>Swapped with</h3>
      <div class="sheet-pads">
        {others.map((each) => (
          <Pad key={each.potId} kind="lesser" selected={each.potId === other.potId} onPress={() => setOther(each)}>
            {nameOf(each)}
          </Pad>
        ))}
      </div>
      <h3>From {nameOf(other)}</h3>
      <Tags {...props} of={other} tags={got} onTags={setGot} />
      <Pad
        kind="main"
        look="solid"
        layoutKey="swap"
        disabled={gave.length + got.length === 0 || stage.busy.value}
        onPress={() => void swap()}
      >
        Swapped
      </Pad>
    </>
  )
}

const hasSkeins = ({ state }: DeedProps['pot']): boolean => state.pot.skeins.length > 0

export const skeinDeeds: Deed[] = [
  { id: 'in', say: 'Skeins in', group: 'Skeins', fits: hasSkeins, Form: moving('PutSkeinsIn', 'skeins are in') },
  { id: 'out', say: 'Skeins out', group: 'Skeins', fits: hasSkeins, Form: moving('TakeSkeinsOut', 'skeins are out') },
  { id: 'swap', say: 'Skeins swapped', group: 'Skeins', fits: hasSkeins, Form: Swap }
]
