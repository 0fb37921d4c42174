// A quiet word about backups where the records are; the Stove is never bothered with it.
import { useEffect, useState } from 'preact/hooks'
import type { BackupNews, KitchenBackup } from '../../backup.ts'
import type { Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import { Strip } from '../../parts/strip.tsx'
import { useBackup } from '../../parts/use-backup.ts'

export function BackupStrip({ kitchen }: { kitchen: Kitchen }): preact.JSX.Element | null {
  const backup = useBackup(kitchen)
  const [news, setNews] = useState<BackupNews | null>(null)
  const read = (from: KitchenBackup | null): void => void from?.news().then(setNews, () => {})
  useEffect(() => read(backup), [backup])
  if (backup === null || news === null) return null
  const { said, dueDays, never } = news
  return (
    <>
      {said === null ? null : (
        <Strip
          tone="warn"
          actions={
            <Pad
              kind="lesser"
              label="Close: what became of the restore"
              onPress={() => void backup.dismissSaid().then(() => read(backup))}
            >
              Close
            </Pad>
          }
        >
          {said}
        </Strip>
      )}
      {dueDays === null ? null : (
        <Strip
          tone="info"
          actions={
            <>
              <Pad kind="lesser" onPress={() => kitchen.go('#/settings/backup')}>
                Back up
              </Pad>
              <Pad kind="lesser" label="Not now: backup" onPress={() => void backup.putOff().then(() => read(backup))}>
                Not now
              </Pad>
            </>
          }
        >
          {never
            ? `These records are on this device alone, since ${dueDays} days. A backup takes a minute.`
            : `The last backup is ${dueDays} days old, and there are new batches since.`}
        </Strip>
      )}
    </>
  )
}
