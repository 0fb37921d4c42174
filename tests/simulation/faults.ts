// What goes wrong in a day besides the writes: pages die, freeze and come twice, devices sleep, clocks are set.
import { MIN } from '../core/pot/programmes.ts'
import { atTheStove } from './at-the-stove.ts'
import { checkMissed, checkRaised } from './checks.ts'
import type { Day } from './day.ts'
import { stayedAwake, told } from './sleep-twin.ts'
import type { Tab } from './tab.ts'

const kinds = {
  reload: 3,
  'crash at a tap': 4,
  'crash at an operation': 4,
  'closed for a while': 2,
  'store full': 2,
  'connection lost': 2,
  'store well again': 5,
  sleep: 5,
  'second tab': 4,
  'work here': 6,
  'frozen owner': 5,
  thaw: 6,
  'clock set back': 2,
  'clock set forward': 2,
  'jump declared': 3,
  'jump dismissed': 1,
  'copied store': 1
}
type Kind = keyof typeof kinds
export const faultKinds = Object.keys(kinds) as Kind[]

const needsTabs = new Set<Kind>(['second tab', 'work here', 'frozen owner'])
const needsClocks = new Set<Kind>(['clock set back', 'clock set forward'])

export async function trouble(day: Day): Promise<void> {
  const { chance, kitchen, habits, counts } = day
  const kind = chance.weighed(kinds)
  if ((needsTabs.has(kind) && !habits.tabs) || (needsClocks.has(kind) && !habits.clocks)) return
  if (await happens(day, kind)) counts.add('fault', kind)
  if (kitchen.owner !== null) return
  await kitchen.settle()
  await reopen(day)
}

async function happens(day: Day, kind: Kind): Promise<boolean> {
  const { chance, kitchen } = day
  const { owner, weather } = kitchen
  switch (kind) {
    case 'store full':
      weather.spell = 'full'
      return true
    case 'connection lost':
      weather.spell = 'lost'
      return true
    case 'store well again': {
      const was = weather.spell
      weather.spell = null
      return was !== null
    }
    case 'second tab':
      if (kitchen.tabs.length > 2) return false
      await kitchen.openTab()
      return true
    case 'thaw':
      if (!thaw(day)) return false
      await kitchen.settle()
      return true
    case 'copied store':
      for (const tab of [...kitchen.tabs]) kitchen.kill(tab)
      kitchen.writerId = `w${Number(kitchen.writerId.slice(1)) + 1}`
      return true
    case 'jump declared':
      if (!owner || owner.frozen || owner.session.jump() === null) return false
      kitchen.declareClockSet(owner)
      return true
    case 'jump dismissed':
      if (!owner || owner.session.jump() === null) return false
      owner.session.dismissJump()
      return true
    default:
      if (!owner || owner.frozen) return false
      return toOwner(day, kind, owner, chance.whole(0, 12))
  }
}

type OfOwner = Exclude<
  Kind,
  | 'store full'
  | 'connection lost'
  | 'store well again'
  | 'second tab'
  | 'thaw'
  | 'copied store'
  | 'jump declared'
  | 'jump dismissed'
>

async function toOwner(day: Day, kind: OfOwner, owner: Tab, turns: number): Promise<boolean> {
  const { chance, kitchen } = day
  switch (kind) {
    case 'reload':
      kitchen.kill(owner)
      return true
    case 'crash at a tap':
      // Somewhere between the tap and all that comes of it.
      atTheStove(day, owner)
      for (let i = 0; i < turns; i++) await null
      kitchen.kill(owner)
      return true
    case 'crash at an operation':
      owner.fuse = chance.whole(0, 8)
      return true
    case 'closed for a while':
      for (const tab of [...kitchen.tabs]) kitchen.kill(tab)
      kitchen.clock.sleep(chance.whole(1, 60) * MIN)
      return true
    case 'sleep':
      return sleep(day, owner)
    case 'work here':
      return takeOver(day, owner, false)
    case 'frozen owner':
      return takeOver(day, owner, true)
    case 'clock set back':
      return setBack(day, owner, chance.whole(3, 90 * 60) * 1000)
    case 'clock set forward':
      kitchen.clock.set(chance.whole(3, 90 * 60) * 1000)
      await kitchen.settle()
      if (chance.of(0.5)) kitchen.declareClockSet(owner)
      await kitchen.settle()
      return true
  }
}

/** Another tab takes over; the one that owned may not have heard of it yet. */
async function takeOver(day: Day, owner: Tab, freezes: boolean): Promise<boolean> {
  const { chance, kitchen } = day
  const next = kitchen.tabs.find((tab) => tab !== owner && !tab.frozen)
  if (!next) return false
  if (freezes) {
    if (chance.of(0.5)) atTheStove(day, owner)
    for (let i = chance.whole(0, 6); i > 0; i--) await null
    kitchen.freeze(owner)
    await kitchen.settle()
  }
  kitchen.owner = next
  kitchen.stale = !freezes && chance.of(0.6) ? owner : null
  void next.session.open()
  if (kitchen.stale) atTheStove(day, owner)
  await kitchen.settle()
  return true
}

function thaw(day: Day): boolean {
  const { kitchen } = day
  const frozen = kitchen.tabs.filter((tab) => tab.frozen)
  for (const tab of frozen) tab.thaw()
  const had = frozen.length > 0 || kitchen.stale !== null
  kitchen.stale = null
  return had
}

/** Awake and with a store that takes it, every live pot is shifted once and by just so much. */
async function setBack(day: Day, owner: Tab, byMs: number): Promise<boolean> {
  const { kitchen, counts } = day
  // Two tabs that both believe to own would both shift; that lasts for moments only, and not while somebody sets clocks.
  kitchen.stale = null
  const sure = kitchen.isQuiet(owner) && owner.fuse === null
  const lengths = kitchen.store.lengths()
  const live = owner.session.pots().filter(({ state }) => state.status === 'running' || state.status === 'held')
  kitchen.setBackMs += byMs
  kitchen.clock.set(-byMs)
  await kitchen.settle()
  if (!sure || kitchen.owner !== owner || !kitchen.isQuiet(owner)) return true
  counts.add('check', 'set back once')
  for (const { potId, streamId } of live) {
    const since = kitchen.store.stream(streamId).slice(lengths.get(streamId))
    const shifts = since.flatMap(({ event }) => (event.type === 'ClockShifted' ? [event.byMs] : []))
    if (shifts.length === 1 && shifts[0] === -byMs) continue
    kitchen.complain(`${potId}: the clock was set by ${-byMs} ms, the pot by ${shifts.join(' and ') || 'nothing'}`)
  }
  return true
}

async function sleep(day: Day, owner: Tab): Promise<boolean> {
  const { chance, kitchen, counts } = day
  const ms = chance.of(0.2) ? chance.whole(60, 600) * MIN : chance.whole(1, 45) * MIN
  await kitchen.settle()
  const alone = kitchen.isQuiet(owner) && kitchen.owner === owner && kitchen.stale === null
  const calm = kitchen.weather.spell === null && owner.fuse === null && alone
  if (!calm || chance.of(0.5)) {
    kitchen.clock.sleep(ms)
    await kitchen.settle()
    return true
  }
  const { roughness } = kitchen.weather
  kitchen.weather.clear()
  const awake = await stayedAwake(kitchen, chance.branch(), ms)
  const lengths = kitchen.store.lengths()
  owner.session.dismissMissed()
  kitchen.clock.sleep(ms)
  await kitchen.settle()
  checkRaised(kitchen, owner)
  checkMissed(kitchen, owner, lengths)
  counts.add('check', 'asleep as awake')
  for (const [id, twin] of awake) {
    const slept = kitchen.store.stream(id).slice(lengths.get(id)).map(told)
    const at = slept.findIndex((line, index) => line !== twin[index])
    if (slept.length === twin.length && at < 0) continue
    const where = at < 0 ? Math.min(slept.length, twin.length) : at
    kitchen.complain(`${id}: asleep ${slept[where] ?? 'nothing'}, awake ${twin[where] ?? 'nothing'}`)
  }
  kitchen.weather.roughness = roughness
  return true
}

/** Somebody opens the app again, sooner or later. */
async function reopen(day: Day): Promise<void> {
  const { chance, kitchen } = day
  const next = kitchen.tabs.find((tab) => !tab.frozen)
  if (next) {
    kitchen.owner = next
    void next.session.open()
    await kitchen.settle()
    return
  }
  if (chance.of(0.5)) kitchen.clock.sleep(chance.whole(0, 30 * 60) * 1000)
  await kitchen.openTab()
}
