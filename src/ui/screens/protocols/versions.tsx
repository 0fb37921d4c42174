// The earlier versions of a protocol that was written here, and two of them side by side.
import { useEffect, useState } from 'preact/hooks'
import type { Kitchen, StoredProtocol } from '../../kitchen.ts'
import { SelectField } from '../../parts/field.tsx'
import { later } from '../../parts/later.tsx'
import { SharePad } from '../../parts/share-pad.tsx'
import { BeginPad, whenWords } from './drafts.tsx'

const Compare = later(() => import('./compare.tsx').then((m) => ({ default: m.Compare })))

export function Versions({ kitchen, stored }: { kitchen: Kitchen; stored: StoredProtocol }): preact.JSX.Element | null {
  const [versions, setVersions] = useState<StoredProtocol[]>([])
  const [failed, setFailed] = useState(false)
  const [was, setWas] = useState(1)
  const [now, setNow] = useState(0)
  const [open, setOpen] = useState(false)
  const several = (stored.written?.versions ?? 1) > 1
  useEffect(() => {
    if (!several) return
    let here = true
    kitchen.versions(stored.id).then(
      (found) => here && setVersions(found),
      () => here && setFailed(true)
    )
    return () => {
      here = false
    }
  }, [kitchen, stored.id, several])
  if (failed) return <p role="alert">The earlier versions could not be read. Reload the page.</p>
  const [left, right] = [versions[was], versions[now]]
  if (!several || !left || !right) return null
  const nowMs = kitchen.now.peek()
  const options = versions.map((version, i) => ({
    value: String(i),
    label: labelOf(version, i, versions.length, nowMs)
  }))
  return (
    <details class="protocols-versions" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{`Earlier versions (${versions.length - 1})`}</summary>
      <div class="protocols-part">
        <div class="protocols-two">
          <SelectField label="Was" options={options} value={String(was)} onChange={(value) => setWas(Number(value))} />
          <SelectField label="Now" options={options} value={String(now)} onChange={(value) => setNow(Number(value))} />
        </div>
        {open ? <Compare was={left.text} now={right.text} /> : null}
        <BeginPad
          kitchen={kitchen}
          label="Change a copy of what was"
          look="plain"
          begin={async () => {
            const { beginCopy } = await import('./begin.ts')
            return (at) => beginCopy(at, left)
          }}
        />
        <SharePad kitchen={kitchen} label="Share what was" title={left.protocol.title} text={left.text} />
      </div>
    </details>
  )
}

/** "Version 3, today 10:32" */
function labelOf({ written }: StoredProtocol, i: number, count: number, nowMs: number): string {
  const origin = written?.cameAs === undefined ? '' : `, from ${written.cameAs}`
  return `Version ${count - i}, ${whenWords(written?.savedAtMs ?? 0, nowMs)}${origin}`
}
