// What the device says of its battery and its charger. Only Chromium tells; elsewhere nothing is known.
export type BatteryState = { charging: boolean; level: number }

type Manager = BatteryState & EventTarget
type Asked = { getBattery?: () => Promise<Manager> }

export type BatteryWatch = {
  /** Null: not told. */
  state(): BatteryState | null
  onState(changed: () => void): () => void
}

const CHANGES = ['chargingchange', 'levelchange']

export async function batteryNow(device: Asked = navigator as Asked): Promise<BatteryState | null> {
  try {
    const battery = await device.getBattery?.()
    return battery === undefined ? null : { charging: battery.charging, level: battery.level }
  } catch {
    // Not told is not known.
    return null
  }
}

export function batteryWatch(device: Asked = navigator as Asked): BatteryWatch {
  let state: BatteryState | null = null
  const listeners = new Set<() => void>()
  const take = ({ charging, level }: Manager): void => {
    state = { charging, level }
    for (const listener of listeners) listener()
  }
  const begin = async (): Promise<void> => {
    const battery = await device.getBattery?.()
    if (battery === undefined) return
    take(battery)
    for (const change of CHANGES) battery.addEventListener(change, () => take(battery))
  }
  begin().catch(() => {})
  return {
    state: () => state,
    onState(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    }
  }
}
