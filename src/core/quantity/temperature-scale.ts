// The Fahrenheit scale: water freezes at 32 °F and boils at 212 °F, exact by definition (NIST SP 811 App. B).

export type TemperatureUnit = 'C' | 'F'

export function celsiusFromFahrenheit(tempF: number): number {
  return ((tempF - 32) * 5) / 9
}

export function fahrenheitFromCelsius(tempC: number): number {
  return (tempC * 9) / 5 + 32
}

/** A temperature in `unit`, as °C. */
export function inCelsius(value: number, unit: TemperatureUnit): number {
  return unit === 'C' ? value : celsiusFromFahrenheit(value)
}

/** A difference of temperatures in `unit`, as °C: no 32 is taken off. */
export function differenceInCelsius(value: number, unit: TemperatureUnit): number {
  return unit === 'C' ? value : (value * 5) / 9
}
