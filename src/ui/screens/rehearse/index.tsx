// A rehearsal: the Stove with pots that are not there, on a clock as fast as one likes.
import { useEffect, useState } from 'preact/hooks'
import type { Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { type PlannedRehearsal, plannedOf } from '../../parts/rehearsal-route.ts'
import type { RehearsalRun } from '../../rehearsing.ts'
import { Bar } from './bar.tsx'
import { Choose } from './choose.tsx'
import { findRehearsal } from './find.ts'
import { Report } from './report.tsx'
import './style.css'

type Props = {
  kitchen: Kitchen
  /** The Stove, given pots of the rehearsal; a screen may not ask another one. */
  stove: (kitchen: Kitchen, onMenu: () => void) => preact.JSX.Element
}

export function Rehearse({ kitchen, stove }: Props): preact.JSX.Element {
  const route = kitchen.route.value
  const planned = plannedOf(route)
  if (planned === null) return <Choose kitchen={kitchen} />
  return <Running key={route} kitchen={kitchen} planned={planned} stove={stove} />
}

function Running({ kitchen, planned, stove }: Props & { planned: PlannedRehearsal }): preact.JSX.Element {
  const [again, setAgain] = useState(0)
  const { run, say } = useRun(kitchen, planned, again)
  const [menu, setMenu] = useState(false)
  if (run === null) {
    return (
      <Page
        title="Rehearsal"
        actions={say === null ? null : <Pad onPress={() => kitchen.go('#/rehearse')}>Choose another</Pad>}
      >
        <p role="status">{say ?? 'Setting out the pots.'}</p>
      </Page>
    )
  }
  const report = run.report.value
  if (report !== null) {
    return (
      <div class="rehearse-page">
        <Report kitchen={kitchen} report={report} planned={planned} again={() => setAgain(again + 1)} />
      </div>
    )
  }
  return (
    <div class="rehearse">
      <Bar kitchen={kitchen} run={run} menu={menu} setMenu={setMenu} />
      <div class="rehearse-stove">{stove(run.kitchen, () => setMenu(true))}</div>
    </div>
  )
}

type Begun = { run: RehearsalRun | null; say: string | null }

function useRun(kitchen: Kitchen, planned: PlannedRehearsal, again: number): Begun {
  const [begun, setBegun] = useState<Begun>({ run: null, say: null })
  useEffect(() => {
    let here = true
    let run: RehearsalRun | null = null
    setBegun({ run: null, say: null })
    const begin = async (): Promise<Begun> => {
      const found = await findRehearsal(kitchen, planned)
      if (!found.ok) return { run: null, say: found.say }
      if (!kitchen.rehearse) return { run: null, say: 'A rehearsal can’t hold another one. End it first.' }
      run = await kitchen.rehearse(found.wish)
      return { run, say: null }
    }
    begin().then(
      (next) => (here ? setBegun(next) : next.run?.close()),
      () => here && setBegun({ run: null, say: 'The rehearsal could not be loaded. Reload the page.' })
    )
    return () => {
      here = false
      run?.close()
    }
    // The route is the key of the whole: what is planned does not change under it.
  }, [kitchen, again])
  return begun
}

export default Rehearse
