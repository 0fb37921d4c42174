/** Leads the eye and the focus to the first field that is wrong, once it is drawn. */
export function showFirstProblem(): void {
  requestAnimationFrame(() => {
    const field = document.querySelector<HTMLElement>('[aria-invalid="true"]')
    field?.focus()
    field?.scrollIntoView({ block: 'center' })
  })
}
