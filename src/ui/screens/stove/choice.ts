// What a pedal moves among where one act is not enough: the pads of the sheet that lies over all, of what was missed,
// or of the question that calls. The choice is the focus itself, so that a screen reader follows it.

/** Null: nothing is to be chosen, the one pad answers. */
export function choicesNow(): HTMLElement[] | null {
  const sheet = document.querySelector('dialog[open]')
  // The way out comes last: nobody should fall back out of a sheet by one press too many.
  if (sheet) return [...padsIn(sheet, '.sheet-body'), ...padsIn(sheet, '.sheet-head')]
  const missed = document.querySelector('.missed')
  if (missed) return padsIn(missed, '.missed')
  const question = document.querySelector('.call[data-question] .call-answers > :first-child')
  return question && padsIn(question, '.call-answers')
}

export function chosenOf(choices: readonly HTMLElement[]): HTMLElement | null {
  return choices.find((each) => each === document.activeElement) ?? null
}

/** To the next one, round and round; from none to the first. */
export function moveOn(choices: readonly HTMLElement[]): void {
  const at = choices.indexOf(document.activeElement as HTMLElement)
  const next = choices[(at + 1) % choices.length]
  if (!next) return
  for (const old of document.querySelectorAll('[data-chosen]')) old.removeAttribute('data-chosen')
  next.setAttribute('data-chosen', '')
  next.addEventListener('blur', () => next.removeAttribute('data-chosen'), { once: true })
  next.focus()
  next.scrollIntoView?.({ block: 'nearest' })
}

/** A pad that wants a hold. */
export function wantsHold(pad: HTMLElement): boolean {
  return pad.matches('.pad-hold')
}

function padsIn(root: Element, within: string): HTMLElement[] {
  return [...root.querySelectorAll<HTMLElement>('button, a[href]')].filter(
    (pad) => !pad.matches(':disabled') && pad.closest(within) !== null
  )
}
