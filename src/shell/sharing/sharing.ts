// The ways in which a text leaves this page for another program, and the one in which it comes by a key press.

export type Shared = 'shared' | 'closed' | 'failed'

export type Sharing = {
  /** False: there is no clipboard, or it was refused. To be called inside a tap. */
  copy(text: string): Promise<boolean>
  /** Null: this browser lets no page read the clipboard. The promise: null, it was refused this time. */
  paste: (() => Promise<string | null>) | null
  /** Null: the device has no share sheet that takes a file. To be called inside a tap. */
  share: ((name: string, title: string, text: string) => Promise<Shared>) | null
}

type Device = Pick<Navigator, 'clipboard' | 'share' | 'canShare'>

export function sharing(device: Partial<Device> = navigator): Sharing {
  const { clipboard } = device
  return {
    copy: async (text) => {
      try {
        await clipboard?.writeText(text)
        return clipboard !== undefined
      } catch {
        return false
      }
    },
    paste: typeof clipboard?.readText === 'function' ? () => clipboard.readText().catch(() => null) : null,
    share: takesFiles(device) ? (name, title, text) => shareFile(device, name, title, text) : null
  }
}

/** Share sheets take text files that are called .txt, and none that are called .yaml (MDN, Navigator.share, "Shareable
 * file types"). */
function fileOf(name: string, text: string): File {
  return new File([text], `${name}.txt`, { type: 'text/plain' })
}

function takesFiles(device: Partial<Device>): device is Device {
  try {
    return device.share !== undefined && device.canShare?.({ files: [fileOf('a', 'a')] }) === true
  } catch {
    return false
  }
}

async function shareFile(device: Device, name: string, title: string, text: string): Promise<Shared> {
  try {
    await device.share({ title, files: [fileOf(name, text)] })
    return 'shared'
  } catch (error) {
    // Closing the sheet is an answer, not a failure.
    return error instanceof DOMException && error.name === 'AbortError' ? 'closed' : 'failed'
  }
}
