// How far the acids of a bath, carbonic acid and water come apart at a temperature.

/** Equilibrium constants on the molal scale, of activities; Davies' A in (kg/mol)^½. */
export type Constants = {
  acetic: number
  citric1: number
  citric2: number
  citric3: number
  carbonic1: number
  carbonic2: number
  water: number
  daviesA: number
}

const GAS = 8.314462618

// pK at 25 °C, heat (J/mol) and heat capacity (J/mol K) of giving off a proton: Goldberg, Kishore & Lennen, J. Phys.
// Chem. Ref. Data 31 (2002) 231. The paper was found, its table is from memory; the pK agree with NIST 46.4.
const acids = {
  acetic: proton(4.756, -410, -142),
  citric1: proton(3.128, 4070, -131),
  citric2: proton(4.761, 2230, -178),
  citric3: proton(6.396, -3380, -254)
}

const T25 = 298.15
const LN_T25 = Math.log(T25)

type Proton = { lnK25: number; heatR: number; capacityR: number }

function proton(pK25: number, heatJ: number, capacityJ: number): Proton {
  return { lnK25: -pK25 * Math.LN10, heatR: heatJ / GAS, capacityR: capacityJ / GAS }
}

/** K by Clarke & Glew, Trans. Faraday Soc. 62 (1966) 539, the heat capacity taken as constant. */
function dissociation({ lnK25, heatR, capacityR }: Proton, byHeat: number, byCapacity: number): number {
  return Math.exp(lnK25 + heatR * byHeat + capacityR * byCapacity)
}

/** All constants at `tempC`, 0 to 100 °C. */
export function constantsAt(tempC: number): Constants {
  const t = tempC + 273.15
  const perT = 1 / t
  const lnT = Math.log(t)
  const byHeat = 1 / T25 - perT
  const byCapacity = T25 * perT - 1 + lnT - LN_T25
  // Carbonate: Plummer & Busenberg, Geochim. Cosmochim. Acta 46 (1982) 1011. All three as the database file phreeqc.dat
  // writes them: log K = a1 + a2 T + a3/T + a4 log T + a5/T² + a6 T².
  const logT = lnT / Math.LN10
  const log2 = 107.8871 + 0.03252849 * t - 5151.79 * perT - 38.92561 * logT + 563713.9 * perT * perT
  const log12 = 464.1965 + 0.09344813 * t - 26986.16 * perT - 165.75951 * logT + 2248628.9 * perT * perT
  const logW = 293.29227 + 0.1360833 * t - 10576.913 * perT - 123.73158 * logT - 6.996455e-5 * t * t
  return {
    acetic: dissociation(acids.acetic, byHeat, byCapacity),
    citric1: dissociation(acids.citric1, byHeat, byCapacity),
    citric2: dissociation(acids.citric2, byHeat, byCapacity),
    citric3: dissociation(acids.citric3, byHeat, byCapacity),
    carbonic1: Math.exp(Math.LN10 * (log2 - log12)),
    carbonic2: Math.exp(-Math.LN10 * log2),
    water: Math.exp(Math.LN10 * logW),
    daviesA: daviesA(tempC)
  }
}

// e³ (2π N)^½ / (ln 10 (4π ε0 k)^1.5), CODATA 2018.
const E = 1.602176634e-19
const DEBYE =
  (Math.sqrt(2 * Math.PI * 6.02214076e23) / Math.LN10) *
  (E ** 2 / (4 * Math.PI * 8.8541878128e-12 * 1.380649e-23)) ** 1.5

/** A of the Debye-Hückel law on the molal scale. */
export function daviesA(tempC: number): number {
  const q = permittivity(tempC) * (tempC + 273.15)
  return (DEBYE * Math.sqrt(waterDensity(tempC))) / (q * Math.sqrt(q))
}

/** Relative permittivity of water: Malmberg & Maryott, J. Res. NBS 56 (1956) 1, 0 to 100 °C. */
export function permittivity(t: number): number {
  return 87.74 + t * (-0.40008 + t * (9.398e-4 - t * 1.41e-6))
}

/** Density of water in kg/m³ under one atmosphere: Kell, J. Chem. Eng. Data 20 (1975) 97, 0 to 100 °C. */
export function waterDensity(t: number): number {
  const upper =
    999.83952 + t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))))
  return upper / (1 + 16.87985e-3 * t)
}
