// Whose hands are where, and who wants them next.
import type { Kitchen } from '../../kitchen.ts'
import type { Clash } from './clash.ts'
import { handsIn, handsWanted, livePots, nameOf } from './live.ts'
import { lengthSay, roughSay } from './words.ts'

type Props = { kitchen: Kitchen; clash: Clash | null }

/** From here on nobody is needed for a while. */
const QUIET_MS = 60_000

/** `clash`: two pots of which it says here which goes first, for there is no room for a line of its own. */
export function HandsLine({ kitchen, clash }: Props): preact.JSX.Element {
  const { lead, next: then } = handsSay(kitchen)
  const next = clash?.order ?? then
  return (
    <p class="stove-hands">
      <strong>{lead}</strong> {next ? <span class="number stove-next">{next}</span> : null}
    </p>
  )
}

function handsSay(kitchen: Kitchen): { lead: string; next: string | null } {
  const nowMs = kitchen.now.value
  const pots = livePots(kitchen.pots.value)
  const troubled = pots.find((pot) => pot.state.trouble !== null)
  if (troubled) return { lead: `${nameOf(troubled)}: trouble`, next: null }
  const worked = pots.find((pot) => handsIn(pot.state, nowMs))
  const wanted = handsWanted(pots, nowMs).filter((w) => w.pot !== worked)
  const soon = wanted.slice(0, 2).map((w, i) => {
    const left = w.atMs - nowMs
    const when = left <= 0 ? 'now' : w.about ? `about ${roughSay(left)}` : lengthSay(left)
    return i === 0 ? `next ${nameOf(w.pot)}, ${when}` : `then ${nameOf(w.pot)}, ${when}`
  })
  if (worked) return { lead: `${nameOf(worked)}: hands in`, next: soon.length > 0 ? soon.join(' · ') : null }
  const first = wanted[0]
  if (!first) return { lead: pots.length === 0 ? '' : 'No hands wanted.', next: stayBy(kitchen) }
  const left = first.atMs - nowMs
  if (left <= QUIET_MS)
    return { lead: `${nameOf(first.pot)} wants hands`, next: left <= 0 ? 'now' : `in ${lengthSay(left)}` }
  const when = first.about ? `about ${roughSay(left)}` : lengthSay(left)
  return {
    lead: `No hands wanted, ${when}.`,
    next: [stayBy(kitchen), `Next ${nameOf(first.pot)}.`].filter(Boolean).join(' ')
  }
}

/** Never "free to go": a lit burner keeps its dyer. */
function stayBy(kitchen: Kitchen): string | null {
  return livePots(kitchen.pots.value).some((pot) => pot.state.heatOn) ? 'Stay by the heat.' : null
}
