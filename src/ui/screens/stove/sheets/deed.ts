import type { ComponentType } from 'preact'
import type { PotCommand } from '../../../../core/pot/commands.ts'
import type { Kitchen } from '../../../kitchen.ts'
import type { LivePot } from '../live.ts'
import type { Stage } from '../stage.ts'

export type DeedProps = {
  kitchen: Kitchen
  stage: Stage
  pot: LivePot
  /** Sends and, where it was taken, closes the sheet. */
  send: (command: PotCommand) => void
}

/** Something that happens at the stove beside the route. */
export type Deed = {
  id: string
  say: string
  group: 'Read' | 'Bath' | 'Skeins' | 'Step' | 'Pot'
  fits: (pot: LivePot) => boolean
  Form: ComponentType<DeedProps>
}

/** One that has a sheet of its own, which steps aside for calls. */
export type SheetDeed = Omit<Deed, 'Form'> & { opens: 'photo' | 'voice' }
