// Of every test of a screen, whichever file it stands in.
import { afterEach } from 'vitest'

if (typeof document !== 'undefined') {
  const { cleanup, configure } = await import('@testing-library/preact')
  const { forgetTaps } = await import('../src/ui/parts/guard.ts')
  // A busy machine is slow, not broken: what is waited for may take longer than the library's one second.
  configure({ asyncUtilTimeout: 20_000 })
  // Several files share a page: none leaves its screen or its last tap to the next.
  afterEach(() => {
    cleanup()
    forgetTaps()
    document.body.replaceChildren()
    localStorage.clear()
    sessionStorage.clear()
  })
}
