// A button of a notice was pressed: the service worker asks every open page of the app, and the one that owns the pots
// acts. The worker never writes. The shape of the message is that of src/service-worker/notice-press.ts.

export type NoticePress = {
  type: 'notice-pressed'
  /** One press, however often it is told. */
  pressId: string
  action: 'done' | 'later' | 'open'
  of: string
  potId: string
  key: string
  path: string | null
  /** Not to be carried out later: a frozen page finds it long after. */
  untilMs: number
}

/** acted: stored, nothing more to do. look: mine, but a person has to look. follows: another page owns these pots.
 * other: not these pots at all. */
export type PressAnswer = 'acted' | 'look' | 'follows' | 'other'

type Listens = Pick<ServiceWorkerContainer, 'addEventListener' | 'startMessages'>

export function onPress(
  answer: (press: NoticePress) => Promise<PressAnswer>,
  worker: Listens | null = (navigator as { serviceWorker?: ServiceWorkerContainer }).serviceWorker ?? null
): void {
  worker?.addEventListener('message', (event) => {
    const press = event.data as Partial<NoticePress> | null
    const port = event.ports[0]
    if (press?.type !== 'notice-pressed' || port === undefined) return
    void answer(press as NoticePress)
      .catch((): PressAnswer => 'look')
      .then((given) => port.postMessage(given))
  })
  worker?.startMessages()
}
