// The Stove with pots on it: what comes next for each, and the one pad that answers.
import { useCallback, useEffect, useLayoutEffect, useMemo } from 'preact/hooks'
import type { Kitchen } from '../../kitchen.ts'
import { useWindow } from '../../parts/box.ts'
import { later } from '../../parts/later.tsx'
import { useSettled } from '../../parts/settled.ts'
import { calledBy } from './asks.ts'
import { Bath } from './bath.tsx'
import { bathView } from './bath-view.ts'
import { Bench } from './bench.tsx'
import { type Calls, keyOf, sortCalls } from './calls.ts'
import { ClashStrip, useClash } from './clash-strip.tsx'
import { HandsLine } from './hands-line.tsx'
import { Header } from './header.tsx'
import { useHeadset } from './headset.ts'
import { useKeys } from './keys.ts'
import { layoutFor } from './layout.ts'
import { handsWanted, livePots, needsStove } from './live.ts'
import { MissedPanel } from './missed-panel.tsx'
import { PotRow } from './pot-row.tsx'
import { pressCall, pressPad } from './press.ts'
import { Rod } from './rod.tsx'
import { bringUp, makeStage, openNow, type Stage, type Via } from './stage.ts'
import { CallStrips, SaidStrip, UndoStrip } from './stove-strips.tsx'
import { Teller } from './teller.tsx'
import { useWhistle } from './whistle.ts'

const Call = later(() => import('./call.tsx').then((m) => ({ default: m.Call })))
const OpenSheet = later(() => import('./sheets/open-sheet.tsx').then((m) => ({ default: m.OpenSheet })))

export function WithPots({ kitchen, onMenu }: { kitchen: Kitchen; onMenu: () => void }): preact.JSX.Element {
  const stage = useMemo(() => makeStage(kitchen), [kitchen])
  const places = usePlaces(kitchen, stage)
  const calls = useCalls(kitchen, stage)
  const away = kitchen.missed.value.length > 0
  const deeds = useDeeds(kitchen, stage, places, away ? noCalls : calls)
  useKeys(deeds)
  const { rod, bench, shown } = places
  useWhistle({
    kitchen,
    stage,
    calls: away ? noCalls : calls,
    shown,
    layoutKey: deeds.layoutKey,
    act: deeds.act,
    again: deeds.again
  })
  useHeadset({ kitchen, stage, full: away ? null : calls.full, layoutKey: deeds.layoutKey, again: deeds.again })
  // After the first drawing, and long before the first call.
  useEffect(() => {
    Call.fetchNow()
    OpenSheet.fetchNow()
  }, [])
  useNamedPot(kitchen, stage)
  const clash = useClash(kitchen, stage)
  const size = useWindow()
  // What stands on the bench has no place under the rod: it is shown by itself.
  const layout = layoutFor(size, rod.length, shown !== null && bench.includes(shown))
  // On its side a phone gives four ninths to the strands: style.css.
  const columnPx = (layout === 'side' ? size.width / 2.25 : size.width) / Math.max(1, rod.length)
  const full = away ? null : calls.full
  return (
    <>
      <div class="stove" data-layout={layout} data-pots={rod.length} inert={full !== null}>
        <div class="stove-strips">
          <MissedPanel kitchen={kitchen} />
          <CallStrips kitchen={kitchen} stage={stage} calls={full ? [] : calls.strips} shown={shown} />
          <SaidStrip kitchen={kitchen} stage={stage} />
          <UndoStrip kitchen={kitchen} stage={stage} />
          {layout === 'whole' ? <ClashStrip stage={stage} clash={clash} /> : null}
        </div>
        <Header kitchen={kitchen} onMenu={onMenu}>
          <HandsLine kitchen={kitchen} clash={layout === 'whole' ? null : clash} />
        </Header>
        <Rod kitchen={kitchen} pots={rod} />
        {layout === 'whole' ? (
          <div class="baths">
            {rod.map((potId) => (
              <Bath key={potId} kitchen={kitchen} stage={stage} potId={potId} head shown={potId === shown} />
            ))}
          </div>
        ) : (
          <>
            {rod.length > 1 || (rod.length === 1 && shown !== rod[0]) ? (
              <PotRow kitchen={kitchen} stage={stage} pots={rod} shown={shown} columnPx={columnPx} />
            ) : null}
            {shown === null ? null : (
              <Bath key={shown} kitchen={kitchen} stage={stage} potId={shown} head={rod.length < 2} shown />
            )}
          </>
        )}
        <Bench kitchen={kitchen} stage={stage} pots={bench} shown={shown} />
      </div>
      {full ? <FullCall kitchen={kitchen} stage={stage} calls={calls} /> : null}
      {openNow(stage) ? <OpenSheet kitchen={kitchen} stage={stage} /> : null}
      <Teller kitchen={kitchen} full={full} again={stage.saidAgain.value} />
    </>
  )
}

function FullCall({
  kitchen,
  stage,
  calls
}: {
  kitchen: Kitchen
  stage: Stage
  calls: Calls
}): preact.JSX.Element | null {
  const { full, strips } = calls
  if (!full) return null
  const key = keyOf(full)
  return (
    <Call key={key} kitchen={kitchen} stage={stage} call={full} callKey={key}>
      <CallStrips kitchen={kitchen} stage={stage} calls={strips} shown={null} />
      <SaidStrip kitchen={kitchen} stage={stage} />
      {stage.answered.value?.potId === full.pot.potId ? null : <UndoStrip kitchen={kitchen} stage={stage} />}
    </Call>
  )
}

/** "#/stove/<pot>", as a notice opens it: that pot is large, and where it calls its call comes first. */
function useNamedPot(kitchen: Kitchen, stage: Stage): void {
  const named = /^#\/stove\/(.+)$/.exec(kitchen.route.value)?.[1]
  useLayoutEffect(() => {
    if (named === undefined) return
    const pot = livePots(kitchen.pots.peek()).find(({ potId }) => encodeURIComponent(potId) === named)
    if (pot) bringUp(stage, pot)
    // So that the same notice leads here once more.
    kitchen.go('#/stove')
  }, [kitchen, stage, named])
}

type Places = { rod: string[]; bench: string[]; shown: string | null }

/** Where each pot is, in the fixed order of their start; which one is large. */
function usePlaces(kitchen: Kitchen, stage: Stage): Places {
  return useSettled((): Places => {
    const pots = livePots(kitchen.pots.value)
    const rod = pots.filter(needsStove)
    const bench = pots.filter((pot) => !needsStove(pot)).map((pot) => pot.potId)
    const chosen = stage.shown.value
    const next = handsWanted(rod, kitchen.now.value)[0]?.pot.potId ?? rod[0]?.potId ?? bench[0] ?? null
    const known = chosen !== null && pots.some((pot) => pot.potId === chosen)
    return { rod: rod.map((pot) => pot.potId), bench, shown: known ? chosen : next }
  })
}

/** The calls now; the keys settle, the pots behind them come from the store. */
function useCalls(kitchen: Kitchen, stage: Stage): Calls {
  const keys = useSettled(() => {
    const { full, strips } = sortCalls(
      livePots(kitchen.pots.value),
      kitchen.now.value,
      stage.called.peek(),
      stage.aside.value
    )
    return { full: full && keyOf(full), strips: strips.map(keyOf) }
  })
  useEffect(() => {
    stage.called.value = keys.full
  }, [keys.full, stage])
  const all = livePots(kitchen.pots.value).flatMap((pot) => pot.alerts.map((alert) => ({ pot, alert })))
  const find = (key: string): Calls['strips'] => all.filter((call) => keyOf(call) === key).slice(0, 1)
  return { full: keys.full === null ? null : (find(keys.full)[0] ?? null), strips: keys.strips.flatMap(find) }
}

/** While what was missed lies over the pots nobody answers a call unseen. */
const noCalls: Calls = { full: null, strips: [] }

function useDeeds(kitchen: Kitchen, stage: Stage, places: Places, calls: Calls): Parameters<typeof useKeys>[0] {
  const { rod, bench, shown } = places
  const actsOn = calls.full?.pot.potId ?? shown
  const all = [...rod, ...bench]
  const act = useCallback(
    (via: Via) => {
      const pot = livePots(kitchen.pots.peek()).find((p) => p.potId === actsOn)
      if (!pot || pot.readOnly || stage.busy.peek()) return
      if (calls.full) {
        // Among answers a foot chooses: keys.ts.
        if (calledBy(pot.state, calls.full.alert).ask?.kind !== 'question') pressCall(stage, calls.full, via)
        return
      }
      pressPad(stage, pot.potId, bathView(pot, kitchen.now.peek(), kitchen.settings.peek()).pad, via)
    },
    [kitchen, stage, actsOn, calls.full]
  )
  const order = all.join(' ')
  const select = useCallback(
    (no: number) => {
      const potId = order.split(' ')[no - 1]
      if (potId) stage.shown.value = potId
    },
    [stage, order]
  )
  const again = useCallback(() => {
    if (calls.full) {
      stage.saidAgain.value += 1
      kitchen.sayAgain?.(calls.full.pot.potId, calls.full.alert.key)
      return
    }
    const ids = order.split(' ')
    const at = ids.indexOf(stage.shown.peek() ?? shown ?? '')
    stage.shown.value = ids[(at + 1) % ids.length] || null
  }, [kitchen, stage, order, shown, calls.full])
  const open = openNow(stage)
  const layoutKey = `${actsOn} ${calls.full ? keyOf(calls.full) : ''} ${open ? JSON.stringify(open) : ''}`
  return { act, again, select, layoutKey, learned: kitchen.settings.value, hand: stage.hand }
}
