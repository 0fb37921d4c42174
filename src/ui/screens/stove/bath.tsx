// A pot's bath: its name, what it is at, the giant time, one mark, one pad, and the lesser pads under it.
import type { Kitchen } from '../../kitchen.ts'
import { bathColour } from '../../parts/bath-colour.ts'
import { FitText } from '../../parts/fit-text.tsx'
import { HoldPad } from '../../parts/hold-pad.tsx'
import { later } from '../../parts/later.tsx'
import { Pad } from '../../parts/pad.tsx'
import { useSettled } from '../../parts/settled.ts'
import { AgoRow } from './ago-row.tsx'
import { type BathView, bathView, type Gauge } from './bath-view.ts'
import { livePots } from './live.ts'
import { pressPad } from './press.ts'
import { cueNow, type Stage } from './stage.ts'
import { GiantTime, Left, OutOfBath } from './time-leaf.tsx'
import { undoName } from './undo-say.ts'
import './bath.css'

const ExpectedLines = later(() => import('./expected-lines.tsx').then((m) => ({ default: m.ExpectedLines })))

type Props = { kitchen: Kitchen; stage: Stage; potId: string; head: boolean; shown: boolean }

/** `head`: the bath says its name itself; where one bath is large, the row over it does. */
export function Bath({ kitchen, stage, potId, head, shown }: Props): preact.JSX.Element | null {
  const view = useSettled((): (BathView & { cued: boolean }) | null => {
    const pot = livePots(kitchen.pots.value).find((p) => p.potId === potId)
    if (!pot) return null
    const seen = bathView(pot, kitchen.now.value, kitchen.settings.value)
    return { ...seen, cued: seen.duePath !== null && cueNow(kitchen, potId, seen.duePath) !== null }
  })
  const pot = livePots(kitchen.pots.value).find((p) => p.potId === potId)
  if (!view || !pot) return null
  return (
    <section
      class="bath"
      aria-label={view.name}
      data-status={view.status}
      data-shown={shown ? '' : undefined}
      style={{ '--bath': bathColour(pot.state.pot.colour) }}
    >
      {head ? <FitText text={view.name} mostPx={40} leastPx={18} tag="h2" className="bath-name" /> : null}
      <FitText text={view.act} mostPx={48} leastPx={22} className="bath-act" />
      <div class="bath-middle">
        <GiantTime kitchen={kitchen} time={view.time} mostPx={132} />
        {view.gauge ? <DipGauge gauge={view.gauge} /> : null}
      </div>
      <Lines kitchen={kitchen} view={view} />
      {pot.readOnly ? (
        <p class="bath-line">This record is read only: {pot.readOnly}</p>
      ) : (
        <Pads stage={stage} potId={potId} view={view} undo={pot.state.undo === null ? null : undoName(pot.state)} />
      )}
    </section>
  )
}

function Lines({ kitchen, view }: { kitchen: Kitchen; view: BathView }): preact.JSX.Element {
  return (
    <div class="bath-lines">
      {view.out ? <OutOfBath kitchen={kitchen} {...view.out} /> : null}
      {view.detail ? <p class="bath-line">{view.detail}</p> : null}
      {view.mark ? (
        <p class="bath-mark number" data-stale={view.mark.stale ? '' : undefined}>
          {view.mark.say}
        </p>
      ) : null}
      {view.expected || view.ph ? (
        <ExpectedLines expected={view.expected} ph={view.ph} units={kitchen.settings.value} />
      ) : null}
      {view.chips.map((chip) => (
        <p class="bath-chip" key={chip.path}>
          {chip.say}
          {chip.atMs === null ? null : (
            <>
              , <Left kitchen={kitchen} atMs={chip.atMs} />
            </>
          )}
        </p>
      ))}
    </div>
  )
}

/** How deep the skein hangs, and how deep it goes next. */
function DipGauge({ gauge }: { gauge: Gauge }): preact.JSX.Element {
  const to = gauge.to ?? gauge.now
  return (
    <div class="gauge" role="img" aria-label={`Depth: ${gauge.label}`}>
      <span class="gauge-tube">
        <span class="gauge-to" style={{ height: `${to * 100}%` }} />
        <span class="gauge-now" style={{ height: `${gauge.now * 100}%` }} />
      </span>
      <span class="gauge-say number">{gauge.label}</span>
    </div>
  )
}

type PadsProps = { stage: Stage; potId: string; view: BathView & { cued: boolean }; undo: string | null }

function Pads({ stage, potId, view, undo }: PadsProps): preact.JSX.Element {
  const { pad, name, duePath } = view
  const say = pad.kind === 'ask' ? pad.ask.say : pad.say
  const key = `${potId} ${JSON.stringify(pad)}`
  const act = pad.kind === 'ask' && pad.ask.kind !== 'question'
  return (
    <div class="bath-pads">
      {duePath !== null && act ? <AgoRow stage={stage} cued={view.cued} /> : null}
      <Pad
        kind="main"
        look="bath"
        layoutKey={key}
        className="bath-pad"
        disabled={stage.busy.value}
        onPress={() => pressPad(stage, potId, pad)}
      >
        <FitText text={`${name}: ${say}`} mostPx={38} leastPx={18} tag="span" className="pad-fit" />
      </Pad>
      <div class="bath-lesser">
        {duePath === null ? null : (
          <Pad
            kind="lesser"
            look="bath"
            layoutKey={key}
            onPress={() => (stage.open.value = { kind: 'not-yet', potId, path: duePath })}
          >
            Not yet
          </Pad>
        )}
        {undo !== null ? (
          <Pad
            kind="lesser"
            look="bath"
            layoutKey={key}
            label={`Undo ${undo}`}
            onPress={() => void stage.send(potId, { type: 'Undo' })}
          >
            Undo
          </Pad>
        ) : null}
        <Pad
          kind="lesser"
          look="bath"
          label={`${name}: more`}
          onPress={() => (stage.open.value = { kind: 'more', potId })}
        >
          More
        </Pad>
        {view.status === 'trouble' ? null : (
          <HoldPad
            kind="lesser"
            look="bath"
            label={`Trouble hold: ${name}`}
            onHeld={() => (stage.open.value = { kind: 'trouble', potId })}
          >
            <span>Trouble</span> <small>hold</small>
          </HoldPad>
        )}
      </div>
    </div>
  )
}
