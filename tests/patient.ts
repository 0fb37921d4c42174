// A busy machine is slow, not broken: what a test of a screen waits for may take longer than the library's one second.
if (typeof document !== 'undefined') {
  const { configure } = await import('@testing-library/preact')
  configure({ asyncUtilTimeout: 20_000 })
}
