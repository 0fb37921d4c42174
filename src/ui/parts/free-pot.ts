// The free pot among the protocols: it is started like any of them, and stands in no list.
import { freeProtocol, freeText } from '../../core/protocol/free-pot.ts'
import type { StoredProtocol } from '../kitchen.ts'

export const FREE_ID = 'free'

export const freeStored: StoredProtocol = {
  id: FREE_ID,
  file: 'free.yaml',
  text: freeText,
  protocol: freeProtocol,
  from: 'built-in'
}
