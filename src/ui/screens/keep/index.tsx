// Keeping the records: a backup of everything, restoring one, and room on the device.
import { useEffect, useState } from 'preact/hooks'
import type { BackupFacts, KitchenBackup } from '../../backup.ts'
import type { Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import { Page } from '../../parts/page.tsx'
import { Strip } from '../../parts/strip.tsx'
import { useBackup } from '../../parts/use-backup.ts'
import { MakePart } from './make.tsx'
import { RestorePart } from './restore.tsx'
import { RoomPart } from './room.tsx'
import './style.css'

export type KeepProps = { kitchen: Kitchen; backup: KitchenBackup; facts: BackupFacts; changed: () => void }

export function KeepScreen({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element {
  const backup = useBackup(kitchen)
  const [facts, setFacts] = useState<BackupFacts | 'unread' | null>(null)
  const [round, setRound] = useState(0)
  useEffect(() => {
    let here = true
    backup?.facts().then(
      (found) => here && setFacts(found),
      () => here && setFacts('unread')
    )
    return () => {
      here = false
    }
  }, [backup, round])
  const changed = (): void => setRound((now) => now + 1)
  const back = <Pad onPress={() => kitchen.go('#/settings')}>Settings</Pad>
  return (
    <Page title="Backup" actions={back}>
      {facts === 'unread' ? (
        <Strip tone="bad" urgent actions={<Pad onPress={changed}>Try again</Pad>}>
          The records can’t be read now.
        </Strip>
      ) : backup === null || facts === null ? (
        <p>Looking at what is here.</p>
      ) : (
        <>
          <MakePart kitchen={kitchen} backup={backup} facts={facts} changed={changed} />
          <RestorePart kitchen={kitchen} backup={backup} facts={facts} changed={changed} />
          <RoomPart kitchen={kitchen} backup={backup} facts={facts} changed={changed} />
        </>
      )}
    </Page>
  )
}

export default KeepScreen
