type Props = { address: string; name: string }

/** The browser's own player. A recorder writes sound without saying how long it is: a leap to its end makes the browser
 * find out, and its slider work. */
export function Sound({ address, name }: Props): preact.JSX.Element {
  const findLength = ({ currentTarget: audio }: { currentTarget: HTMLAudioElement }): void => {
    if (Number.isFinite(audio.duration)) return
    const back = (): void => {
      if (!Number.isFinite(audio.duration)) return
      audio.removeEventListener('durationchange', back)
      audio.currentTime = 0
    }
    audio.addEventListener('durationchange', back)
    audio.currentTime = 1e6
  }
  return (
    // biome-ignore lint/a11y/useMediaCaption: the dyer's own words, of which nobody has a text
    <audio
      class="book-sound"
      controls
      preload="metadata"
      src={address}
      aria-label={name}
      onLoadedMetadata={findLength}
    />
  )
}
