/** What is under way and how far it is. */
export function Going({ what, share }: { what: string; share: number }): preact.JSX.Element {
  const percent = Math.min(100, Math.floor(share * 100))
  return (
    <div class="keep-going">
      <label for="keep-progress">{what}</label>
      <progress id="keep-progress" max={100} value={percent} />
      <span>{`${percent} %`}</span>
    </div>
  )
}
