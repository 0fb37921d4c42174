// A caution: what to do, first; where it comes from, last. Once in full, afterwards its title alone.
import './caution-box.css'

export type CautionBoxProps = {
  title: string
  say: string
  source?: string
  /** On a bath it takes the bath's shade. */
  look?: 'plain' | 'bath'
  /** Shown before today: the title is enough. */
  short?: boolean
}

export function CautionBox({ title, say, source, look = 'plain', short }: CautionBoxProps): preact.JSX.Element {
  return (
    <div class={`caution caution-${look}`} role="note">
      <p class="caution-title">{title}</p>
      {short ? null : <p>{say}</p>}
      {source && !short ? <p class="caution-source">{source}</p> : null}
    </div>
  )
}
